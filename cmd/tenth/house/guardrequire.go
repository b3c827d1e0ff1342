package house

import (
	"slices"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/message"
	"tenthpoint/internal/scalehouse"
)

type guardRequire struct {
	terminal.BookFlags
	terminal.WhoFlags
	What     []string `arg:"" optional:"" help:"What no ticket may lack: bin, meter, sample, crop-year; \"nothing\" for nothing."`
	WhyTyped []string `sep:"none" help:"A reason to choose from where a weight is typed; may be repeated, and is in place of those so far." placeholder:"WORDS"`
}

func (guardRequire) Help() string {
	return `A manager's act. What is required keeps a ticket back until it is there. What is not said stays as it is.

    tenth guard require bin sample
    tenth guard require --why-typed "indicator out of order" --why-typed "weighed on another certified scale"`
}

func (c guardRequire) Run(t *terminal.Terminal) error {
	if len(c.What)+len(c.WhyTyped) == 0 {
		return terminal.Refusal("Name what no ticket may lack, or give --why-typed", "nothing is to be changed")
	}
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		profile := p.Profile()
		if len(c.WhyTyped) > 0 {
			profile.ManualReasons = c.WhyTyped
		}
		if len(c.What) > 0 {
			required, err := compulsories(c.What)
			if err != nil {
				return err
			}
			profile.Compulsory = required
		}
		if err := scalehouse.SetProfile(p, p.Desk, profile); err != nil {
			return err
		}
		sayRequired(p)
		return nil
	})
}

// compulsories reads what was typed; "nothing" is nothing.
func compulsories(typed []string) ([]elevator.Compulsory, error) {
	var out []elevator.Compulsory
	for _, word := range typed {
		c := elevator.Compulsory(strings.ToLower(word))
		switch {
		case c == "nothing":
		case slices.Contains(elevator.Compulsories(), c):
			out = append(out, c)
		default:
			return nil, terminal.Refusal("Name bin, meter, sample or crop-year, or nothing", "%q is not what a house can require", word)
		}
	}
	return out, nil
}

// sayRequired says what no ticket may lack, and why a weight may be typed.
func sayRequired(p *terminal.Session) {
	var required []message.Text
	for _, c := range p.Profile().Compulsory {
		required = append(required, guard.Required(c))
	}
	if len(required) == 0 {
		p.Say("No ticket is kept back for what it lacks.")
	} else {
		p.Say("No ticket may lack: %s.", message.Texts(", ", required))
	}
	p.Say("Reasons for a typed weight: %s.", wordsList("; ", p.Profile().WhyManual()))
}
