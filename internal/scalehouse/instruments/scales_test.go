package instruments_test

import (
	"strings"
	"testing"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office/scalelog"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/scalehouse/instruments"
	"tenthpoint/internal/truckscale"
)

// A scale that is out of service weighs nothing, whatever the source of a weight; a manager returns
// it to service.
func TestNoWeightFromAScaleOutOfService(t *testing.T) {
	s := housetest.New(t)
	id := s.Arrive(52_300)
	must(t, instruments.LogScale(ctx, s.Desk, "1", truckscale.Service{Out: true, Reason: "load cell 3 reads nothing"}))
	refused(t, scalehouse.Weigh(ctx, s.Desk, id, housetest.ScaleWeight(load.Tare, 24_300)), "out of service since 2026-10-01")
	byHand := load.Weighing{Which: load.Tare, Weight: housetest.Lb(24_300), Source: load.ByHand, Reason: "read from the indicator"}
	refused(t, scalehouse.Weigh(ctx, s.Desk, id, byHand), "out of service")
	stored := load.Weighing{Which: load.Tare, Weight: housetest.Lb(24_300), Source: load.StoredTare, Taken: quantity.MustDate("2026-09-30")}
	must(t, scalehouse.Weigh(ctx, s.Desk, id, stored))
	refused(t, instruments.LogScale(ctx, s.Desk, "1", truckscale.Service{Reason: "cell replaced"}), "is for a manager")
	must(t, instruments.LogScale(ctx, s.As(housetest.Manager).Desk, "1", truckscale.Service{Reason: "cell replaced, inspected"}))
	s.As(housetest.Clerk).Weigh(id, load.Tare, 24_320)
	s.Verify()
}

func TestScaleLogIsRefusedNonsense(t *testing.T) {
	s := housetest.New(t).As(housetest.Manager)
	p := s.Profile()
	p.Scales = append(p.Scales, elevator.Scale{ID: "2", Division: housetest.Lb(20), Capacity: housetest.Lb(120_000)})
	must(t, scalehouse.SetProfile(ctx, s.Desk, p))
	before := s.Contents()
	for name, c := range map[string]struct {
		scale string
		entry truckscale.Fact
		want  string
	}{
		"no such scale":     {"9", truckscale.Zeroed{Shown: housetest.Lb(0)}, "no scale 9"},
		"another unit":      {"1", truckscale.Zeroed{Shown: quantity.Int(0, quantity.Kg)}, "weighs in lb"},
		"tomorrow":          {"1", truckscale.Zeroed{Made: truckscale.Made{Day: quantity.MustDate("2026-10-02")}, Shown: housetest.Lb(0)}, "today is 2026-10-01"},
		"with itself":       {"1", truckscale.Compared{Other: "1", Shown: housetest.Lb(60_000), OtherShown: housetest.Lb(60_000)}, "not another scale"},
		"out for no reason": {"1", truckscale.Service{Out: true}, "for a reason"},
	} {
		if err := instruments.LogScale(ctx, s.Desk, c.scale, c.entry); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
	}
	if s.Contents() != before {
		t.Error("a refused entry left something in the book")
	}
	must(t, instruments.LogScale(ctx, s.Desk, "1", truckscale.Compared{Other: "2", Shown: housetest.Lb(60_000), OtherShown: housetest.Lb(59_980), What: "truck 7"}))
	log, err := scalelog.Read(ctx, s.Desk, "1")
	must(t, err)
	if rows := scalelog.Rows(log); len(rows) != 1 || rows[0].Off != "20 lb" || rows[0].By != housetest.Manager {
		t.Errorf("the log is %+v", rows)
	}
}
