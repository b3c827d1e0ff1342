package moisture

import (
	"errors"
	"os"
	"strings"
	"testing"

	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
)

var day = quantity.MustDate("2025-10-31")

// atBench is a bench with one dial meter and the small chart, checked lately.
func atBench(t *testing.T) Equipment {
	t.Helper()
	shelf, err := chart.NewSet(smallChartFile(t, "example = true", "example = false"))
	if err != nil {
		t.Fatal(err)
	}
	return Equipment{
		Charts: shelf,
		Meters: []meter.Meter{
			{ID: "bench-1", Model: "Example dial meter A", Method: meter.ByDial, Calibration: "A-2025", Tolerance: pt("0.5")},
			{ID: "bench-2", Model: "Example digital meter B", Method: meter.Direct, Calibration: "B-7", Tolerance: pt("0.4"),
				Ambient: quantity.Span{Low: degC("10"), High: degC("30")}, MaxDifference: degC("10"),
				Crops: []meter.CropLimits{{Crop: "corn", Mass: gram("400"), Moisture: quantity.Span{Low: pct("8"), High: pct("30")}, Sample: quantity.Span{Low: degF("32"), High: degF("110")}}}},
		},
		Statuses: map[string]meter.Status{"bench-1": {Meter: "bench-1", State: meter.Good}, "bench-2": {Meter: "bench-2", State: meter.Good}},
	}
}

// smallChartFile is the chart that the tests of charts use.
func smallChartFile(t *testing.T, replace ...string) *chart.Chart {
	t.Helper()
	text, err := os.ReadFile("chart/testdata/small.toml")
	if err != nil {
		t.Fatal(err)
	}
	c, err := chart.Read("small.toml", []byte(strings.NewReplacer(replace...).Replace(string(text))))
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// byDial is a reading with nothing wrong with it: 14 % on the small chart.
func byDial(seq int, d string) Reading {
	return Reading{Seq: seq, Method: meter.ByDial, Crop: "corn", Day: day, Tester: "A. Tester", Meter: "bench-1", Calibration: "A-2025",
		Chart: "small", Mass: gram("250"), Sample: degF("60"), Room: degF("68"), Dial: dial(d)}
}

// direct is a digital reading with nothing wrong with it.
func direct(seq int, percent string) Reading {
	return Reading{Seq: seq, Method: meter.Direct, Crop: "corn", Day: day, Tester: "A. Tester", Meter: "bench-2", Calibration: "B-7",
		Mass: gram("400"), Sample: degF("60"), Room: degF("68"), Percent: pct(percent)}
}

// house tests once, with nothing near.
func house() Procedure { return Procedure{Policy: DefaultPolicy(), Trust: DefaultTrust()} }

// expectErrors compares a list of errors with what each must be, in order.
func expectErrors(t *testing.T, name string, got []error, want ...errortest.Want) {
	t.Helper()
	if len(got) != len(want) {
		t.Errorf("%s: %d errors, want %d: %v", name, len(got), len(want), errors.Join(got...))
		return
	}
	for i, err := range got {
		if !want[i].Met(err) {
			t.Errorf("%s: %v; want %v", name, err, want[i])
		}
	}
}

// expectFlags compares the codes of flags with a list, in order.
func expectFlags(t *testing.T, name string, got []Flag, want ...Code) {
	t.Helper()
	codes := make([]string, len(got))
	for i, f := range got {
		codes[i] = string(f.Code)
		if f.What.IsZero() || f.Why.IsZero() || f.Do.IsZero() {
			t.Errorf("%s: flag %s lacks what, why or what to do: %+v", name, f.Code, f)
		}
	}
	wanted := make([]string, len(want))
	for i, c := range want {
		wanted[i] = string(c)
	}
	if strings.Join(codes, " ") != strings.Join(wanted, " ") {
		t.Errorf("%s: flags %v, want %v", name, codes, wanted)
	}
}

func lbPerBu(text string) quantity.Amount { return quantity.Of(text, quantity.LbPerBushel) }
