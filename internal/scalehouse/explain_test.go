package scalehouse_test

import (
	"errors"
	"strings"
	"testing"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/book/sqlite/sqlitetest"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
)

// hurt is a book in which an earlier program let a ticket count before a day that
// was closed.
func hurt(t *testing.T) *scene {
	s := housetest.New(t)
	s.Ticket()
	s.At("2026-10-02 09:00")
	s.Ticket()
	must(t, scalehouse.CloseDay(ctx, s.As(housetest.Manager).Desk, housetest.Oct2, "all well"))
	id := s.Whole()
	_, err := scalehouse.IssueOn(ctx, s.Desk, id, housetest.Oct1)
	must(t, err)
	return s
}

// A book that an honest act has hurt is sound again once a manager has explained
// it, says so, and prints the sheet that was closed.
func TestLateActIsExplainedOnce(t *testing.T) {
	s := hurt(t)
	housetest.WantNamed(t, s.Desk, "counts on that day or before it")
	s.As(housetest.Clerk)
	if err := scalehouse.ExplainDay(ctx, s.Desk, housetest.Oct2, "taken over late"); !errors.Is(err, message.Refused) {
		t.Errorf("a clerk explains: %v", err)
	}
	s.As(housetest.Manager)
	must(t, scalehouse.ExplainDay(ctx, s.Desk, housetest.Oct2, "taken over late"))
	sound := s.Verify()
	if len(sound.Remarks) != 1 || !strings.Contains(sound.Remarks[0].String(), "taken over late") || !strings.Contains(sound.Remarks[0].String(), housetest.Manager) {
		t.Errorf("remarks: %q", sound.Remarks)
	}
	sheet, err := office.DaySheet(ctx, s.Desk, housetest.Oct2)
	must(t, err)
	if sheet.Last != 1 || sheet.Closed.Differs || sheet.Closed.Late || sheet.Closed.Explained == nil {
		t.Errorf("the sheet begins after %d, closed %+v", sheet.Last, sheet.Closed)
	}
	if text := s.DayText(sheet); !strings.Contains(text, "taken over late") || strings.Contains(text, "NOT THE SHEET") {
		t.Error(text)
	}
	if err := scalehouse.ExplainDay(ctx, s.Desk, housetest.Oct2, "again"); !errors.Is(err, message.Refused) {
		t.Errorf("explained twice: %v", err)
	}
	id := s.Whole()
	_, err = scalehouse.IssueOn(ctx, s.Desk, id, housetest.Oct1)
	must(t, err)
	housetest.WantNamed(t, s.Desk, "counts on that day or before it") // the explanation was of another act
}

// What no later act accounts for cannot be explained away.
func TestForgedDayCannotBeExplained(t *testing.T) {
	s := hurt(t)
	sqlitetest.Unguarded(t, s.Store.Path(), `UPDATE loads SET bin = 'Pit 9' WHERE ticket = 2`, `UPDATE facts SET body = replace(body, 'Pit 1', 'Pit 9') WHERE subject = 'load L2'`)
	if err := scalehouse.ExplainDay(ctx, s.Desk, housetest.Oct2, "a slip of the pen"); !errors.Is(err, message.Refused) {
		t.Errorf("explained: %v", err)
	}
	sound, err := audit.Verify(ctx, s.Desk, s.Store, nil)
	must(t, err)
	if !strings.Contains(message.Texts("\n", sound.Problems).String(), "is not the one that was signed") {
		t.Errorf("problems: %q", sound.Problems)
	}
	if err := scalehouse.ExplainDay(ctx, s.Desk, housetest.Oct1, "nothing"); !errors.Is(err, message.Refused) {
		t.Errorf("an open day was explained: %v", err)
	}
}
