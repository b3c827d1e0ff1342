package housetest

import (
	"testing"
	"time"

	"tenthpoint/internal/load"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/instruments"
	"tenthpoint/schedules"
)

// BenchScene is a scene with a dial meter, checked today, and the example
// charts.
func BenchScene(t *testing.T) *Scene {
	s := New(t)
	set, err := schedules.Charts()
	Must(t, err)
	s.Desk, err = scalehouse.Open(ctx, s.Store, scalehouse.Options{
		Name: "scale house", Rates: Rates(t), Charts: set, Place: time.UTC, Who: Manager, Clock: s.Clock(),
	})
	Must(t, err)
	Must(t, instruments.SetMeter(ctx, s.Desk, meter.Meter{ID: "bench-1", Model: "Example dial meter A", Method: meter.ByDial, Calibration: "A-2025", Tolerance: quantity.Of("0.5", quantity.Point)}))
	Must(t, instruments.CheckMeter(ctx, s.Desk, meter.Check{
		Meter: "bench-1", Calibration: "A-2025", Crop: "corn", Name: "R1",
		Reference: quantity.Of("16.0", quantity.Percent), Reading: quantity.Of("16.1", quantity.Percent),
		Sample: quantity.Int(70, quantity.Fahrenheit),
	}))
	return s.As(Clerk)
}

// DialReading is one test read on the dial.
func DialReading(dial string, massG int64) moisture.Tests {
	return moisture.Tests{Readings: []moisture.Reading{{
		Seq: 1, Method: meter.ByDial, Crop: "corn", Day: quantity.MustDate("2026-10-01"), Tester: Tester,
		Meter: "bench-1", Calibration: "A-2025", Chart: "example-corn-250g", Mass: quantity.Int(massG, quantity.Gram),
		Sample: quantity.Int(65, quantity.Fahrenheit), Room: quantity.Int(68, quantity.Fahrenheit), Dial: quantity.Of(dial, quantity.Dial),
	}}}
}

// Check enters a check of the meter: what it read of a sample of known moisture.
func (s *Scene) Check(day, reference, reading string) error {
	return instruments.CheckMeter(ctx, s.Desk, meter.Check{
		Day: quantity.MustDate(day), Meter: "bench-1", Crop: "corn", Name: "R2",
		Reference: quantity.Of(reference, quantity.Percent), Reading: quantity.Of(reading, quantity.Percent), Sample: quantity.Int(70, quantity.Fahrenheit),
	})
}

// TicketWithSample issues a ticket whose sample is on the shelf.
func TicketWithSample(s *Scene) (id string, number int64) {
	s.T.Helper()
	id = s.Arrive(52300)
	s.Probe(id, "Shelf A1")
	sample := s.Load(id).Sample
	sample.Moisture = SampleOf("18.0").Moisture
	Must(s.T, scalehouse.RecordSample(ctx, s.Desk, id, sample))
	s.Weigh(id, load.Tare, 24300)
	number, err := scalehouse.Issue(ctx, s.Desk, id)
	Must(s.T, err)
	return id, number
}
