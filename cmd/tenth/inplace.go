package main

import (
	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
)

// inPlaceFlags say what a load that takes a ticket's place has otherwise.
type inPlaceFlags struct {
	detailFlags
	weightFlags
	sampleFlags
}

// nothing reports whether nothing is said to be otherwise.
func (f inPlaceFlags) nothing() bool {
	return !f.changed() && !f.tested() && !f.weighed()
}

// read reads what they say over the load of the ticket.
func (f inPlaceFlags) read(p *post, old *load.Load) (entry.Facts, error) {
	sample, err := f.sampleFlags.texts()
	if err != nil {
		return entry.Facts{}, err
	}
	form, err := entered(p.form(old, "", f.weightFlags), f.detailFlags.texts(), f.weightFlags.texts(), sample)
	return form.Facts(), err
}
