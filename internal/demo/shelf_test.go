package demo

import (
	"testing"

	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
)

// The shelf is cleared every evening, so that what is due this morning became
// due overnight; the bench says what it calls dry; and one truck on the yard was
// tested three times on the digital meter.
func TestBenchOfTheDemo(t *testing.T) {
	d := opened(t, filled(t, Options{Loads: 300, Seed: 5, Now: noon, Rates: shipped(t)}))
	due, err := office.SamplesDue(ctx, d, d.Today())
	must(t, err)
	if len(due) == 0 {
		t.Error("no sample is due in the middle of a season")
	}
	for _, r := range due {
		if r.Until != d.Today().AddDays(-1) {
			t.Errorf("sample %s was to be kept through %s and is still there", r.Number, r.Until)
		}
	}
	yard, err := office.Yard(ctx, d)
	must(t, err)
	atBench := 0
	for _, l := range yard {
		m := l.Sample.Moisture
		if m == nil || m.Bench == nil {
			continue
		}
		atBench++
		if len(m.Bench.Tests.Readings) != 3 || m.Meter != meterID {
			t.Errorf("load %s was tested as %+v", l.ID, m)
		}
		if advice, found, err := office.DryEnough(ctx, d, l); err != nil || !found || len(advice.Verdicts) != 3 {
			t.Errorf("load %s: %+v, %v", l.ID, advice, err)
		}
	}
	if atBench != 1 {
		t.Errorf("%d trucks on the yard were tested at the bench", atBench)
	}
	for _, k := range crops {
		rules, found, err := office.DryRules(ctx, d, &load.Load{Details: load.Details{Commodity: k.commodity, Day: d.Today()}})
		if err != nil || !found || rules.StoreLong.Unit() != quantity.Percent {
			t.Errorf("%s: %+v, %v", k.commodity, rules, err)
		}
	}
}
