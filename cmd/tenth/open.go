package main

import (
	"strings"

	"tenthpoint/internal/load"
)

// The acts of a yard one by one, for trucks that come and go in any order.

// openCommand writes a truck down that has come.
type openCommand struct {
	bookFlags
	whoFlags
	detailFlags
	Outbound bool `help:"The grain leaves the elevator."`
}

func (openCommand) Help() string {
	return `What is known of the truck may be given now or later, in any order, until its ticket.

    tenth open --grower 101 --commodity corn --truck 7
    tenth weigh L12 --gross 52300
    tenth sample L12 --moisture 18.0 --factor bcfm=2.1
    tenth weigh L12 --tare 24300
    tenth issue L12 --out slips`
}

func (c openCommand) Run(t *terminal) error {
	return c.at(t, writing, c.Who, func(p *post) error {
		way := load.Inbound
		if c.Outbound {
			way = load.Outbound
		}
		form, err := entered(p.form(nil, way, weightFlags{}), c.detailFlags.texts())
		if err != nil {
			return err
		}
		id, err := enter(p, form.Opening(), "")
		if err != nil {
			return err
		}
		p.say("Load %s is open.", id)
		return nil
	})
}

// loadName is a load as its id is typed: "L12", "l12" or "12".
type loadName string

// UnmarshalText reads an id.
func (n *loadName) UnmarshalText(text []byte) error {
	id := strings.ToUpper(strings.TrimSpace(string(text)))
	*n = loadName("L" + strings.TrimPrefix(id, "L"))
	return nil
}
