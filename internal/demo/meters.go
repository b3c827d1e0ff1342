package demo

import (
	"context"
	"fmt"
	"time"

	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse/instruments"
)

// dialID is the old dial meter in the corner of the bench. Its charts are the
// example charts inside the program.
const dialID = "D1"

// meters are the moisture meters of the bench. Makes and figures are invented.
func meters() []meter.Meter {
	pt := func(text string) quantity.Amount { return quantity.Of(text, quantity.Point) }
	degrees := func(n int64) quantity.Amount { return quantity.Int(n, quantity.Fahrenheit) }
	return []meter.Meter{
		{
			ID: dialID, Model: "Example dial meter A", Serial: "0117", Method: meter.ByDial, Calibration: "A-2025",
			Tolerance: pt("0.5"),
		},
		{
			ID: meterID, Model: "Example digital meter B", Serial: "B-20458", Method: meter.Direct, Calibration: "example 2026",
			Ambient: quantity.Span{Low: degrees(45), High: degrees(95)}, MaxDifference: degrees(20), Tolerance: pt("0.4"),
		},
	}
}

// checked lists the checks of a meter against oven-dried references, in days before the season. The
// dial meter has been forgotten since.
var checked = map[string][]int{meterID: {42, 28, 14}, dialID: {44, 30}}

// checkEvery is the number of days between checks of the digital meter in the season.
const checkEvery = 7

// setUpMeters records the meters with their checks before the season.
func (s *season) setUpMeters(ctx context.Context) error {
	c := newChance(s.Seed, ofMeters)
	for _, m := range meters() {
		if err := instruments.SetMeter(ctx, s.desk, m); err != nil {
			return err
		}
		for _, before := range checked[m.ID] {
			if err := s.checkMeter(ctx, c, m, s.first.AddDays(-before)); err != nil {
				return err
			}
		}
	}
	return nil
}

// startMeters looks at the meters before the first test of a day.
func startMeters(ctx context.Context, s *season, day quantity.Date, at time.Time) error {
	if err := s.as(Tester, at); err != nil {
		return err
	}
	c := newChance(s.Seed+uint64(s.first.DaysUntil(day)), ofStarts)
	for _, m := range meters() {
		temperature := c.about(6600, 7000)
		err := instruments.StartMeter(ctx, s.desk, meter.StartCheck{
			Day: day, Meter: m.ID, By: Tester, Battery: true, Mark: true,
			Weight: quantity.Int(250, quantity.Gram), Balance: figure(25_000+10*c.about(-2, 2), quantity.Gram),
			Thermometer: figure(temperature, quantity.Fahrenheit), Other: figure(temperature+c.about(-60, 60), quantity.Fahrenheit),
		})
		if err != nil {
			return err
		}
	}
	return nil
}

// checkInSeason checks the digital meter against references on every seventh morning.
func (s *season) checkInSeason(ctx context.Context, d int) error {
	if d%checkEvery != 0 {
		return nil
	}
	day := s.first.AddDays(d)
	if err := s.as(Tester, s.hour(day, 6, 10)); err != nil {
		return err
	}
	return s.checkMeter(ctx, newChance(s.Seed+uint64(d), ofMeters), meters()[1], day)
}

// meterError is the error of one reading in hundredths of a point: around zero, with
// a standard deviation of 39 as single readings of country meters have it
// (Hurburgh 1985). The mean of three draws over a width has a sixth of it. One beyond what the house
// allows is drawn again: a meter that fails its check stops every ticket.
func meterError(c *chance) int64 {
	for {
		if e := c.about(-117, 117); -mostError <= e && e <= mostError {
			return e
		}
	}
}

// mostError is the largest error the house allows, in hundredths of a point.
const mostError = 100

// checkMeter reads three references of corn and one of soybeans on a meter.
func (s *season) checkMeter(ctx context.Context, c *chance, m meter.Meter, day quantity.Date) error {
	for i, oven := range []int64{1420, 1710, 2050, 1240} {
		crop := "corn"
		if i == 3 {
			crop = "soybeans"
		}
		oven += c.between(-30, 30)
		err := instruments.CheckMeter(ctx, s.desk, meter.Check{
			Day: day, Meter: m.ID, Calibration: m.Calibration, Crop: crop, Name: fmt.Sprintf("R%d", i+1), By: Tester,
			Reference: figure(oven, quantity.Percent), Reading: figure(oven+meterError(c), quantity.Percent),
			Sample: figure(c.about(6400, 7600), quantity.Fahrenheit),
		})
		if err != nil {
			return err
		}
	}
	return nil
}
