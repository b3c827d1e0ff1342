package yard

import (
	"cmp"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
)

// List lists the trucks without a ticket.
type List struct {
	terminal.BookFlags
	JSON bool `help:"Print for programs: every figure as text."`
}

func (List) Help() string {
	return `Each truck is shown with what it still lacks.

    tenth yard`
}

// waiting is one truck on the yard.
type waiting struct {
	Load      string         `json:"load"`
	Since     string         `json:"since"`
	Grower    string         `json:"grower"`
	Commodity string         `json:"commodity"`
	Truck     string         `json:"truck"`
	Net       string         `json:"net,omitempty"`
	Lacks     []message.Text `json:"lacks"`
}

func (c List) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		loads, err := office.Yard(p, p.Desk)
		if err != nil {
			return err
		}
		all := []waiting{}
		for _, l := range loads {
			all = append(all, waitingFor(p, l))
		}
		if c.JSON {
			return p.PrintJSON(all)
		}
		if len(all) == 0 {
			p.Say("No truck is on the yard.")
		}
		for _, w := range all {
			p.Say("%-6s since %s  truck %-4s %-12s %s", w.Load, w.Since, w.Truck, cmp.Or(w.Commodity, "no grain yet"), strings.TrimSpace(w.Grower+"  "+w.Net))
			for _, lack := range w.Lacks {
				p.Say("       %s", lack)
			}
		}
		return nil
	})
}

func waitingFor(p *terminal.Session, l *load.Load) waiting {
	w := waiting{
		Load: l.ID, Since: p.Local(l.Opened.At), Grower: l.Details.Grower.Name, Commodity: l.Details.Commodity,
		Truck: cmp.Or(l.Details.Truck.ID, l.Details.Truck.Plate), Lacks: []message.Text{},
	}
	if net, known := l.Net(); known {
		w.Net = net.String()
	}
	_, problems := office.Preview(p.Desk, l)
	for _, problem := range problems {
		w.Lacks = append(w.Lacks, problem.Sentence)
	}
	return w
}
