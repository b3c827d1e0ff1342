package dryness

import (
	"errors"
	"testing"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

func storing(moisture, fahrenheit, days string) Storing {
	return Storing{Crop: "corn", Moisture: pct(moisture), Temperature: quantity.Of(fahrenheit, quantity.Fahrenheit), Days: quantity.Of(days, quantity.Day),
		Bushel: quantity.Int(56, quantity.LbPerBushel), FuelPrice: quantity.Of("2", quantity.Dollar.Per(quantity.Gallon)), PowerPrice: quantity.Of("0.10", quantity.Dollar.Per(quantity.KWh))}
}

// Corn of 17 % keeps 130 days at 50 °F by the cereal table, 280 at 40 °F.
func TestStoringIsAskedOfTheTables(t *testing.T) {
	for _, c := range []struct {
		days   string
		enough bool
	}{{"130", true}, {"131", false}} {
		s, err := storing("17", "50", c.days).Answer()
		if err != nil || s.Enough() != c.enough || len(s.By) != 2 || (len(s.Ways) == 0) != c.enough {
			t.Errorf("%s days: %+v %v", c.days, s, err)
		}
	}
	s, err := storing("17", "50", "151").Answer()
	if err != nil || len(s.Recommended) == 0 || len(s.Ways) != 5 {
		t.Fatalf("%+v %v", s, err)
	}
	// 1.5 points at 0.02 gal and $2, and 0.01 kWh at 10 c: 6.15 cents; 100 lb of 17 % are
	// 98.22 lb of 15.5 %.
	if heat := s.Ways[0]; !heat.Cost.Equal(quantity.Of("0.0615", quantity.DollarsPerBu)) || !heat.Left.Equal(quantity.Of("98.22", quantity.Lb)) {
		t.Errorf("heat costs %s and leaves %s", heat.Cost, heat.Left)
	}
	// 1.5 points at 0.31 kWh and 10 c.
	if air := s.Ways[1]; air.Days.Sign() <= 0 || !air.Cost.Equal(quantity.Of("0.0465", quantity.DollarsPerBu)) {
		t.Errorf("air: %+v", air)
	}
	if _, err := storing("31", "50", "10").Answer(); !errors.Is(err, message.Invalid) {
		t.Errorf("out of reach: %v", err)
	}
}

// What the house posts stands beside the ways at home; without a charge for drying it dries nothing.
func TestStoringTellsWhatIsPosted(t *testing.T) {
	q := storing("17", "50", "151")
	q.Posted = Posted{Edition: "own-2026", DriedTo: pct("15"), Drying: quantity.Of("0.09", quantity.DollarsPerBu), Taken: quantity.Of("0.12", quantity.DollarsPerBu), Left: quantity.Of("97.15", quantity.Lb)}
	s, err := q.Answer()
	if err != nil || len(s.Ways) != 6 || !s.Ways[0].Cost.Equal(q.Posted.Drying) || !s.Ways[0].Left.Equal(q.Posted.Left) {
		t.Fatalf("%+v %v", s.Ways, err)
	}
	if sold := s.Ways[4]; !sold.Cost.Equal(q.Posted.Taken) || !sold.Left.Equal(q.Posted.Left) {
		t.Errorf("sold wet: %+v", sold)
	}
	q.Posted.Drying = quantity.Amount{}
	if s, err = q.Answer(); err != nil || len(s.Ways) != 5 {
		t.Errorf("without drying: %+v %v", s.Ways, err)
	}
}
