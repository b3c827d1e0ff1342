package main

import "tenthpoint/internal/office"

// benchDue lists what the bench has to do today.
type benchDue struct {
	bookFlags
	JSON bool `help:"Print for programs: every figure as text."`
}

func (benchDue) Help() string {
	return `Meters are listed the worst first: failed, overdue, never checked, due. Samples that a dispute needs are not listed.

    tenth bench due`
}

func (c benchDue) Run(t *terminal) error {
	return c.at(t, reading, "", func(p *post) error {
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
			return p.asJSON(map[string]any{"meters": due, "samples": samplesJSON(samples)})
		}
		if len(meters) == 0 {
			p.say("No meter is due for a check.")
		}
		for _, one := range meters {
			p.say("%s: %s", one.Meter.ID, one.Standing.Sentence)
		}
		return listSamples(p, samples, false, "No sample is due.")
	})
}
