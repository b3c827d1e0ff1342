package settle_test

import (
	"strings"
	"testing"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
)

const (
	waterTo15 = `[shrink]
method = "water"
basis = "net"
trigger = "15.0 %"
to = "15.0 %"
over_dry = "none"
round = "0.01 half-up"`

	perPoint = `[shrink]
method = "per-point"
basis = "net"
trigger = "15.0 %"
to = "15.0 %"
rate = "1.4 %/pt"
step = "0.5 up"
over_dry = "none"`

	noShrink = `[shrink]
method = "none"`
)

// 56,000 lb, 25 to 15 %, 0.5 % handling: 49,131.76 lb when it is added,
// 49,164.71 lb when it multiplies. Both conventions are in use.
func TestHandlingAddedOrMultiplied(t *testing.T) {
	for method, want := range map[string][3]string{
		"wet":   {"280.0000 lb", "49,131.7647 lb", "49,131.76 lb"},
		"dried": {"247.0588 lb", "49,164.7059 lb", "49,164.71 lb"},
	} {
		s := mustSettle(t, corn("56000", "25.0"), handled(t, method, "0.0001"))
		shows(t, s, map[string]string{"shrink.water": "6,588.2353 lb", "handling": want[0], "dry": want[1]})
		if got := quantity.To("0.01", quantity.HalfUp).Apply(s.Dry.Value()).String(); got != want[2] {
			t.Errorf("%s: %s, published %s", method, got, want[2])
		}
	}
	// Where every printed line is rounded to the hundredth the lines still add:
	// 49,411.76 - 247.06, a hundredth less than the figure rounded once.
	shows(t, mustSettle(t, corn("56000", "25.0"), handled(t, "dried", "0.01")), map[string]string{
		"after.water": "49,411.76 lb", "handling": "247.06 lb", "dry": "49,164.70 lb",
	})
}

// handled is 0.5 % handling after the water formula to 15.0 %, both rounded to
// a place.
func handled(t *testing.T, method, place string) *rates.Edition {
	water := strings.Replace(waterTo15, "0.01", place, 1)
	return scene(t, water, "[handling]\nmethod = \""+method+"\"\nrate = \"0.5 %\"\nalways = false\nround = \""+place+" half-up\"")
}

// Trigger and shrink-to are two settings: one national rule takes nothing up to
// 14.5 % and above it shrinks to 13.5 %.
func TestTriggerApartFromShrinkTo(t *testing.T) {
	e := scene(t, `[shrink]
method = "water"
basis = "net"
trigger = "14.5 %"
to = "13.5 %"
over_dry = "none"`)
	for moisture, water := range map[string]string{
		"13.4": "0 lb", "13.6": "0 lb", "14.5": "0 lb",
		"14.54": "0 lb",   // recorded as 14.5
		"14.55": "665 lb", // recorded as 14.6: 52,300 x 1.1 / 86.5 = 665.08
		"14.6":  "665 lb",
	} {
		shows(t, mustSettle(t, corn("52300", moisture), e), map[string]string{"shrink.water": water})
	}
}

func TestShrinkByThePoint(t *testing.T) {
	for _, c := range []struct{ step, moisture, points, water string }{
		{"continuous", "17.3", "2.3 pt", "1,684 lb"}, // 52,300 x 3.22 % = 1,684.06
		{"0.1 up", "17.3", "2.3 pt", "1,684 lb"},
		{"0.5 up", "17.3", "2.5 pt", "1,831 lb"}, // 3.5 % = 1,830.5
		{"0.5 up", "17.5", "2.5 pt", "1,831 lb"},
		{"0.5 up", "17.6", "3.0 pt", "2,197 lb"}, // 4.2 % = 2,196.6
		{"0.5 down", "17.3", "2.0 pt", "1,464 lb"},
		{"0.5 down", "15.4", "0.0 pt", "0 lb"},
		{"1 up", "15.1", "1 pt", "732 lb"},
		{"1 down", "16.9", "1 pt", "732 lb"},
		{"1 half-up", "16.5", "2 pt", "1,464 lb"},
		{"1 half-even", "15.5", "0 pt", "0 lb"},
	} {
		e := scene(t, perPointStep(c.step))
		s := mustSettle(t, corn("52300", c.moisture), e)
		shows(t, s, map[string]string{"shrink.points": c.points, "shrink.water": c.water})
	}
}

func perPointStep(step string) string {
	return `[shrink]
method = "per-point"
basis = "net"
trigger = "15.0 %"
to = "15.0 %"
rate = "1.4 %/pt"
step = "` + step + `"
over_dry = "none"`
}

// The percent may be rounded before it meets the weight.
func TestShrinkPercentRoundedFirst(t *testing.T) {
	e := scene(t, perPointStep("continuous")+"\nround_percent = \"0.1 down\"")
	// 2.3 x 1.4 = 3.22 -> 3.2 %; 52,300 x 3.2 % = 1,673.6
	shows(t, mustSettle(t, corn("52300", "17.3"), e), map[string]string{"shrink.percent": "3.2 %", "shrink.water": "1,674 lb"})
}

func TestShrinkOfEverythingIsRefused(t *testing.T) {
	e := scene(t, `[shrink]
method = "per-point"
basis = "net"
trigger = "15.0 %"
to = "15.0 %"
rate = "5 %/pt"
step = "continuous"
over_dry = "none"`)
	refused(t, corn("52300", "36.0"), e, "Shrink would be 105 % of the weight, which leaves nothing")
}

func TestShrinkTableOnBreakpoints(t *testing.T) {
	e := scene(t, `[shrink]
method = "table"
basis = "net"
trigger = "15.0 %"
to = "15.0 %"
over_dry = "none"

[[shrink.row]]
upto = "16.0 %"
shrink = "1 %"

[[shrink.row]]
over = "16.0 %"
under = "18.0 %"
shrink = "2 %"

[[shrink.row]]
from = "18.0 %"
upto = "20.0 %"
shrink = "5 %"`)
	for moisture, water := range map[string]string{
		"15.0": "0 lb", "15.1": "100 lb", "16.0": "100 lb", "16.1": "200 lb", "17.9": "200 lb", "18.0": "500 lb", "20.0": "500 lb",
	} {
		shows(t, mustSettle(t, corn("10000", moisture), e), map[string]string{"shrink.water": water})
	}
	refused(t, corn("10000", "20.1"), e, "Moisture 20.1 % is in no row of corn-plain: shrink, line 30: the first is up to 16.0 %, the last from 18.0 % up to 20.0 %.")
}

// Over-dry grain brings nothing unless the edition says so.
func TestOverDryGrain(t *testing.T) {
	none := mustSettle(t, corn("52300", "12.0"), scene(t, waterTo15))
	shows(t, none, map[string]string{"shrink.water": "0.00 lb", "dry": "52,300 lb"})
	if note := none.Water.Note(); note.String() != "12.0 % is not above the trigger, 15.0 %; over-dry grain brings no credit" {
		t.Errorf("note: %s", note)
	}
	credited := scene(t, `[shrink]
method = "water"
basis = "net"
trigger = "15.5 %"
to = "15.0 %"
over_dry = "dry-matter"
over_dry_floor = "12.0 %"`, "[handling]\nmethod = \"wet\"\nrate = \"0.5 %\"\nalways = false")
	for moisture, want := range map[string][2]string{
		"15.5": {"0 lb", "52,300 lb"},
		"15.0": {"0 lb", "52,300 lb"},
		"14.0": {"-615 lb", "52,915 lb"},   // 52,300 x 1 / 85 = 615.29
		"12.0": {"-1,846 lb", "54,146 lb"}, // 52,300 x 3 / 85 = 1,845.88
		"11.0": {"-1,846 lb", "54,146 lb"}, // no drier than 12.0 counts
	} {
		// A credit is no shrink: no handling is taken beside it.
		shows(t, mustSettle(t, corn("52300", moisture), credited), map[string]string{"shrink.water": want[0], "handling": "0 lb", "dry": want[1]})
	}
}

func TestHandlingFollowsTheTrigger(t *testing.T) {
	for _, c := range []struct{ always, moisture, handling string }{
		{"false", "15.0", "0 lb"}, {"false", "15.1", "262 lb"}, {"true", "15.0", "262 lb"}, {"true", "12.0", "262 lb"},
	} {
		e := scene(t, "[handling]\nmethod = \"wet\"\nrate = \"0.5 %\"\nalways = "+c.always)
		shows(t, mustSettle(t, corn("52300", c.moisture), e), map[string]string{"handling": c.handling})
	}
	alone := scene(t, noShrink, "[handling]\nmethod = \"wet\"\nrate = \"0.5 %\"\nalways = true")
	shows(t, mustSettle(t, corn("52300", "20.0"), alone), map[string]string{"shrink.water": "0 lb", "handling": "262 lb", "dry": "52,038 lb"})
}
