package meter

import (
	"fmt"
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// checksOff are checks on 15 % references that are off by so many points.
func checksOff(errors ...string) []Check {
	var out []Check
	for i, e := range errors {
		out = append(out, Check{Seq: i + 1, Day: quantity.MustDate("2025-10-31"), Meter: "bench-1", Calibration: "A-2025", Crop: "corn", Name: fmt.Sprintf("R%d", i+1),
			Reference: pct("15"), Reading: pct("15").Add(pct(e)), Sample: degF("68"), By: "A. Tester"})
	}
	return out
}

func biasOf(t *testing.T, last int, errors ...string) (Bias, *worksheet.Sheet) {
	t.Helper()
	s := &worksheet.Sheet{}
	b, err := WorkBias(s, checksOff(errors...), last)
	if err != nil {
		t.Fatal(err)
	}
	return b, s
}

// By hand: mean 1.5/5 = 0.3; squares 0.09+0.25+0.01+0.16+0.04 = 0.55; variance
// (0.55 - 2.25/5)/4 = 0.025; SD 0.15811; SE root of 0.005 = 0.07071; t for 4 is
// 2.776; to either side 2.776 x 0.0707 = 0.1962632, up to 0.1963.
func TestBiasByHand(t *testing.T) {
	b, s := biasOf(t, 0, "0.3", "0.5", "0.1", "0.4", "0.2")
	for id, want := range map[string]string{
		"bias.mean": "0.3 pt", "bias.squares": "0.55 pt·pt", "bias.variance": "0.025 pt·pt", "bias.sd": "0.1581 pt",
		"bias.se": "0.0707 pt", "bias.t": "2.776", "bias.half": "0.1963 pt", "bias.low": "0.1037 pt", "bias.high": "0.4963 pt",
	} {
		if step, ok := s.Step(id); !ok || step.Value().Rat().Cmp(quantity.Of(strings.Fields(want)[0], quantity.Plain).Rat()) != 0 {
			t.Errorf("%s is %v, want %s", id, step.Value(), want)
		}
	}
	if !b.Shown || !strings.Contains(b.Sentence.String(), "between 0.10 pt and 0.50 pt") || !strings.Contains(b.Sentence.String(), "No reading is changed") {
		t.Errorf("shown %v: %s", b.Shown, b.Sentence)
	}
}

// Cushny and Peebles' hours of sleep in Student, "The Probable Error of a Mean"
// (1908): ten differences with mean 1.58, SD 1.23, and a 95 % interval of 0.7001
// to 2.4599 as statistics programs print it (from memory).
func TestBiasOnStudentsOwnData(t *testing.T) {
	b, _ := biasOf(t, 0, "1.2", "2.4", "1.3", "1.3", "0", "1.0", "1.8", "0.8", "4.6", "1.4")
	near := func(step *worksheet.Step, want, bound string) {
		t.Helper()
		off := new(big.Rat).Sub(step.Value().Rat(), ratio(want))
		if off.Abs(off).Cmp(ratio(bound)) > 0 {
			t.Errorf("%s is %s, want %s", step.Label(), step.Value(), want)
		}
	}
	near(b.Mean, "1.58", "0")
	near(b.SD, "1.23", "0.005")
	near(b.Low, "0.7001142", "0.0005")
	near(b.High, "2.4598858", "0.0005")
}

// Single errors spread by 0.39 (Hurburgh 1985): one reference cannot show a
// bias of 0.3 points, its standard error being 0.39; ten can, theirs being 0.12.
// Five 0.37 above and five 0.37 below 0.3 spread by root of 10 x 0.37²/9 = 0.39.
func TestTenReferencesShowWhatOneCannot(t *testing.T) {
	ten, _ := biasOf(t, 0, "0.67", "-0.07", "0.67", "-0.07", "0.67", "-0.07", "0.67", "-0.07", "0.67", "-0.07")
	if ten.SD.Printed() != "0.3900 pt" || ten.SE.Printed() != "0.1233 pt" || !ten.Shown {
		t.Errorf("ten: SD %s, SE %s, shown %v", ten.SD.Printed(), ten.SE.Printed(), ten.Shown)
	}
	one, s := biasOf(t, 0, "0.3")
	if one.Shown || one.SE != nil || one.Low != nil || !strings.Contains(one.Sentence.String(), "0.39 pt") {
		t.Errorf("one: shown %v, SE %v: %s", one.Shown, one.SE, one.Sentence)
	}
	if step, ok := s.Step("bias.se"); !ok || step.Kind() != worksheet.NotApplied {
		t.Errorf("the sheet does not say why there is no standard error")
	}
	two, _ := biasOf(t, 0, "0.67", "-0.07")
	if two.Shown || !strings.Contains(two.Sentence.String(), "show no bias") {
		t.Errorf("two: shown %v: %s", two.Shown, two.Sentence)
	}
}

func TestBiasOverTheLastChecks(t *testing.T) {
	b, _ := biasOf(t, 2, "5", "-5", "0.1", "0.3")
	if b.N != 2 || b.Mean.Value().String() != "0.2 pt" {
		t.Errorf("over %d: %s", b.N, b.Mean.Value())
	}
	low, _ := biasOf(t, 0, "-0.3", "-0.3", "-0.31")
	if !low.Shown || low.High.Value().Sign() >= 0 {
		t.Errorf("a meter that reads low: %s", low.Sentence)
	}
	same, _ := biasOf(t, 0, "0", "0", "0")
	if same.Shown || same.SD.Printed() != "0.0000 pt" {
		t.Errorf("a perfect meter: %s", same.Sentence)
	}
}

func TestBiasRefusesMixedChecks(t *testing.T) {
	var s worksheet.Sheet
	if _, err := WorkBias(&s, nil, 10); !errortest.NotFound().Met(err) {
		t.Errorf("no checks: %v", err)
	}
	mixed := checksOff("0.1", "0.2")
	mixed[1].Calibration = "A-2026"
	if _, err := WorkBias(&s, mixed, 10); !errortest.Invalid().Met(err) {
		t.Errorf("two calibrations: %v", err)
	}
}

// The interval lies evenly about the mean, and adding one amount to every error
// moves it by that amount and widens nothing.
func TestBiasMovesWithItsErrors(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		hundredths := rapid.SliceOfN(rapid.IntRange(-200, 200), 2, 12).Draw(t, "errors")
		shift := rapid.IntRange(-100, 100).Draw(t, "shift")
		text := func(n int) string { return big.NewRat(int64(n), 100).FloatString(2) }
		var errors, moved []string
		for _, h := range hundredths {
			errors, moved = append(errors, text(h)), append(moved, text(h+shift))
		}
		var one, other worksheet.Sheet
		a, errA := WorkBias(&one, checksOff(errors...), 0)
		b, errB := WorkBias(&other, checksOff(moved...), 0)
		if errA != nil || errB != nil {
			t.Fatal(errA, errB)
		}
		if !b.Mean.Value().Sub(a.Mean.Value()).Equal(pt(text(shift))) || !a.SE.Value().Equal(b.SE.Value()) {
			t.Fatalf("mean %s to %s, SE %s to %s", a.Mean.Value(), b.Mean.Value(), a.SE.Value(), b.SE.Value())
		}
		if twice := a.Mean.Value().Add(a.Mean.Value()); !a.Low.Value().Add(a.High.Value()).Equal(twice) {
			t.Fatalf("%s to %s about %s", a.Low.Value(), a.High.Value(), a.Mean.Value())
		}
	})
}
