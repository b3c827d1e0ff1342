package main

import "tenthpoint/internal/scalehouse"

// refuseCommand turns a load away.
type refuseCommand struct {
	bookFlags
	whoFlags
	Load   loadName `arg:"" help:"The load, such as L12."`
	Reason string   `required:"" help:"Why." placeholder:"WHY"`
}

func (refuseCommand) Help() string {
	return `    tenth refuse L12 --reason "hot and musty at the probe"`
}

func (c refuseCommand) Run(t *terminal) error {
	return c.at(t, writing, c.Who, func(p *post) error {
		if err := scalehouse.Refuse(p, p.Desk, string(c.Load), c.Reason); err != nil {
			return err
		}
		p.say("Load %s is turned away.", c.Load)
		return nil
	})
}
