package scalehouse_test

import (
	"strings"
	"testing"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/scalelog"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/truckscale"
)

func lb(n int64) quantity.Amount { return quantity.Int(n, quantity.Lb) }

// A scale that is out of service weighs nothing, whatever the source of a weight; a manager returns
// it to service.
func TestNoWeightFromAScaleOutOfService(t *testing.T) {
	s := newScene(t)
	id := s.arrive(52_300)
	must(t, scalehouse.LogScale(ctx, s.Desk, "1", truckscale.Service{Out: true, Reason: "load cell 3 reads nothing"}))
	refused(t, scalehouse.Weigh(ctx, s.Desk, id, scaleWeight(load.Tare, 24_300)), "out of service since 2026-10-01")
	byHand := load.Weighing{Which: load.Tare, Weight: lb(24_300), Source: load.ByHand, Reason: "read from the indicator"}
	refused(t, scalehouse.Weigh(ctx, s.Desk, id, byHand), "out of service")
	stored := load.Weighing{Which: load.Tare, Weight: lb(24_300), Source: load.StoredTare, Taken: quantity.MustDate("2026-09-30")}
	must(t, scalehouse.Weigh(ctx, s.Desk, id, stored))
	refused(t, scalehouse.LogScale(ctx, s.Desk, "1", truckscale.Service{Reason: "cell replaced"}), "is for a manager")
	must(t, scalehouse.LogScale(ctx, s.as(manager).Desk, "1", truckscale.Service{Reason: "cell replaced, inspected"}))
	s.as(clerk).weigh(id, load.Tare, 24_320)
	s.verify()
}

// The state of a scale is on the sheet of the day, as it was that day.
func TestScaleStateOnTheDaySheet(t *testing.T) {
	s := newScene(t).as(manager)
	must(t, scalehouse.LogScale(ctx, s.Desk, "1", truckscale.Certificate{Number: "C-118", Until: quantity.MustDate("2027-05-03"), Seals: "40117"}))
	must(t, scalehouse.LogScale(ctx, s.Desk, "1", truckscale.Weighed{Known: lb(20_000), Shown: lb(20_020), Weights: "20 test weights"}))
	must(t, scalehouse.LogScale(ctx, s.Desk, "1", truckscale.Zeroed{Shown: lb(0)}))
	must(t, scalehouse.CloseDay(ctx, s.Desk, s.Today(), ""))
	must(t, scalehouse.LogScale(ctx, s.Desk, "1", truckscale.Service{Out: true, Reason: "struck by lightning"}))
	sheet, err := office.DaySheet(ctx, s.Desk, s.Today())
	must(t, err)
	notes := message.Texts("\n", sheet.Notes.Scales).String()
	for _, want := range []string{"C-118", "2027-05-03", "40117", "20,020 lb"} {
		if !strings.Contains(notes, want) {
			t.Errorf("the sheet says nothing of %s: %s", want, notes)
		}
	}
	if strings.Contains(notes, "lightning") || sheet.Closed.Differs {
		t.Errorf("what came later changed the sheet: %s, differs %v", notes, sheet.Closed.Differs)
	}
	text := s.dayPaper(s.Today()).Text(100)
	if !strings.Contains(text, "Truck scales") || !strings.Contains(text, "C-118") {
		t.Errorf("the paper lacks the scales:\n%s", text)
	}
}

func TestScaleLogIsRefusedNonsense(t *testing.T) {
	s := newScene(t).as(manager)
	p := s.Profile()
	p.Scales = append(p.Scales, elevator.Scale{ID: "2", Division: lb(20), Capacity: lb(120_000)})
	must(t, scalehouse.SetProfile(ctx, s.Desk, p))
	before := s.contents()
	for name, c := range map[string]struct {
		scale string
		entry truckscale.Fact
		want  string
	}{
		"no such scale":     {"9", truckscale.Zeroed{Shown: lb(0)}, "no scale 9"},
		"another unit":      {"1", truckscale.Zeroed{Shown: quantity.Int(0, quantity.Kg)}, "weighs in lb"},
		"tomorrow":          {"1", truckscale.Zeroed{Made: truckscale.Made{Day: quantity.MustDate("2026-10-02")}, Shown: lb(0)}, "today is 2026-10-01"},
		"with itself":       {"1", truckscale.Compared{Other: "1", Shown: lb(60_000), OtherShown: lb(60_000)}, "not another scale"},
		"out for no reason": {"1", truckscale.Service{Out: true}, "for a reason"},
	} {
		if err := scalehouse.LogScale(ctx, s.Desk, c.scale, c.entry); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
	}
	if s.contents() != before {
		t.Error("a refused entry left something in the book")
	}
	must(t, scalehouse.LogScale(ctx, s.Desk, "1", truckscale.Compared{Other: "2", Shown: lb(60_000), OtherShown: lb(59_980), What: "truck 7"}))
	log, err := scalelog.Read(ctx, s.Desk, "1")
	must(t, err)
	if rows := scalelog.Rows(log); len(rows) != 1 || rows[0].Off != "20 lb" || rows[0].By != manager {
		t.Errorf("the log is %+v", rows)
	}
}
