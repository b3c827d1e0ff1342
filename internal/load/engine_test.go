package load

import (
	"flag"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
)

// freeze writes the golden file of an engine that has none yet; one that is
// there is never written again.
var freeze = flag.Int64("freeze", 0, "write the golden bench working of this engine, which must have none")

const enginesFolder = "../../testdata/engines/"

func of(text string, u quantity.Unit) quantity.Amount { return quantity.Of(text, u) }

// frozenTests are samples tested in every way the bench knows.
func frozenTests() map[string]moisture.Tests {
	dial := func(seq int, at string) moisture.Reading {
		return moisture.Reading{Seq: seq, Method: meter.ByDial, Crop: "corn", Day: day, Tester: "A. Tester", Meter: "bench-1", Calibration: "A-2025",
			Chart: "example-corn-250g", Mass: of("250", quantity.Gram), Sample: of("64", quantity.Fahrenheit), Room: of("70", quantity.Fahrenheit), Dial: of(at, quantity.Dial)}
	}
	direct := func(seq int, percent string) moisture.Reading {
		return moisture.Reading{Seq: seq, Method: meter.Direct, Crop: "corn", Day: day, Tester: "A. Tester", Meter: "bench-2", Calibration: "B-7",
			Mass: of("400", quantity.Gram), Sample: of("60", quantity.Fahrenheit), Room: of("68", quantity.Fahrenheit), Percent: of(percent, quantity.Percent)}
	}
	oven := moisture.Reading{Seq: 1, Method: meter.ByOven, Crop: "corn", Day: day, Tester: "A. Tester",
		Dish: moisture.Dish{Wet: of("115.37", quantity.Gram), Dry: of("98.11", quantity.Gram), Tare: of("15.02", quantity.Gram)}}
	typed := moisture.Reading{Seq: 1, Method: meter.Typed, Crop: "corn", Day: day, Tester: "A. Tester", Percent: of("17.35", quantity.Percent), Reason: "from the inspector"}
	return map[string]moisture.Tests{
		"1 dial":      {Readings: []moisture.Reading{dial(1, "53")}},
		"2 three":     {Readings: []moisture.Reading{dial(1, "53"), dial(2, "53.5"), dial(3, "58"), dial(4, "53.5")}, Exclusions: []moisture.Exclusion{{Test: 3, Rule: moisture.FarthestFromMiddle, By: "A. Tester", Reason: "cell not level"}}},
		"3 direct":    {Readings: []moisture.Reading{direct(1, "18.13"), direct(2, "18.38")}},
		"4 oven":      {Readings: []moisture.Reading{oven}},
		"5 typed":     {Readings: []moisture.Reading{typed}},
		"6 no figure": {Readings: []moisture.Reading{dial(1, "400")}},
	}
}

// benchWorking returns an engine's working of the samples.
func benchWorking(t *testing.T, n settle.Engine) string {
	t.Helper()
	text, err := os.ReadFile(enginesFolder + "chart.toml")
	if err != nil {
		t.Fatal(err)
	}
	c, err := chart.Read("chart.toml", text)
	if err != nil {
		t.Fatal(err)
	}
	shelf, err := chart.NewSet(c)
	if err != nil {
		t.Fatal(err)
	}
	meters := []meter.Meter{
		{ID: "bench-1", Model: "Example dial meter A", Method: meter.ByDial, Calibration: "A-2025", Tolerance: of("0.5", quantity.Point)},
		{ID: "bench-2", Model: "Example digital meter B", Method: meter.Direct, Calibration: "B-7", Tolerance: of("0.4", quantity.Point)},
	}
	standings := map[string]meter.Status{"bench-1": {Meter: "bench-1", State: meter.Good}, "bench-2": {Meter: "bench-2", State: meter.Good}}
	house := moisture.Procedure{Policy: moisture.DefaultPolicy(), Trust: moisture.DefaultTrust()}
	var b strings.Builder
	all := frozenTests()
	for _, name := range slices.Sorted(maps.Keys(all)) {
		m := benchMoisture{bench: Bench{Tests: all[name], Meters: meters, Standings: standings, House: house}, charts: shelf}
		var s worksheet.Sheet
		m.Work(&s, quantity.To("0.1", quantity.HalfUp), n)
		fmt.Fprintf(&b, "%s\n%s", name, s.Digest())
	}
	return b.String()
}

// The bench's steps are part of a settlement's working, so every engine does
// them for ever as it did. Whatever changes them belongs to a new engine.
func TestBenchWorkingIsFrozen(t *testing.T) {
	for _, n := range settle.Engines() {
		name := fmt.Sprintf("%sengine-%s-bench.txt", enginesFolder, n)
		got := benchWorking(t, n)
		want, err := os.ReadFile(name)
		if settle.Engine(*freeze) == n && os.IsNotExist(err) {
			want, err = []byte(got), os.WriteFile(name, []byte(got), 0o644)
		}
		if err != nil {
			t.Fatal(err)
		}
		if got != string(want) {
			t.Errorf("engine %s works the bench as\n%s\nand worked it as\n%s", n, got, want)
		}
	}
}
