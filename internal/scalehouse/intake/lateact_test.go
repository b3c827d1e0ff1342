package intake_test

import (
	"testing"

	"tenthpoint/internal/imports"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
)

// Past loads imported after a day was closed count after it, on whatever day they were delivered.
func TestPastLoadsAfterAClosedDay(t *testing.T) {
	s := housetest.New(t)
	takeOver(s, imports.Growers, imports.Example(imports.Growers))
	must(t, scalehouse.CloseDay(ctx, s.As(housetest.Manager).Desk, housetest.Oct1, "no truck came"))
	takeOver(s, imports.Loads, pastLoads)
	for number := int64(1); number <= 3; number++ {
		l, err := office.Ticket(ctx, s.Desk, number)
		must(t, err)
		if want := housetest.Oct1.AddDays(1); l.IssuedDay != want {
			t.Errorf("ticket %d counts on %s, want %s", number, l.IssuedDay, want)
		}
	}
	s.StillSound(housetest.Oct1)
}
