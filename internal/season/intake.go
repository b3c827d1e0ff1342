package season

import (
	"slices"

	"tenthpoint/internal/grain/look"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// intake is the weight received, day by day.
type intake struct{ *Facts }

// dayIntake is the weight received on one day, by grain, and on the same day a year earlier.
type dayIntake struct {
	day    quantity.Date
	of     map[string]quantity.Amount
	all    quantity.Amount
	before quantity.Amount
}

// picture is the intake of each day, stacked by grain, with that of the year before.
func (f intake) picture() report.Picture {
	p := report.Picture{
		Title: message.New("Intake by day, %s", f.Weight), Wide: true,
		Empty: message.New("Nothing came in during these days."),
	}
	days := f.days()
	if len(days) == 0 {
		return p
	}
	order, later := f.order(), f.hasYearBefore()
	heights := make([]quantity.Amount, 0, 2*len(days))
	for _, d := range days {
		heights = append(heights, d.all, d.before)
	}
	s := scaleFor(f.Weight, heights...)
	for _, d := range days {
		p.Stacks = append(p.Stacks, f.stack(d, order, s, later))
	}
	for _, id := range order {
		p.Legend = append(p.Legend, report.Legend{Name: grainName(id), Look: look.Of(id)})
	}
	if later {
		p.Stroke = message.New("the year before")
	}
	p.Guides, p.Says = s.guides(), f.says(later)
	return p
}

func (f intake) stack(d dayIntake, order []string, s scale, later bool) report.Stack {
	out := report.Stack{
		Label: message.Name(monthAndDay(d.day)), Now: d.day == f.Day, Stroke: s.height(d.before), HasStroke: later,
		Said: f.saidOfDay(d, order, later),
	}
	if !d.all.IsZero() {
		out.Value, out.Opens = figure(d.all), d.day.String()
	}
	for _, id := range order {
		if came, some := d.of[id]; some {
			out.Parts = append(out.Parts, report.Part{Height: s.height(quantity.Max(came, quantity.Zero(f.Weight))), Look: look.Of(id)})
		}
	}
	return out
}

// saidOfDay is a day in a sentence.
func (f intake) saidOfDay(d dayIntake, order []string, later bool) message.Text {
	var parts []any
	for _, id := range order {
		if came, some := d.of[id]; some {
			parts = append(parts, message.New("%s %s", grainName(id), came))
		}
	}
	said := message.New("%s: nothing came in.", d.day)
	if len(parts) > 0 {
		said = message.New("%s: %s in all; %s.", d.day, d.all, message.List(", ", parts...))
	}
	if !later {
		return said
	}
	return message.List(" ", said, message.New("The year before: %s.", d.before))
}

// days are the days from the first on which anything came in, this year or the year before, to the
// last day.
func (f intake) days() []dayIntake {
	none := quantity.Zero(f.Weight)
	byDay := map[quantity.Date]*dayIntake{}
	at := func(day quantity.Date) *dayIntake {
		if byDay[day] == nil {
			byDay[day] = &dayIntake{day: day, of: map[string]quantity.Amount{}, all: none, before: none}
		}
		return byDay[day]
	}
	first, last := f.To.AddDays(1), f.To
	for _, one := range f.Intake {
		if one.Weight.IsZero() {
			continue
		}
		d, came := at(one.Day), f.weighed(one.Weight)
		if _, some := d.of[one.Commodity]; !some {
			d.of[one.Commodity] = none
		}
		d.of[one.Commodity] = d.of[one.Commodity].Add(came)
		d.all, first = d.all.Add(came), earlier(first, one.Day)
	}
	for _, one := range f.Before {
		day := one.Day.AddMonths(12)
		d := at(day)
		d.before, first = d.before.Add(f.weighed(one.Weight)), earlier(first, day)
	}
	var out []dayIntake
	for day := first; !day.After(last); day = day.AddDays(1) {
		out = append(out, *at(day))
	}
	return out
}

func earlier(a, b quantity.Date) quantity.Date {
	if b.Before(a) {
		return b
	}
	return a
}

func (f intake) hasYearBefore() bool { return len(f.Before) > 0 }

// intakeOrder are the grains that came in, the one that most came in of first.
func (f intake) order() []string {
	sums := f.sums(f.Intake)
	var out []string
	for id := range sums {
		out = append(out, id)
	}
	slices.Sort(out)
	slices.SortStableFunc(out, func(a, b string) int { return sums[b].Cmp(sums[a]) })
	return out
}

// sums are the weights by grain.
func (f intake) sums(of []Intake) map[string]quantity.Amount {
	out := map[string]quantity.Amount{}
	for _, one := range of {
		if _, some := out[one.Commodity]; !some {
			out[one.Commodity] = quantity.Zero(f.Weight)
		}
		out[one.Commodity] = out[one.Commodity].Add(f.weighed(one.Weight))
	}
	return out
}

// total is all of it.
func (f intake) total(of []Intake) quantity.Amount {
	sum := quantity.Zero(f.Weight)
	for _, one := range of {
		sum = sum.Add(f.weighed(one.Weight))
	}
	return sum
}

func (f intake) says(later bool) message.Text {
	all, on := f.total(f.Intake), quantity.Zero(f.Weight)
	for _, one := range f.Intake {
		if one.Day == f.Day {
			on = on.Add(f.weighed(one.Weight))
		}
	}
	if !later {
		return message.New("%s so far, %s of it on %s.", all, on, f.Day)
	}
	return message.New("%s so far, %s of it on %s; %s by this day the year before.", all, on, f.Day, f.total(f.Before))
}

// monthAndDay is a day without its year: "10-24".
func monthAndDay(d quantity.Date) string { return d.String()[len("2026-"):] }

// table lists the weight received by grain, now and the year before.
func (f intake) table() report.Table {
	t := report.Table{Name: message.New("Intake by grain"), Empty: message.New("Nothing came in during these days."), Columns: []report.Column{
		{Title: message.New("Grain")}, weightColumn(message.New("On the day"), f.Weight), weightColumn(message.New("So far"), f.Weight), weightColumn(message.New("The year before"), f.Weight),
	}}
	day, now, before := f.sums(f.onDay()), f.sums(f.Intake), f.sums(f.Before)
	order := f.order()
	for id := range before {
		if !slices.Contains(order, id) {
			order = append(order, id)
		}
	}
	slices.Sort(order[len(now):])
	for _, id := range order {
		t.Rows = append(t.Rows, report.Row{Cells: []message.Text{grainName(id), figureOr(day, id), figureOr(now, id), figureOr(before, id)}})
	}
	if len(order) > 0 {
		t.Rows = append(t.Rows, report.Row{Kind: report.Total, Cells: []message.Text{
			message.New("All grains"), figure(f.total(f.onDay())), figure(f.total(f.Intake)), figure(f.total(f.Before)),
		}})
	}
	return t
}

func (f intake) onDay() []Intake {
	var out []Intake
	for _, one := range f.Intake {
		if one.Day == f.Day {
			out = append(out, one)
		}
	}
	return out
}

// figureOr is a figure of a grain; nothing where it has none.
func figureOr(of map[string]quantity.Amount, id string) message.Text {
	if a, some := of[id]; some {
		return figure(a)
	}
	return message.Text{}
}

func weightColumn(title message.Text, unit quantity.Unit) report.Column {
	return report.Column{Title: title, Unit: unit.String(), Align: report.Right}
}

// daily is the intake day by day.
func (f intake) daily() report.Table {
	t := report.Table{Name: message.New("Intake by day"), Empty: message.New("Nothing came in during these days."), Columns: []report.Column{{Title: message.New("Day")}}}
	order := f.order()
	for _, id := range order {
		t.Columns = append(t.Columns, weightColumn(grainName(id), f.Weight))
	}
	t.Columns = append(t.Columns, weightColumn(message.New("All grains"), f.Weight))
	if f.hasYearBefore() {
		t.Columns = append(t.Columns, weightColumn(message.New("The year before"), f.Weight))
	}
	for _, d := range f.days() {
		if d.all.IsZero() && d.before.IsZero() {
			continue
		}
		row := report.Row{Cells: []message.Text{message.Name(d.day.String())}}
		for _, id := range order {
			row.Cells = append(row.Cells, figureOr(d.of, id))
		}
		row.Cells = append(row.Cells, figure(d.all))
		if f.hasYearBefore() {
			row.Cells = append(row.Cells, figure(d.before))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}
