package yard

import (
	"cmp"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
)

// List is the command that lists the trucks without a ticket.
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
	Name      string         `json:"name,omitempty"`
	Gross     string         `json:"gross,omitempty"`
	Tare      string         `json:"tare,omitempty"`
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
		var rows [][]any
		for _, w := range all {
			rows = append(rows, []any{w.Load, w.Since, w.Truck, terminal.Or(w.Name, message.New("no grain yet")), w.Grower, w.Gross, w.Tare, w.Net})
		}
		if err := p.Table(terminal.ListFlags{}, "Load\tSince\tTruck\tGrain\tGrower\tGross\tTare\tNet", rows, "No truck is on the yard."); err != nil {
			return err
		}
		for _, w := range all {
			if len(w.Lacks) > 0 {
				p.Say("%s lacks:", w.Load)
			}
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
	w.Name = p.GrainName(l.Details.Commodity)
	w.Gross, w.Tare = weights(l, load.Gross), weights(l, load.Tare)
	if net, known := l.Net(); known {
		w.Net = net.String()
	}
	_, problems := office.Preview(p.Desk, l)
	for _, problem := range problems {
		w.Lacks = append(w.Lacks, problem.Sentence)
	}
	return w
}

// weights are the weights of one side, that of each draft by its name where there
// are several.
func weights(l *load.Load, which load.Which) string {
	var out []string
	for _, draft := range l.Drafts() {
		if taken, weighed := l.Weight(which, draft); weighed {
			out = append(out, strings.TrimSpace(draft+" "+taken.Weight.String()))
		}
	}
	return strings.Join(out, ", ")
}
