package main

import (
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
)

// sums reads loads that are in no book.
type sums struct {
	set   *rates.Set
	today quantity.Date
}

// sum is one such load under its edition.
type sum struct {
	facts   settle.Facts
	edition *rates.Edition
}

func (s *sum) find(f load.Finding) {
	found := settle.Finding{Factor: f.Factor, Present: f.Present, Amount: quantity.Zero(quantity.Count), Source: "as given"}
	if f.Amount != nil {
		found.Amount = *f.Amount
	}
	s.facts.Findings = append(s.facts.Findings, found)
}

// inCell is a fault of one cell.
type inCell struct {
	column string
	error
}

func (e inCell) Unwrap() error { return e.error }

// read makes a load of its cells, by the names of the columns of a batch.
func (s sums) read(cells map[string]string) (*sum, error) {
	c, err := commodityIn(cells["commodity"])
	if err != nil {
		return nil, inCell{"commodity", err}
	}
	day, err := dateIn("Day", cells["day"])
	if err != nil {
		return nil, inCell{"day", err}
	}
	if day.IsZero() {
		day = s.today
	}
	e, err := s.set.On(cells["schedule"], c.ID, day)
	if err != nil {
		return nil, inCell{"day", err}
	}
	out := &sum{edition: e}
	return out, out.figures(cells)
}

// figures reads weights, moisture and price.
func (s *sum) figures(cells map[string]string) error {
	gross, err := weightIn("Gross", cells["gross"], s.edition.Units.Weight)
	if err != nil {
		return inCell{"gross", err}
	}
	tare, err := weightIn("Tare", cells["tare"], s.edition.Units.Weight)
	if err != nil {
		return inCell{"tare", err}
	}
	s.facts.Drafts = []settle.Draft{{Gross: gross, Tare: tare, GrossSource: "as given", TareSource: "as given"}}
	moisture, err := moistureIn(cells["moisture"])
	if err != nil {
		return inCell{"moisture", err}
	}
	s.facts.Moisture = settle.Reading{Percent: moisture, Source: "as given"}
	if cells["price"] == "" {
		return nil
	}
	price, err := priceIn(cells["price"], s.edition.Units.Settle)
	if err != nil {
		return inCell{"price", err}
	}
	s.facts.Price = &settle.Price{Amount: price, Source: "as given"}
	return nil
}
