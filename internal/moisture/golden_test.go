package moisture

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/worksheet"
)

var update = flag.Bool("update", false, "write the golden workings anew")

func golden(t *testing.T, name, got string) {
	t.Helper()
	path := "../../testdata/bench/" + name
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), got); diff != "" {
		t.Errorf("%s differs (-kept +now); run the test with -update if the change is meant:\n%s", name, diff)
	}
}

func shipped(t *testing.T, ids ...string) *chart.Set {
	t.Helper()
	var charts []*chart.Chart
	for _, id := range ids {
		text, err := os.ReadFile("../../schedules/charts/" + id + ".toml")
		if err != nil {
			t.Fatal(err)
		}
		c, err := chart.Read(id+".toml", text)
		if err != nil {
			t.Fatal(err)
		}
		charts = append(charts, c)
	}
	shelf, err := chart.NewSet(charts...)
	if err != nil {
		t.Fatal(err)
	}
	return shelf
}

// The working of a corn sample near a limit, three tests, one left out, as the
// grower may read it; the figures were gone through by hand from the chart.
func TestWorkingOfASample(t *testing.T) {
	e := atBench(t)
	e.Charts = shipped(t, "example-corn-250g")
	test := func(seq int, d string) Reading {
		r := byDial(seq, d)
		r.Chart, r.Sample, r.Room = "example-corn-250g", degF("64"), degF("70")
		return r
	}
	tests := Tests{Readings: []Reading{test(1, "53"), test(2, "53.5"), test(3, "58"), test(4, "53.5")},
		Exclusions: []Exclusion{{Test: 3, Rule: FarthestFromMiddle, By: "A. Tester", Reason: "cell not level"}}}
	h := house()
	h.Limits = []Limit{{Name: message.Words("Drying trigger"), At: pct("14.5")}}
	var s worksheet.Sheet
	r, err := tests.Determine(&s, e, h)
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	b.WriteString(s.Text(78))
	b.WriteString("\nREMARKS\n")
	for _, f := range r.Flags {
		fmt.Fprintf(&b, "%s\n", f.Sentence())
	}
	golden(t, "corn-sample.txt", b.String())
}

// Barley in °C under a thermometer in °F, corrected by test weight.
func TestWorkingWithTestWeightAndTwoScales(t *testing.T) {
	e := atBench(t)
	e.Charts = shipped(t, "example-barley-225g")
	r := byDial(1, "62")
	r.Crop, r.Chart, r.Mass = "barley", "example-barley-225g", gram("225")
	r.Sample, r.TestWeight = degF("63.5"), lbPerBu("46.5")
	var s worksheet.Sheet
	if _, err := (Tests{Readings: []Reading{r}}).Determine(&s, e, house()); err != nil {
		t.Fatal(err)
	}
	golden(t, "barley-sample.txt", s.Text(78))
}
