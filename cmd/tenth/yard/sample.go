package yard

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/office"
)

// Sample records the bench's results.
type Sample struct {
	terminal.BookFlags
	terminal.WhoFlags
	Load loadName `arg:"" help:"The load, such as L12."`
	terminal.SampleFlags
}

func (Sample) Help() string {
	return `Results given before stay unless they are given again. --accept is a manager's leave to settle beyond a limit.

    tenth sample L12 --moisture 18.0 --factor test-weight=54.2
    tenth sample L12 --accept bcfm="fed at once" --who "Mae Orton"`
}

func (c Sample) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		l, err := office.Load(p, p.Desk, string(c.Load))
		if err != nil {
			return err
		}
		typed, err := c.Texts()
		if err != nil {
			return err
		}
		if len(typed) == 0 {
			return terminal.Refusal("Give --moisture, --factor or --accept", "no result was given for load %s", l.ID)
		}
		form, err := p.Entered(p.Form(l, "", terminal.WeightFlags{}), typed)
		if err != nil {
			return err
		}
		return record(p, l.ID, form)
	})
}
