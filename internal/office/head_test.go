package office_test

import (
	"strings"
	"testing"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse/housetest"
)

// The head is on the sheet of a closed day, and is that of its closing.
func TestClosedDayPrintsTheHead(t *testing.T) {
	s := housetest.Season(t)
	noted := s.Noted()
	s.At("2026-10-02 08:00")
	s.Ticket()
	sheet, err := office.DaySheet(ctx, s.Desk, housetest.Oct1)
	must(t, err)
	found := journal.FindHeads(s.DayText(sheet))
	if len(found) != 1 || found[0].Seq != noted.Seq || !strings.HasPrefix(noted.Hash, found[0].Hash) {
		t.Fatalf("the sheet prints %v, the head was %s", found, noted)
	}
	if err := audit.HoldsHead(ctx, s.Store, found[0]); err != nil {
		t.Error(err)
	}
}
