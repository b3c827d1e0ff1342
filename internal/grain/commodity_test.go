package grain

import (
	"regexp"
	"strings"
	"testing"

	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
)

func TestByIDListsWhatItKnows(t *testing.T) {
	_, err := ByID("wheat")
	known := "corn, soybeans, wheat-hrw, wheat-hrs, wheat-srw, wheat-white, wheat-white-club, wheat-durum, " +
		"sorghum, barley, barley-malting-six, barley-malting-two, oats, rye, triticale, flaxseed, canola, sunflower, " +
		"peas, lentils, beans, faba-beans, chickpeas, mustard, rapeseed, buckwheat, safflower, canary-seed, mixed-grain"
	if !errortest.Invalid("wheat", known).Met(err) {
		t.Error(err)
	}
}

var idShape = regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)

// TestCommoditiesAreWhole: ids once only and in one shape, names, a source for
// every factor, and limits in the factor's own unit.
func TestCommoditiesAreWhole(t *testing.T) {
	seenIDs := map[string]bool{}
	for _, c := range All() {
		if seenIDs[c.ID] || !idShape.MatchString(c.ID) || c.Name == "" {
			t.Errorf("commodity %q %q", c.ID, c.Name)
		}
		seenIDs[c.ID] = true
		factors := map[FactorID]bool{}
		for _, f := range c.Factors {
			if factors[f.ID] || !idShape.MatchString(string(f.ID)) || f.Name == "" || f.Source == "" {
				t.Errorf("%s: factor %+v", c.ID, f)
			}
			factors[f.ID] = true
			if f.Min.Unit() != f.Unit || f.Max.Unit() != f.Unit || !f.Min.Less(f.Max) {
				t.Errorf("%s %s is typed within %s to %s", c.ID, f.ID, f.Min, f.Max)
			}
		}
		for _, always := range []FactorID{Moisture, TestWeight, Musty, Infested} {
			if !factors[always] {
				t.Errorf("%s has no %s", c.ID, always)
			}
		}
	}
}

// TestAllIsACopy: whoever reorders the list they got reorders nothing here.
func TestAllIsACopy(t *testing.T) {
	list := All()
	list[0], list[1] = list[1], list[0]
	if All()[0].ID != "corn" {
		t.Error("the list can be changed from outside")
	}
}

// TestDockageRules: 7 CFR 810.104(b), and none where none is determined.
func TestDockageRules(t *testing.T) {
	rules := map[string]string{
		"wheat": "0.1 half-up", "rye": "0.1 half-up", "barley": "0.5 down", "triticale": "0.5 down",
		"sorghum": "1 down", "flaxseed": "1 down", "canola": "0.1 half-up",
		"corn": "", "soybeans": "", "oats": "", "sunflower": "",
	}
	for _, c := range graded() {
		kind, _, _ := strings.Cut(c.ID, "-")
		f, has := c.Dockage()
		if want := rules[kind]; has != (want != "") || has && f.Record.String() != want {
			t.Errorf("%s: dockage %v %s, want %q", c.ID, has, f.Record, want)
		}
	}
}

// TestTestWeightRules: 7 CFR 810.102, tenths for six grains and whole and half
// pounds for the rest.
func TestTestWeightRules(t *testing.T) {
	tenths := map[string]bool{"corn": true, "rye": true, "sorghum": true, "soybeans": true, "triticale": true, "wheat": true}
	for _, c := range graded() {
		kind, _, _ := strings.Cut(c.ID, "-")
		want := "0.5 down"
		if tenths[kind] {
			want = "0.1 half-up"
		}
		if f, _ := c.Factor(TestWeight); f.Record.String() != want {
			t.Errorf("%s: test weight is recorded to %s, want %s", c.ID, f.Record, want)
		}
	}
}

func TestFactorParse(t *testing.T) {
	corn, canola := mustCommodity(t, "corn"), mustCommodity(t, "canola")
	for _, c := range []struct {
		commodity Commodity
		factor    FactorID
		text      string
		want      string // the amount, or a part of the refusal
	}{
		{corn, Moisture, "15.3", "15.3 %"},
		{corn, Moisture, "15.34 %", "15.34 %"},
		{corn, Moisture, "15.345", "has more than 2 decimals"},
		{corn, Moisture, "0", "Moisture 0 % is outside 3 % to 60 %"},
		{corn, Moisture, "100", "is outside"},
		{corn, Moisture, "153", "is outside"},
		{corn, Moisture, "-15", "is outside"},
		{corn, Moisture, "wet", "Moisture"},
		{corn, Moisture, "15,3", "write a decimal with a point, such as 15.3"},
		{corn, TestWeight, "56.5 lb/bu", "56.5 lb/bu"},
		{corn, TestWeight, "56.5 lb", `Test weight "56.5 lb" is in lb, not in lb/bu`},
		{canola, Ergot, "0.055", "0.055 %"},
		{canola, Ergot, "0.0555", "has more than 3 decimals"},
		{canola, Glass, "2", "2 ct"},
		{canola, Glass, "2.5", "Pieces of glass 2.5 ct is not a whole number"},
		{corn, Musty, "Yes", "1 ct"},
		{corn, Musty, " n ", "0 ct"},
		{corn, Musty, "1", `Musty odor is yes or no; "1" is neither. Type yes or no`},
		{corn, Musty, "", `Musty odor is yes or no; "" is neither. Type yes or no`},
	} {
		f, _ := c.commodity.Factor(c.factor)
		got, err := f.Parse(c.text)
		text := got.String()
		if err != nil {
			text = err.Error()
		}
		if err == nil && text != c.want || !strings.Contains(text, c.want) {
			t.Errorf("%s %q: %s, want %s", c.factor, c.text, text, c.want)
		}
	}
}

// TestFieldTakesTheInstrumentsFigure: a half step must be accepted unrounded, or the recording rule
// could never meet a tie.
func TestFieldTakesTheInstrumentsFigure(t *testing.T) {
	for _, c := range All() {
		for _, f := range c.Factors {
			if f.Unit == quantity.Count {
				continue
			}
			if field := f.Field(); field.Places <= f.Record.Places() {
				t.Errorf("%s %s is typed with %d decimals and recorded with %d", c.ID, f.ID, field.Places, f.Record.Places())
			}
		}
	}
}
