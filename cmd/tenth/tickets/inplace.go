package tickets

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
)

// inPlaceFlags are the changes of a load that replaces a ticket.
type inPlaceFlags struct {
	terminal.DetailFlags
	terminal.WeightFlags
	terminal.SampleFlags
	terminal.ConfirmFlags
}

// nothing reports whether there are no changes.
func (f inPlaceFlags) nothing() bool {
	return !f.Changed() && !f.Tested() && !f.Weighed()
}

// read applies the flags to the load of the ticket.
func (f inPlaceFlags) read(p *terminal.Session, old *load.Load) (entry.Facts, error) {
	sample, err := f.SampleFlags.Texts()
	if err != nil {
		return entry.Facts{}, err
	}
	answers, err := f.ConfirmFlags.Texts()
	if err != nil {
		return entry.Facts{}, err
	}
	form, err := p.Entered(p.Form(old, "", f.WeightFlags), f.DetailFlags.Texts(), f.WeightFlags.Texts(), sample, answers)
	return form.Facts(), err
}
