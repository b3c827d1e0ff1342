package quantity

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestUnitsPrint(t *testing.T) {
	for want, u := range map[string]Unit{
		"":         Plain,
		"lb":       Lb,
		"$/bu/pt":  Dollar.Per(Bushel).Per(Point),
		"%":        Percent,
		"1/bu":     Plain.Per(Bushel),
		"pt·pt":    Point.Times(Point),
		"$·lb":     Lb.Times(Dollar),
		"lb/bu":    LbPerBushel,
		"kg/hL":    KgPerHL,
		"%/dial":   Percent.Per(Dial),
		"lb·%/bu":  Lb.Times(Percent).Per(Bushel),
		"$/t":      DollarsPerT,
		"$/cwt/pt": DollarsPerCwt.Per(Point),
	} {
		if got := u.String(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// TestUnitsCancel: dollars per bushel and point, by points, by bushels, are
// dollars and nothing else.
func TestUnitsCancel(t *testing.T) {
	rate := Of("0.045", Dollar.Per(Bushel).Per(Point))
	charge := rate.Mul(Of("4.5", Point)).Mul(Int(900, Bushel))
	if !charge.Equal(Of("182.25", Dollar)) {
		t.Errorf("%s, want $182.25", charge)
	}
}

func TestUnitsReadBackAsPrinted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := drawUnit(t)
		if u == Plain {
			return
		}
		back, err := ParseUnit(u.String())
		if err != nil || back != u {
			t.Fatalf("%q came back as %q, %v", u, back, err)
		}
	})
}

func TestIsMass(t *testing.T) {
	for _, u := range []Unit{Lb, Kg, Cwt, Tonne, Gram} {
		if !u.IsMass() {
			t.Errorf("%s is a weight", u)
		}
	}
	for _, u := range []Unit{Plain, Bushel, Percent, LbPerBushel, Lb.Times(Lb)} {
		if u.IsMass() {
			t.Errorf("%q is no weight", u)
		}
	}
}

// FuzzParseUnit: what is taken prints as something that reads the same.
func FuzzParseUnit(f *testing.F) {
	for _, text := range []string{"lb", "$/bu/pt", "1/bu", "pt·pt", "lb/", "/", "1", "lb / bu", "°F", "lb/lb/lb"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		u, err := ParseUnit(text)
		if err != nil || u == Plain {
			return
		}
		back, err := ParseUnit(u.String())
		if err != nil || back != u {
			t.Errorf("%q is %q, which came back as %q, %v", text, u, back, err)
		}
	})
}

// IsUnit agrees with ParseUnit on every text.
func TestIsUnitIsWhatParses(t *testing.T) {
	for text, want := range map[string]bool{
		"lb": true, "$/bu/pt": true, " lb · % / bu ": true, "1/bu": true, "1": true,
		"of": false, "lb/": false, "/lb": false, "lb·": false, "lb/of": false, strings.Repeat("lb/", 40) + "lb": false,
	} {
		if _, err := ParseUnit(text); IsUnit(text) != want || (err == nil) != want {
			t.Errorf("%q: %v, and ParseUnit says %v; want %v", text, IsUnit(text), err, want)
		}
	}
}
