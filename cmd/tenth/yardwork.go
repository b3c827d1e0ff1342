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
		start := load.Details{Direction: load.Inbound}
		if c.Outbound {
			start.Direction = load.Outbound
		}
		d, err := c.detailFlags.apply(p, start)
		if err != nil {
			return err
		}
		id, err := p.OpenLoad(p, d)
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

// amendCommand changes what is known of a load.
type amendCommand struct {
	bookFlags
	whoFlags
	Load loadName `arg:"" help:"The load, such as L12."`
	detailFlags
}

func (amendCommand) Help() string {
	return `    tenth amend L12 --grower 107 --bin P2`
}

func (c amendCommand) Run(t *terminal) error {
	return c.at(t, writing, c.Who, func(p *post) error {
		l, err := p.Load(p, string(c.Load))
		if err != nil {
			return err
		}
		if !c.changed() {
			return refusal("Say by flags what is to be changed, such as --bin P2", "nothing is changed of load %s", l.ID)
		}
		d, err := c.detailFlags.apply(p, l.Details)
		if err != nil {
			return err
		}
		if err := p.Amend(p, l.ID, d); err != nil {
			return err
		}
		return p.stands(l.ID)
	})
}

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
		l, err := p.Load(p, string(c.Load))
		if err != nil {
			return err
		}
		weights, err := c.weighings(p, l.Details.Truck)
		if err != nil {
			return err
		}
		if len(weights) == 0 {
			return refusal("Give --gross, --tare or --stored-tare", "no weight was given for load %s", l.ID)
		}
		for _, one := range weights {
			if err := p.Weigh(p, l.ID, one); err != nil {
				return err
			}
		}
		return p.stands(l.ID)
	})
}

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
		l, err := p.Load(p, string(c.Load))
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
			if err := p.Sample(p, l.ID, s); err != nil {
				return err
			}
		}
		for _, one := range limits {
			if err := p.Accept(p, l.ID, one.Limit, one.Reason); err != nil {
				return err
			}
		}
		return p.stands(l.ID)
	})
}

// issueCommand gives a load its ticket.
type issueCommand struct {
	bookFlags
	whoFlags
	Load loadName `arg:"" help:"The load, such as L12."`
	paperFlags
	JSON bool `help:"Print for programs: every figure as text."`
}

func (issueCommand) Help() string {
	return `    tenth issue L12 --out slips`
}

func (c issueCommand) Run(t *terminal) error {
	return c.at(t, writing, c.Who, func(p *post) error {
		number, err := p.Issue(p, string(c.Load))
		if err != nil {
			return err
		}
		copyNo, err := p.Printed(p, number)
		if err != nil {
			return err
		}
		l, err := p.Ticket(p, number)
		if err != nil {
			return err
		}
		return p.hand(l, copyNo, c.paperFlags, c.JSON)
	})
}

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
		if err := p.Refuse(p, string(c.Load), c.Reason); err != nil {
			return err
		}
		p.say("Load %s is turned away.", c.Load)
		return nil
	})
}

// stands says what a load on the yard still lacks.
func (p *post) stands(id string) error {
	l, err := p.Load(p, id)
	if err != nil {
		return err
	}
	w := p.waits(l)
	if w.Net != "" {
		p.say("Load %s: net %s.", l.ID, w.Net)
	}
	for _, lack := range w.Lacks {
		p.say("Load %s: %s", l.ID, lack)
	}
	if len(w.Lacks) == 0 {
		p.say("Load %s is whole: issue its ticket with \"tenth issue %s\".", l.ID, l.ID)
	}
	return nil
}
