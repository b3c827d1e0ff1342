package main

import "tenthpoint/internal/office"

// amendCommand changes what is known of a load.
type amendCommand struct {
	bookFlags
	whoFlags
	Load loadName `arg:"" help:"The load, such as L12."`
	detailFlags
}

func (amendCommand) Help() string {
	return `    tenth amend L12 --grower 107 --bin P2`
}

func (c amendCommand) Run(t *terminal) error {
	return c.at(t, writing, c.Who, func(p *post) error {
		l, err := office.Load(p, p.Desk, string(c.Load))
		if err != nil {
			return err
		}
		if !c.changed() {
			return refusal("Say by flags what is to be changed, such as --bin P2", "nothing is changed of load %s", l.ID)
		}
		form, err := entered(p.form(l, "", weightFlags{}), c.detailFlags.texts())
		if err != nil {
			return err
		}
		return record(p, l.ID, form)
	})
}
