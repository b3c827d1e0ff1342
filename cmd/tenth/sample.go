package main

import "tenthpoint/internal/office"

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
		typed, err := c.texts()
		if err != nil {
			return err
		}
		if len(typed) == 0 {
			return refusal("Give --moisture, --factor or --accept", "no result was given for load %s", l.ID)
		}
		form, err := entered(p.form(l, "", weightFlags{}), typed)
		if err != nil {
			return err
		}
		return record(p, l.ID, form)
	})
}
