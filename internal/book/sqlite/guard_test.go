package sqlite

import (
	"slices"
	"tenthpoint/internal/digest"
	"testing"
)

// Nothing that is entered can be altered by SQL: not by our own writer, which
// has recursive triggers, and not by any other program, which has not.
func TestNothingEnteredCanBeAltered(t *testing.T) {
	statements := map[string]string{
		"update a fact":             "UPDATE facts SET body = '{}' WHERE seq = 2",
		"update without change":     "UPDATE facts SET body = body",
		"update or replace":         "UPDATE OR REPLACE facts SET seq = 1 WHERE seq = 2",
		"delete a fact":             "DELETE FROM facts WHERE seq = 3",
		"delete all facts":          "DELETE FROM facts",
		"replace a fact":            "REPLACE INTO facts SELECT seq, at, 'B.', desk, kind, subject, body, prev, hash FROM facts WHERE seq = 2",
		"replace the last fact":     "REPLACE INTO facts SELECT seq, at, 'B.', desk, kind, subject, body, prev, hash FROM facts WHERE seq = 3",
		"insert or replace a fact":  "INSERT OR REPLACE INTO facts SELECT * FROM facts WHERE seq = 1",
		"insert or ignore, updated": "INSERT INTO facts SELECT * FROM facts WHERE seq = 1 ON CONFLICT DO UPDATE SET who = 'B.'",
		"a fact with a gap":         "INSERT INTO facts SELECT 5, at, who, desk, kind, subject, body, hash, hash FROM facts WHERE seq = 3",
		"a fact off the chain":      "INSERT INTO facts SELECT 4, at, who, desk, kind, subject, body, prev, hash FROM facts WHERE seq = 3",
		"a fact without a number":   "INSERT INTO facts SELECT NULL, at, who, desk, kind, subject, body, hash, hash FROM facts WHERE seq = 3",
		"a fact number 0":           "INSERT INTO facts SELECT 0, at, who, desk, kind, subject, body, prev, hash FROM facts WHERE seq = 1",
		"update an edition":         "UPDATE editions SET text = 'rate = 1'",
		"delete an edition":         "DELETE FROM editions",
		"replace an edition":        "REPLACE INTO editions SELECT sha256, id, 'rate = 1' FROM editions",
		"count back":                "UPDATE series SET last = 1",
		"count on by two":           "UPDATE series SET last = last + 2",
		"rename a series":           "UPDATE series SET name = 'slip', last = last + 1",
		"delete a series":           "DELETE FROM series",
		"replace a series":          "REPLACE INTO series (name, last) VALUES ('ticket', 1)",
		"start a series at 7":       "INSERT INTO series (name, last) VALUES ('sample', 7)",
		"a figure that is a float":  "INSERT INTO series (name, last) VALUES ('sample', 1.5)",
	}
	b := newBook(t)
	appendTo(t, b, 3)
	write(t, b, func(tx *Tx) error {
		_, _ = tx.NextNumber("ticket")
		_, _ = tx.NextNumber("ticket")
		return tx.KeepEdition("demo", digest.Of("text"), "text")
	})
	before := contents(t, b)
	for by, db := range map[string]connection{"our writer": b.write.conn, "another program": bare(t, b.Path())} {
		for name, statement := range statements {
			t.Run(by+"/"+name, func(t *testing.T) {
				if _, err := db.ExecContext(ctx, statement); err == nil {
					t.Error("it was done")
				}
				if after := contents(t, b); !slices.Equal(after, before) {
					t.Errorf("the book is now %q", after)
				}
			})
		}
	}
	wantSound(t, b, 3)
}
