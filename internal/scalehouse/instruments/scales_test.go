package instruments_test

import (
	"testing"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message/errortest"
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
	refused(t, scalehouse.Weigh(ctx, s.Desk, id, housetest.ScaleWeight(load.Tare, 24_300)), errortest.Refused("2026-10-01"))
	byHand := load.Weighing{Which: load.Tare, Weight: housetest.Lb(24_300), Source: load.ByHand, Reason: "read from the indicator"}
	refused(t, scalehouse.Weigh(ctx, s.Desk, id, byHand), errortest.Refused())
	stored := load.Weighing{Which: load.Tare, Weight: housetest.Lb(24_300), Source: load.StoredTare, Taken: quantity.MustDate("2026-09-30")}
	must(t, scalehouse.Weigh(ctx, s.Desk, id, stored))
	refused(t, instruments.LogScale(ctx, s.Desk, "1", truckscale.Service{Reason: "cell replaced"}), errortest.Refused())
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
		want  errortest.Want
	}{
		"no such scale":     {"9", truckscale.Zeroed{Shown: housetest.Lb(0)}, errortest.NotFound("9")},
		"another unit":      {"1", truckscale.Zeroed{Shown: quantity.Int(0, quantity.Kg)}, errortest.Invalid("lb")},
		"tomorrow":          {"1", truckscale.Zeroed{Made: truckscale.Made{Day: quantity.MustDate("2026-10-02")}, Shown: housetest.Lb(0)}, errortest.Refused("2026-10-01")},
		"with itself":       {"1", truckscale.Compared{Other: "1", Shown: housetest.Lb(60_000), OtherShown: housetest.Lb(60_000)}, errortest.NotFound()},
		"out for no reason": {"1", truckscale.Service{Out: true}, errortest.Invalid()},
	} {
		if err := instruments.LogScale(ctx, s.Desk, c.scale, c.entry); !c.want.Met(err) {
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
