package grain

import (
	"testing"

	"tenthpoint/internal/quantity"
)

// A test weight may be typed in either unit, whichever is the usual one. Its
// limits are the same grain either way: 10 lb/bu is 12.87 kg/hL, 90 is 115.85.
func TestTestWeightInEitherUnit(t *testing.T) {
	wheat, err := ByID("wheat-hrw")
	if err != nil {
		t.Fatal(err)
	}
	pounds, _ := wheat.Factor(TestWeight)
	kilograms := pounds.In(quantity.KgPerHL)
	for _, c := range []struct {
		factor Factor
		text   string
		want   string // as recorded; empty when it is refused
	}{
		{pounds, "60.25", "60.3 lb/bu"},
		{pounds, "76.55 kg/hL", "76.6 kg/hL"},
		{kilograms, "76.55", "76.6 kg/hL"},
		{kilograms, "60.25 lb/bu", "60.3 lb/bu"},
		{kilograms, "12", "12 kg/hL"}, {kilograms, "116", "116 kg/hL"},
		{kilograms, "11.9", ""}, {kilograms, "116.1", ""}, {pounds, "116", ""}, {pounds, "9 kg/hL", ""},
		{kilograms, "76 %", ""}, {kilograms, "heavy", ""},
	} {
		a, err := c.factor.Parse(c.text)
		got := ""
		if err == nil {
			got = c.factor.In(a.Unit()).Recorded(a).String()
		}
		if got != c.want {
			t.Errorf("%q typed in %s is %q (%v), want %q", c.text, c.factor.Unit, got, err, c.want)
		}
	}
	if back := kilograms.In(quantity.LbPerBushel); back.Unit != pounds.Unit {
		t.Errorf("back in %s", back.Unit)
	}
	moisture, _ := wheat.Factor(Moisture)
	if same := moisture.In(quantity.KgPerHL); same.Unit != quantity.Percent {
		t.Errorf("moisture in %s", same.Unit)
	}
}
