package main

import (
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
)

// sampleCommand writes the bench's results down.
type sampleCommand struct {
	bookFlags
	whoFlags
	Load loadName `arg:"" help:"The load, such as L12."`
	sampleFlags
}

func (sampleCommand) Help() string {
	return `Results given before stay unless they are given again. --accept is a manager's leave to settle beyond a limit.

    tenth sample L12 --moisture 18.0 --factor test-weight=54.2
    tenth sample L12 --accept bcfm="fed at once" --who "Mae Orton"`
}

func (c sampleCommand) Run(t *terminal) error {
	return c.at(t, writing, c.Who, func(p *post) error {
		l, err := office.Load(p, p.Desk, string(c.Load))
		if err != nil {
			return err
		}
		limits, err := c.accepted()
		if err != nil {
			return err
		}
		if !c.tested() && len(limits) == 0 {
			return refusal("Give --moisture, --factor or --accept", "no result was given for load %s", l.ID)
		}
		if c.tested() {
			s, err := c.sampleFlags.apply(p, l.Details, l.Sample)
			if err != nil {
				return err
			}
			if err := scalehouse.RecordSample(p, p.Desk, l.ID, s); err != nil {
				return err
			}
		}
		for _, one := range limits {
			if err := scalehouse.Accept(p, p.Desk, l.ID, one.Limit, one.Reason); err != nil {
				return err
			}
		}
		return p.stands(l.ID)
	})
}
