package growing

import (
	"fmt"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// Paper is the production of farms as a paper, owner by owner.
func Paper(p elevator.Profile, from, to, made quantity.Date, farms []Farm) report.Document {
	d := report.Of(p, made)
	d.Title, d.About = message.New("Production by farm"), period(from, to)
	d.Footer = law.ToConfirm(message.New("Farms are as their owners declared them. What an office or insurer accepts as production is its own to say."))
	t := report.Table{Name: message.New("Production by farm"), Empty: message.New("Nothing was delivered."), Columns: []report.Column{
		{Title: message.New("Grower")}, {Title: message.New("Farm")}, {Title: message.New("Field")}, {Title: message.New("Grain")}, {Title: message.New("Crop year")},
		{Title: message.New("Loads"), Align: report.Right}, {Title: message.New("Net"), Align: report.Right}, {Title: message.New("Quantity"), Align: report.Right},
	}}
	for _, f := range farms {
		t.Rows = append(t.Rows, report.Row{Cells: []message.Text{
			message.Name(f.Name), orNone(f.Farm), message.Name(f.Field), message.Words(grain.NameOf(f.Commodity)), message.Name(f.Year),
			report.Figure(fmt.Sprint(f.Loads)), report.Figure(f.Net.String()), report.Figure(f.Quantity.FixedString(2)),
		}})
		if len(f.Owners) < 2 {
			continue
		}
		for _, o := range f.Owners {
			t.Rows = append(t.Rows, report.Row{Cells: []message.Text{message.New("part of %v", o.Name), {}, {}, {}, {}, {}, {}, report.Figure(o.Quantity.FixedString(2))}})
		}
	}
	d.Blocks = []report.Block{t}
	return d
}

func period(from, to quantity.Date) message.Text {
	switch {
	case from.IsZero() && to.IsZero():
		return message.New("all that was delivered")
	case from.IsZero():
		return message.New("delivered until %s", to)
	case to.IsZero():
		return message.New("delivered from %s", from)
	}
	return message.New("delivered from %s to %s", from, to)
}

func orNone(farm string) message.Text {
	if farm == "" {
		return message.New("farm not named")
	}
	return message.Name(farm)
}
