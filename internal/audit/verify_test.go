package audit_test

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"strings"
	"testing"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite/sqlitetest"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
)

func TestSeasonIsSound(t *testing.T) {
	sound := housetest.Season(t).Verify()
	if sound.Loads != 6 || sound.Tickets != 4 || sound.Settlements != 4 || sound.Editions != 1 || sound.Facts == 0 {
		t.Errorf("%+v, want 6 loads, 4 tickets, 4 settlements, 1 edition", sound)
	}
}

// Each row is one way of altering a book and what must be named.
func TestVerifyNamesTampering(t *testing.T) {
	for _, c := range []struct {
		name, statement string
		want            []string
	}{
		{"a fact taken out", "DELETE FROM facts WHERE seq = 9", []string{"Fact 9 is missing"}},
		{"the end cut off", "DELETE FROM facts WHERE kind = 'day.closed'", []string{`"day 2026-10-01" in the lists is as fact 39 left it, but the journal ends with fact 38.`}},
		{"tickets cut off", "DELETE FROM facts WHERE seq >= (SELECT min(seq) FROM facts WHERE kind = 'ticket.voided')", []string{"The book gave out ticket numbers up to 4, but the highest in the journal is 2.", "The book gave out load numbers up to 6"}},
		{"a figure in the lists", `UPDATE loads SET figures = replace(figures, '"28000 lb"', '"29000 lb"') WHERE id = 'L1'`, []string{"Ticket 1 (load L1): in the lists net is 29,000 lb, by the facts 28,000 lb.", "is not the one that was signed when the day was closed"}},
		{"an engine in the lists", `UPDATE loads SET figures = replace(figures, '"engine":"4"', '"engine":"1"') WHERE id = 'L1'`, []string{`Ticket 1 (load L1): in the lists Engine is "1", by the facts "4".`}},
		{"an engine not known in the lists", `UPDATE loads SET figures = replace(figures, '"engine":"4"', '"engine":"99"') WHERE id = 'L1'`, []string{`in the lists Engine is "99"`, "The sheet of 2026-10-01 cannot be made again: ticket 1: this was settled by engine 99"}},
		{"a figure taken from the lists", `UPDATE loads SET figures = '{}' WHERE id = 'L1'`, []string{"Ticket 1 (load L1): in the lists net is nothing, by the facts 28,000 lb."}},
		{"figures that are no JSON", `UPDATE loads SET figures = 'none' WHERE id = 'L1'`, []string{"The row of load L1 in the lists cannot be read"}},
		{"a grower's name in the lists", `UPDATE loads SET grower_name = 'Ida Field' WHERE id = 'L1'`, []string{`in the lists GrowerName is "Ida Field", by the facts "Ada Field"`}},
		{"a phase in the lists", `UPDATE loads SET phase = 'issued' WHERE id = 'L2'`, []string{`in the lists Phase is "issued", by the facts "void"`}},
		{"a ticket number in the lists", `UPDATE loads SET ticket = 77 WHERE id = 'L1'`, []string{`in the lists Ticket is "77", by the facts "1"`}},
		{"a load taken from the lists", `DELETE FROM loads WHERE id = 'L1'`, []string{"Ticket 1 (load L1) has facts in the journal but is missing from the lists."}},
		{"a load put in the lists", `INSERT INTO loads SELECT 'L99', phase, direction, day, opened_at, commodity, grower, grower_name, truck, bin, disposition, contract, NULL, issued_at, issued_day, ended_at, ended_day, ended_by, corrects, reason, who, manual, accepted, flags, sample, kept, keep_until, edition, edition_hash, figures, weigher, NULL, NULL, '' FROM loads WHERE id = 'L1'`, []string{"Load L99 is in the lists but has no facts in the journal."}},
		{"a correction kept from the ticket it corrects", "DELETE FROM facts WHERE kind = 'ticket.superseded'", []string{"Ticket 4 takes the place of ticket 3, which does not name it."}},
		{"a ticket said to give way to another", `UPDATE facts SET body = replace(body, '"by":"4"', '"by":"1"') WHERE kind = 'ticket.superseded'`, []string{"Ticket 3 gave way to ticket 1, which does not name it."}},
		{"an owner", `UPDATE owners SET grower = 'G7' WHERE load = 'L1' AND place = 2`, []string{`in the lists Owners is "[G1 G7]", by the facts "[G1 G2]"`}},
		{"an owner put in", `INSERT INTO owners VALUES ('L88', 1, 'G1')`, []string{"Load L88 is in the lists but has no facts in the journal."}},
		{"a standing thing", `UPDATE standing SET body = replace(body, 'ABC 1', 'ABC 2') WHERE kind = 'house.truck'`, []string{`"house.truck T1" in the lists is not what fact`}},
		{"a standing thing put back", `UPDATE standing SET seq = 1 WHERE kind = 'house.truck'`, []string{`"house.truck T1" in the lists is as fact 1 left it`}},
		{"a standing thing taken out", `DELETE FROM standing WHERE kind = 'house.grower'`, []string{`("house.grower G1") is the last word on it, but the lists have none`}},
		{"a day opened again", `DELETE FROM standing WHERE kind = 'day.closed'`, []string{`("day 2026-10-01") is the last word on it, but the lists have none`}},
		{"a standing thing put in", `INSERT INTO standing VALUES ('house.bin', 'B9', 1, '{}')`, []string{`"house.bin B9" is in the lists but has no facts`}},
		{"a number given twice to come", "UPDATE series SET last = 3 WHERE name = 'ticket'", []string{"The journal has ticket number 4, but the book gave out numbers up to 3 only."}},
		{"a number left out to come", "UPDATE series SET last = 5 WHERE name = 'ticket'", []string{"The book gave out ticket numbers up to 5, but the highest in the journal is 4."}},
		{"an edition's text", `UPDATE editions SET text = replace(text, '0.04 $/bu/pt', '0.05 $/bu/pt')`, []string{`The edition "corn-house-2026" was changed after it was kept`, "works out as"}},
		{"an edition taken out", `DELETE FROM editions`, []string{"Ticket 1 (load L1) cannot be settled again"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := housetest.Season(t)
			sqlitetest.Unguarded(t, s.Store.Path(), c.statement)
			housetest.WantNamed(t, s.Desk, c.want...)
		})
	}
}

func TestVerifyNamesMissingGuards(t *testing.T) {
	s := housetest.Season(t)
	db, err := sql.Open("sqlite", "file:"+s.Store.Path())
	must(t, err)
	defer db.Close()
	_, err = db.Exec("DROP TRIGGER facts_never_change")
	must(t, err)
	housetest.WantNamed(t, s.Desk, "The trigger facts_never_change was removed from the book")
}

// A byte changed anywhere in a row of the journal is found, and its fact named.
func TestVerifyNamesEveryByte(t *testing.T) {
	s := housetest.Season(t)
	facts, err := s.Store.FactsOf(ctx, "load L1")
	must(t, err)
	f := facts[len(facts)-2] // the settlement
	cells := map[string]string{"at": f.At, "who": f.Who, "desk": f.Desk, "kind": f.Kind, "subject": f.Subject, "body": string(f.Body), "prev": f.Prev, "hash": f.Hash}
	for column, text := range cells {
		for i := 0; i < len(text); i += 1 + len(text)/12 {
			changed := text[:i] + string(text[i]^1) + text[i+1:]
			sqlitetest.Unguarded(t, s.Store.Path(), fmt.Sprintf("UPDATE facts SET %s = '%s' WHERE seq = %d", column, sqlitetest.Quoted(changed), f.Seq))
			housetest.WantNamed(t, s.Desk, fmt.Sprintf("Fact %d", f.Seq))
			sqlitetest.Unguarded(t, s.Store.Path(), fmt.Sprintf("UPDATE facts SET %s = '%s' WHERE seq = %d", column, sqlitetest.Quoted(text), f.Seq))
		}
	}
	s.Verify()
}

// Who rewrites the whole chain with new hashes is found by the figures.
func TestVerifyFindsARewrittenChain(t *testing.T) {
	s := housetest.Season(t)
	var statements []string
	var last *journal.Fact
	for f, err := range s.Store.Facts(ctx, book.FactFilter{}) {
		must(t, err)
		body := strings.ReplaceAll(string(f.Body), `"dry":"26872 lb"`, `"dry":"26000 lb"`)
		again := journal.Link(last, journal.Entry{At: f.At, Who: f.Who, Desk: f.Desk, Kind: f.Kind, Subject: f.Subject, Body: []byte(body)})
		last = &again
		statements = append(statements, fmt.Sprintf("UPDATE facts SET body = '%s', prev = '%s', hash = '%s' WHERE seq = %d", sqlitetest.Quoted(body), again.Prev, again.Hash, again.Seq))
	}
	sqlitetest.Unguarded(t, s.Store.Path(), statements...)
	housetest.WantNamed(t, s.Desk, "Ticket 1 (load L1): dry was written down as 26,000 lb and works out as 26,872 lb.")
}

func TestVerifyCanBeStopped(t *testing.T) {
	s := housetest.Season(t)
	stop, cancel := context.WithCancel(ctx)
	_, err := audit.Verify(stop, s.Desk, s.Store, func(int64) { cancel() })
	if !errors.Is(err, context.Canceled) {
		t.Errorf("a walk that was stopped ends with %v", err)
	}
}

// The book may be in use while it is checked.
func TestVerifyWhileTrucksAreWeighed(t *testing.T) {
	s := housetest.Season(t)
	busy, err := scalehouse.Open(ctx, s.Store, scalehouse.Options{Rates: s.Rates(), Who: housetest.Clerk, Clock: s.Clock(), Check: housetest.NoQuestions})
	must(t, err)
	sound, err := audit.Verify(ctx, s.Desk, s.Store, func(done int64) {
		id, err := scalehouse.OpenLoad(ctx, busy, housetest.Details())
		must(t, err)
		must(t, scalehouse.Weigh(ctx, busy, id, housetest.ScaleWeight(load.Gross, 52300)))
		must(t, scalehouse.RecordSample(ctx, busy, id, housetest.SampleOf("18.0")))
		must(t, scalehouse.Weigh(ctx, busy, id, housetest.ScaleWeight(load.Tare, 24300)))
		_, err = scalehouse.Issue(ctx, busy, id)
		must(t, err)
		must(t, scalehouse.SetBin(ctx, busy, elevator.Bin{ID: fmt.Sprint("B", done)}))
	})
	must(t, err)
	if len(sound.Problems) > 0 {
		t.Errorf("found:\n%s", message.Texts("\n", sound.Problems).String())
	}
}
