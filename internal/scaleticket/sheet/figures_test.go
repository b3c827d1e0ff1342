package sheet

import "testing"

// TestFigureAndUnit: the unit is set small in every language, money is not parted.
func TestFigureAndUnit(t *testing.T) {
	for value, want := range map[string]struct {
		number, unit string
		isFigure     bool
	}{
		"52,300 lb":                    {"52,300", "lb", true},
		"52\u202f300\u00a0lb":          {"52\u202f300", "lb", true},
		"18,4\u00a0%":                  {"18,4", "%", true},
		"$3,052.18":                    {"$3,052.18", "", true},
		"3\u202f052,18\u00a0$":         {"3\u202f052,18\u00a0$", "", true},
		"price not set":                {"price", "not set", false},
		"pas encore de prix\u00a0: 12": {"pas", "encore de prix\u00a0: 12", false},
	} {
		number, unit, isFigure := figureAndUnit(value)
		if number != want.number || unit != want.unit || isFigure != want.isFigure {
			t.Errorf("%q: %q, %q, %v", value, number, unit, isFigure)
		}
	}
}
