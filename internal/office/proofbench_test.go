package office_test

import (
	"strings"
	"testing"

	"tenthpoint/internal/explanation"
	"tenthpoint/internal/load"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/paper/pdf/pdfwords"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/scalehouse/instruments"
)

// replicates are three dial readings of one sample.
func replicates(dials ...string) moisture.Tests {
	var tests moisture.Tests
	for i, dial := range dials {
		one := housetest.DialReading(dial, 250).Readings[0]
		one.Seq = i + 1
		tests.Readings = append(tests.Readings, one)
	}
	return tests
}

// A moisture from the bench is told by the cells of its chart, test by test, with
// the meter's last check and what its tolerance is worth.
func TestProofTellsTheBench(t *testing.T) {
	s := housetest.BenchScene(t)
	id := s.Arrive(52300)
	s.Weigh(id, load.Tare, 24300)
	tested, err := scalehouse.TestSample(ctx, s.Desk, s.Load(id), replicates("70", "71", "70"))
	must(t, err)
	must(t, scalehouse.RecordTest(ctx, s.Desk, id, load.Sample{Number: "S9", Tester: housetest.Tester, Kept: "Shelf 3", Until: quantity.MustDate("2026-10-04")}, tested))
	number, err := scalehouse.Issue(ctx, s.Desk, id)
	must(t, err)
	f := s.Proof(number, office.ProofOptions{})
	doc := explanation.Compose(f)
	housetest.Golden(t, "proof-bench.txt", doc.Text(96))
	text := doc.Text(200)
	for _, want := range []string{"was checked on 2026-10-01", "the meter's tolerance drier", "the meter's tolerance wetter", "S9, Shelf 3, kept through 2026-10-04"} {
		if !strings.Contains(text, want) {
			t.Errorf("does not say %q", want)
		}
	}
	pages, err := pdfwords.Pages(housetest.PDF(t, doc, report.Page{}))
	must(t, err)
	if len(pages) > 4 { // three tests by chart, two pages of everything else with the check page
		t.Errorf("%d pages", len(pages))
	}
	// The meter is checked again and fails: the proof shows its status on the day.
	s.At("2026-10-20 10:00")
	must(t, instruments.CheckMeter(ctx, s.Desk, meter.Check{Meter: "bench-1", Calibration: "A-2025", Crop: "corn", Name: "R2",
		Reference: quantity.Of("16.0", quantity.Percent), Reading: quantity.Of("19.0", quantity.Percent), Sample: quantity.Int(70, quantity.Fahrenheit)}))
	if again := explanation.Compose(s.Proof(number, office.ProofOptions{})).Text(200); again != text {
		t.Error("the proof changed with a later check of the meter")
	}
}
