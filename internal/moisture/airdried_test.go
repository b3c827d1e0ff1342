package moisture

import (
	"testing"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// By the formula of the Official Grain Grading Guide, chapter 2: 1000 g that weigh
// 800 g when the meter reads 15.0 % lost 20 %, and had (100 - 20) x 15 / 100 + 20 =
// 32.0 %.
func TestAirDriedSample(t *testing.T) {
	for _, c := range []struct{ wet, dry, reading, want string }{
		{"1000", "800", "15.0", "32.0 %"}, {"500", "450", "18.5", "26.7 %"}, {"750.5", "611.3", "14.2", "30.1 %"},
	} {
		a := AirDried{quantity.Of(c.wet, quantity.Gram), quantity.Of(c.dry, quantity.Gram), quantity.Of(c.reading, quantity.Percent)}
		if faults := a.Faults(); len(faults) > 0 {
			t.Fatal(faults)
		}
		if got := a.Work(&worksheet.Sheet{}).Printed(); got != c.want {
			t.Errorf("%s g to %s g at %s %%: %s, want %s", c.wet, c.dry, c.reading, got, c.want)
		}
	}
	for _, c := range [][3]string{{"800", "1000", "15"}, {"800", "800", "15"}, {"800", "0", "15"}, {"800", "700", "0"}, {"800", "700", "100"}} {
		a := AirDried{quantity.Of(c[0], quantity.Gram), quantity.Of(c[1], quantity.Gram), quantity.Of(c[2], quantity.Percent)}
		if len(a.Faults()) != 1 {
			t.Errorf("%v has the faults %v", c, a.Faults())
		}
	}
}
