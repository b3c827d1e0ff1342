package main

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
