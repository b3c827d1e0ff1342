package scalelog_test

import (
	"context"
	"strings"
	"testing"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/office/scalelog"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/scalehouse/instruments"
	"tenthpoint/internal/truckscale"
)

// logged is the log of a scale beside another, with one entry of each kind.
func logged(t *testing.T) (truckscale.Log, elevator.Profile) {
	t.Helper()
	ctx := context.Background()
	s := housetest.New(t).As(housetest.Manager)
	s.House(func(p *elevator.Profile) {
		p.Scales = append(p.Scales, elevator.Scale{ID: "2", Division: housetest.Lb(20), Capacity: housetest.Lb(120_000)})
	})
	for _, entry := range []truckscale.Fact{
		truckscale.Certificate{Number: "C-118", Until: quantity.MustDate("2027-05-03"), Inspector: "State inspector", Seals: "40117"},
		truckscale.Zeroed{Shown: housetest.Lb(0)},
		truckscale.Weighed{Known: housetest.Lb(20_000), Shown: housetest.Lb(19_960), Weights: "20 test weights"},
		truckscale.Compared{Other: "2", Shown: housetest.Lb(60_000), OtherShown: housetest.Lb(59_980), What: "truck 7"},
		truckscale.Service{Out: true, Reason: "struck by lightning"},
	} {
		housetest.Must(t, instruments.LogScale(ctx, s.Desk, "1", entry))
	}
	log, err := scalelog.Read(ctx, s.Desk, "1")
	housetest.Must(t, err)
	_, err = scalelog.Read(ctx, s.Desk, "9")
	housetest.Refused(t, err, errortest.NotFound("9"))
	return log, s.Profile()
}

// Each entry is a row: what stood on the deck, what was shown, and how far it was off.
func TestRowsOfALog(t *testing.T) {
	log, _ := logged(t)
	rows := scalelog.Rows(log)
	want := []struct{ known, shown, off, note string }{
		{"", "", "", "State inspector; 40117"},
		{"", "0 lb", "", ""},
		{"20,000 lb", "19,960 lb", "-40 lb", "20 test weights"},
		{"59,980 lb", "60,000 lb", "20 lb", "truck 7"},
		{"", "", "", "struck by lightning"},
	}
	if len(rows) != len(want) {
		t.Fatalf("%d rows, want %d", len(rows), len(want))
	}
	for i, w := range want {
		r := rows[i]
		if r.Known != w.known || r.Shown != w.shown || r.Off != w.off || r.Note != w.note || r.By != housetest.Manager || r.Day != "2026-10-01" {
			t.Errorf("row %d is %+v, want %+v", i, r, w)
		}
		tolerated := i == 2
		if (r.Allowed != "") != tolerated {
			t.Errorf("row %d allows %q", i, r.Allowed)
		}
	}
}

// The examiner's paper has the scale, its state and every entry.
func TestPaperOfALog(t *testing.T) {
	log, house := logged(t)
	text := scalelog.Paper(log, house, quantity.MustDate("2026-10-02")).Text(120)
	for _, want := range []string{"Test Elevator", "20 lb", "120,000 lb", "C-118", "40117", "-40 lb", "truck 7", "lightning"} {
		if !strings.Contains(text, want) {
			t.Errorf("the paper says nothing of %q:\n%s", want, text)
		}
	}
}
