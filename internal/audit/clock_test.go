package audit_test

import (
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/scalehouse/housetest"
)

// A check tells of every clock that was answered for, and of times that go back
// without an answer: books of earlier programs have them, and are sound.
func TestVerifyTellsOfTheClock(t *testing.T) {
	s := housetest.New(t)
	s.Ticket()
	s.At("2026-09-20 08:00")
	s.Answered()
	s.Ticket()
	sound := s.Verify()
	if len(sound.Remarks) != 1 || !strings.Contains(sound.Remarks[0].String(), "moved by the test") || !strings.Contains(sound.Remarks[0].String(), housetest.Clerk) {
		t.Errorf("remarks: %q", sound.Remarks)
	}
	must(t, s.Store.Write(ctx, func(tx book.Tx) error { // as the program did before it asked
		_, err := tx.Append(journal.Entry{At: "2026-09-19T08:00:00Z", Who: housetest.Clerk, Desk: "scale house", Kind: "note", Subject: "note", Body: []byte("{}")})
		return err
	}))
	sound, err := audit.Verify(ctx, s.Desk, s.Store, nil)
	must(t, err)
	if len(sound.Problems) > 0 || !slices.ContainsFunc(sound.Remarks, func(r message.Text) bool { return strings.Contains(r.String(), "2026-09-19") }) {
		t.Errorf("problems: %q, remarks: %q", sound.Problems, sound.Remarks)
	}
}
