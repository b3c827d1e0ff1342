package yard

import (
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/load"
)

// The acts of a yard one by one, for trucks that come and go in any order.

// Open records a truck that has come.
type Open struct {
	terminal.BookFlags
	terminal.WhoFlags
	terminal.DetailFlags
	Outbound bool `help:"The grain leaves the elevator."`
}

func (Open) Help() string {
	return `What is known of the truck may be given now or later, in any order, until its ticket.

    tenth open --grower 101 --commodity corn --truck 7
    tenth weigh L12 --gross 52300
    tenth sample L12 --moisture 18.0 --factor bcfm=2.1
    tenth weigh L12 --tare 24300
    tenth issue L12 --out slips`
}

func (c Open) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		way := load.Inbound
		if c.Outbound {
			way = load.Outbound
		}
		form, err := p.Entered(p.Form(nil, way, terminal.WeightFlags{}), c.DetailFlags.Texts())
		if err != nil {
			return err
		}
		tried := form.Tried()
		id, err := enter(p, form.Opening(), "")
		if err != nil {
			return err
		}
		p.Say("Load %s is open.", id)
		warn(p, form, tried)
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
