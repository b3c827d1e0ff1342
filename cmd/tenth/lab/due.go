package lab

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/office"
)

// benchDue lists what the bench has to do today.
type benchDue struct {
	terminal.BookFlags
	JSON bool `help:"Print for programs: every figure as text."`
}

func (benchDue) Help() string {
	return `Meters are listed the worst first: failed, overdue, never checked, due. Samples that a dispute needs are not listed.

    tenth bench due`
}

func (c benchDue) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		meters, err := office.MetersDue(p, p.Desk)
		if err != nil {
			return err
		}
		samples, err := office.SamplesDue(p, p.Desk, p.Today())
		if err != nil {
			return err
		}
		if c.JSON {
			due := []meterJSON{}
			for _, one := range meters {
				due = append(due, meterForJSON(one.Meter, one.Standing))
			}
			return p.PrintJSON(map[string]any{"meters": due, "samples": samplesJSON(samples)})
		}
		if len(meters) == 0 {
			p.Say("No meter is due for a check.")
		}
		for _, one := range meters {
			p.Say("%s: %s", one.Meter.ID, one.Standing.Sentence)
		}
		return listSamples(p, samples, false, "No sample is due.")
	})
}
