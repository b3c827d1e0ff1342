package sums

import (
	"slices"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
)

// reader reads loads that are in no book.
type reader struct {
	set   *rates.Set
	laws  *terminal.Laws
	today quantity.Date
	signs message.Figures // in which figures of a batch are typed
}

// outsideLoad is one such load under its edition.
type outsideLoad struct {
	facts   settle.Facts
	edition *rates.Edition
}

// notTried are the columns of a batch that say nothing of the load itself.
var notTried = []string{"load", "commodity", "schedule", "day", "accept"}

// read makes a load of its cells, by the names of the columns of a batch.
func (s reader) read(cells terminal.Texts) (*outsideLoad, error) {
	c, err := entry.Commodity(cells["commodity"])
	if err != nil {
		return nil, entry.Fault{Field: "commodity", Err: err}
	}
	day, err := entry.ParseDay("Day", cells["day"], s.today)
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
	if e, err = s.laws.By(e, day); err != nil {
		return nil, err
	}
	if cells["net"] != "" && cells["gross"]+cells["tare"] != "" {
		return nil, entry.Fault{Field: "net", Err: terminal.Refusal("Give the net alone, or gross and tare", "a load has a net beside a gross or a tare")}
	}
	load := terminal.Texts{}
	for column, text := range cells {
		if !slices.Contains(notTried, column) {
			plain, err := terminal.WithPoint(column, text, s.signs)
			if err != nil {
				return nil, entry.Fault{Field: column, Err: err}
			}
			load.Put(strings.TrimPrefix(column, factorColumn), plain)
		}
	}
	facts, err := terminal.TrialFacts(e, load, neededOf(load)...)
	return &outsideLoad{facts, e}, err
}

// neededOf returns the required fields of a load: a net replaces gross and tare.
func neededOf(load terminal.Texts) []string {
	if load["net"] != "" && load["gross"]+load["tare"] == "" {
		return []string{"moisture"}
	}
	return []string{"gross", "tare", "moisture"}
}
