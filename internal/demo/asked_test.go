package demo

import (
	"context"
	"testing"

	"tenthpoint/internal/book"
	"tenthpoint/internal/office"
)

// In an honest season the elevator asks about one truck in fifty at most: who is asked too often
// stops reading.
func TestHonestSeasonIsSeldomAsked(t *testing.T) {
	const loads = 600
	d := opened(t, filled(t, Options{Loads: loads, Seed: 11, Now: noon, Rates: shipped(t)}))
	rows, err := d.Reader().Loads(context.Background(), book.LoadFilter{FromTicket: 1})
	must(t, err)
	asked := map[string]int{}
	trucks := 0
	for _, r := range rows {
		l, err := office.Load(context.Background(), d, r.ID)
		must(t, err)
		for _, a := range l.Answers {
			asked[a.Guard]++
		}
		if len(l.Answers) > 0 {
			trucks++
		}
	}
	if trucks*50 > len(rows) {
		t.Errorf("%d of %d trucks were asked about: %v", trucks, len(rows), asked)
	}
	if trucks == 0 {
		t.Error("no truck was asked about, though weights are taken again in every season")
	}
	t.Logf("%d of %d trucks: %v", trucks, len(rows), asked)
}
