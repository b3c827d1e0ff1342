package main

import "tenthpoint/internal/office"

// weighCommand writes weights down.
type weighCommand struct {
	bookFlags
	whoFlags
	Load loadName `arg:"" help:"The load, such as L12."`
	weightFlags
}

func (weighCommand) Help() string {
	return `A weight taken again replaces the one before, which stays on the record.

    tenth weigh L12 --gross 52300
    tenth weigh L12 --stored-tare`
}

func (c weighCommand) Run(t *terminal) error {
	return c.at(t, writing, c.Who, func(p *post) error {
		l, err := office.Load(p, p.Desk, string(c.Load))
		if err != nil {
			return err
		}
		if !c.weighed() {
			return refusal("Give --gross, --tare or --stored-tare", "no weight was given for load %s", l.ID)
		}
		form, err := entered(p.form(l, "", c.weightFlags), c.texts())
		if err != nil {
			return err
		}
		return record(p, l.ID, form)
	})
}
