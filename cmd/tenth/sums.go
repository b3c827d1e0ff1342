package main

import (
	"slices"
	"strings"

	"tenthpoint/internal/entry"
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

// notTried are the columns of a batch that say nothing of the load itself.
var notTried = []string{"load", "commodity", "schedule", "day", "accept"}

// read makes a load of its cells, by the names of the columns of a batch.
func (s sums) read(cells texts) (*sum, error) {
	c, err := entry.Commodity(cells["commodity"])
	if err != nil {
		return nil, entry.Fault{Field: "commodity", Err: err}
	}
	day, err := entry.ParseDay("Day", cells["day"])
	if err != nil {
		return nil, entry.Fault{Field: "day", Err: err}
	}
	if day.IsZero() {
		day = s.today
	}
	e, err := s.set.On(cells["schedule"], c.ID, day)
	if err != nil {
		return nil, entry.Fault{Field: "day", Err: err}
	}
	load := texts{}
	for column, text := range cells {
		if !slices.Contains(notTried, column) {
			load.put(strings.TrimPrefix(column, factorColumn), text)
		}
	}
	facts, err := trial(e, load, "gross", "tare", "moisture")
	return &sum{facts, e}, err
}
