package meter

import (
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/quantity"
)

func plain(text string) quantity.Amount { return quantity.Of(text, quantity.Plain) }

// inMillimetres is a cell 100 mm long.
func inMillimetres(rod, can string) Capacitor {
	return Capacitor{Length: plain("100"), Rod: plain(rod), Can: plain(can), PerMetre: plain("1000")}
}

// L 0.10 m, radii 4 and 8 mm: 2 π x 8.854188 x 0.1 / ln 2 = 5.563250 / 0.693147
// = 8.026 pF; water at 20 °C stores 80.1 times as much.
func TestCellByHand(t *testing.T) {
	cell := inMillimetres("4", "8")
	for _, c := range []struct{ permittivity, places, want string }{
		{"1", "0.01", "8.03"}, {"1", "0.0001", "8.0261"}, {"1.0006", "0.01", "8.03"}, {"80.1", "0.1", "642.9"},
	} {
		got, err := cell.Picofarads(plain(c.permittivity), quantity.To(c.places, quantity.HalfUp))
		if err != nil || got.String() != c.want {
			t.Errorf("filled with %s: %s pF, %v; want %s", c.permittivity, got, err, c.want)
		}
	}
}

func TestCellsThatAreNone(t *testing.T) {
	for name, c := range map[string]Capacitor{
		"rod as wide as the can": inMillimetres("8", "8"), "rod wider": inMillimetres("9", "8"), "no rod": inMillimetres("0", "8"),
		"no length": {Length: plain("0"), Rod: plain("4"), Can: plain("8"), PerMetre: plain("1000")}, "nothing": {},
	} {
		if got, err := c.Picofarads(plain("1"), quantity.To("0.01", quantity.HalfUp)); err == nil {
			t.Errorf("%s stores %s pF", name, got)
		}
	}
}

// Twice the length stores twice as much, and only the ratio of the radii
// counts.
func TestCellFollowsItsMeasures(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rod := rapid.Int64Range(1, 50).Draw(t, "rod")
		can := rod + rapid.Int64Range(1, 50).Draw(t, "gap")
		one := Capacitor{Length: plain("100"), Rod: quantity.Int(rod, quantity.Plain), Can: quantity.Int(can, quantity.Plain), PerMetre: plain("1000")}
		long, wide := one, one
		long.Length = plain("200")
		wide.Rod, wide.Can = quantity.Int(7*rod, quantity.Plain), quantity.Int(7*can, quantity.Plain)
		stored := func(c Capacitor, places string) quantity.Amount {
			a, err := c.Picofarads(plain("1"), quantity.To(places, quantity.HalfUp))
			if err != nil {
				t.Fatal(err)
			}
			return a
		}
		if a, b := stored(one, "0.0000005"), stored(long, "0.000001"); !a.Add(a).Equal(b) {
			t.Fatalf("100 long stores %s pF, 200 long %s", a, b)
		}
		if a, b := stored(one, "0.000001"), stored(wide, "0.000001"); !a.Equal(b) {
			t.Fatalf("%d in %d stores %s pF, seven times as wide %s", rod, can, a, b)
		}
	})
}

// Water is 87.7 to 87.9 at 0 °C, 80.1 at 20 °C and 78.3 at 25 °C (CRC Handbook
// of Chemistry and Physics, from memory), and less the warmer it is.
func TestWaterPermittivity(t *testing.T) {
	tenths := quantity.To("0.1", quantity.HalfUp)
	for temperature, want := range map[quantity.Amount]string{
		degC("0"): "87.7", degC("20"): "80.1", degC("25"): "78.3", degF("68"): "80.1",
	} {
		if got, err := WaterPermittivity(temperature); err != nil || tenths.Apply(got).String() != want {
			t.Errorf("at %s: %s, %v; want %s", temperature, got, err, want)
		}
	}
	for _, outside := range []quantity.Amount{degC("-1"), degC("101"), pct("20")} {
		if got, err := WaterPermittivity(outside); err == nil {
			t.Errorf("at %s: %s", outside, got)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.Int64Range(0, 999).Draw(t, "tenths")
		at := func(n int64) quantity.Amount {
			a, err := WaterPermittivity(hundredths(10*n, quantity.Celsius))
			if err != nil {
				t.Fatal(err)
			}
			return a
		}
		if cool, warm := at(n), at(n+1); !warm.Less(cool) {
			t.Fatalf("at %d tenths of a degree %s, a tenth warmer %s", n, cool, warm)
		}
	})
}
