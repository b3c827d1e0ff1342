package demo

import (
	"context"

	"tenthpoint/internal/load"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
)

// testAtBench tests a load's sample with the elevator's digital meter, three times as the tester
// does near a limit, and records the tests with their mean.
func (v *visit) testAtBench(ctx context.Context) error {
	d, c := v.season.desk, v.season.chance
	l, err := office.Load(ctx, d, v.id)
	if err != nil {
		return err
	}
	var tests moisture.Tests
	for n := range 3 {
		percent := v.sample.Moisture.Percent.Sub(figure(10, quantity.Percent)).Add(figure(10*c.between(0, 2), quantity.Percent))
		tests.Readings = append(tests.Readings, moisture.Reading{
			Seq: n + 1, Method: meter.Direct, Crop: l.Details.Commodity, Day: d.Today(), Tester: Tester,
			Meter: meterID, Calibration: meters()[1].Calibration, Percent: percent,
			Sample: figure(100*c.between(58, 68), quantity.Fahrenheit), Room: figure(100*c.between(62, 70), quantity.Fahrenheit),
		})
	}
	tested, err := scalehouse.TestSample(ctx, d, l, tests)
	if err != nil {
		return err
	}
	sample := v.sample
	sample.Moisture = &load.Moisture{}
	return scalehouse.RecordTest(ctx, d, v.id, sample, tested)
}
