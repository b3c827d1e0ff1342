package binlog

import (
	"context"
	"slices"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// DryingLog is the log of the dryer from one day to another as a paper: every run with its weights,
// moistures, fuel and hours, and what all of them come to.
func DryingLog(ctx context.Context, d office.Desk, from, to quantity.Date) (report.Document, error) {
	moves, err := Movements(ctx, d, "", from, to)
	if err != nil {
		return report.Document{}, err
	}
	runs := slices.DeleteFunc(moves, func(m bin.Movement) bool { return m.What != bin.Dry })
	return composeDryingLog(d.Profile(), from, to, runs), nil
}

func composeDryingLog(p elevator.Profile, from, to quantity.Date, runs []bin.Movement) report.Document {
	d := paper(p, message.New("Drying log"), to)
	d.About = message.New("from %s to %s", from, to)
	d.Blocks = append(d.Blocks, runTable(runs), dryingSums(runs), report.Para{Text: bin.HotGrain.Said()},
		report.Para{Text: message.New("Water is worked out from both moistures. Dry matter that did not come out again is dust and breakage, and stands as handling.")})
	return d
}

func runTable(runs []bin.Movement) report.Table {
	t := report.Table{Name: message.New("Runs of the dryer"), Empty: message.New("The dryer did not run in this period."), Columns: append([]report.Column{
		{Title: message.New("No."), Align: report.Right}, {Title: message.New("Day")}, {Title: message.New("Grain")}, {Title: message.New("From")}, {Title: message.New("Into")},
	}, append(figures(message.New("Moisture in"), message.New("Moisture out"), message.New("Water"), message.New("Handling"), message.New("Fuel"), message.New("Power"), message.New("Hours"), message.New("Dried an hour"), message.New("Fuel per water")),
		report.Column{Title: message.New("By")})...)}
	for _, m := range runs {
		t.Rows = append(t.Rows, report.Row{Kind: standing(m), Cells: append([]message.Text{
			report.Figure(quantity.Int(m.Number, quantity.Plain).Figure()), message.Name(m.Day.String()), message.Words(grain.NameOf(m.Commodity)), weighed(m.From), weighed(m.Into),
		}, runCells(m)...)})
	}
	return t
}

// standing is how a movement stands in a table: one that was taken back is struck.
func standing(m bin.Movement) report.RowKind {
	if m.UndoneBy != 0 {
		return report.Struck
	}
	return report.Plain
}

func runCells(m bin.Movement) []message.Text {
	run, y := m.Drying, m.Yields()
	return []message.Text{
		message.New("%s", run.MoistureIn), message.New("%s", run.MoistureOut), message.New("%s", toTenths.Apply(y.Water)), message.New("%s", toTenths.Apply(m.Loss().Handling)),
		noted(run.Fuel), noted(run.Power), noted(run.Hours), noted(rounded(y.PerHour, toTenths)), noted(rounded(y.FuelPerWater, toThousandths)), message.Name(m.By),
	}
}

var toThousandths = quantity.To("0.001", quantity.HalfUp)

// noted is an amount that is not of every run; empty where nobody wrote it down.
func noted(a quantity.Amount) message.Text {
	if !quantity.Recorded(a) {
		return message.Text{}
	}
	return message.New("%s", a)
}

func rounded(a quantity.Amount, to quantity.Rounding) quantity.Amount {
	if !quantity.Recorded(a) {
		return a
	}
	return to.Apply(a)
}

// dryingSums are the sums of the runs that count, grain by grain: amounts in different units are kept
// apart.
func dryingSums(runs []bin.Movement) report.Table {
	t := report.Table{Name: message.New("Together, by grain"), Columns: append([]report.Column{{Title: message.New("Grain")}},
		figures(message.New("Runs"), message.New("Weight in"), message.New("Weight out"), message.New("Water"), message.New("Handling"), message.New("Fuel"), message.New("Power"), message.New("Hours"))...)}
	for _, of := range grainsOf(runs) {
		t.Rows = append(t.Rows, report.Row{Cells: of.cells()})
	}
	return t
}

// dried is what the dryer did of one grain.
type dried struct {
	commodity                                    string
	runs                                         int
	in, out, water, handling, fuel, power, hours sums
}

func grainsOf(runs []bin.Movement) []*dried {
	var out []*dried
	for _, m := range runs {
		if m.UndoneBy != 0 {
			continue
		}
		at := slices.IndexFunc(out, func(d *dried) bool { return d.commodity == m.Commodity })
		if at < 0 {
			at = len(out)
			out = append(out, &dried{commodity: m.Commodity})
		}
		out[at].add(m)
	}
	return out
}

func (d *dried) add(m bin.Movement) {
	d.runs++
	l := m.Loss()
	for _, one := range []struct {
		into *sums
		a    quantity.Amount
	}{{&d.in, m.In()}, {&d.out, m.Out()}, {&d.water, l.Water}, {&d.handling, l.Handling}, {&d.fuel, m.Drying.Fuel}, {&d.power, m.Drying.Power}, {&d.hours, m.Drying.Hours}} {
		one.into.add(one.a)
	}
}

func (d *dried) cells() []message.Text {
	cells := []message.Text{message.Words(grain.NameOf(d.commodity)), message.New("%d", d.runs)}
	for _, s := range []sums{d.in, d.out, d.water, d.handling, d.fuel, d.power, d.hours} {
		cells = append(cells, s.said())
	}
	return cells
}

// sums are sums of amounts, each unit apart.
type sums []quantity.Amount

func (s *sums) add(a quantity.Amount) {
	if !quantity.Recorded(a) {
		return
	}
	for i, sum := range *s {
		if sum.Unit() == a.Unit() {
			(*s)[i] = sum.Add(a)
			return
		}
	}
	*s = append(*s, a)
}

func (s sums) said() message.Text {
	var parts []message.Text
	for _, a := range s {
		parts = append(parts, message.New("%s", toTenths.Apply(a)))
	}
	return message.Texts(", ", parts)
}
