package binlog

import (
	"context"
	"slices"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// Card is the card of a bin: what lies in it, layer on layer, and what was done from one day to
// another.
func Card(ctx context.Context, d office.Desk, id string, from, to quantity.Date) (report.Document, error) {
	b, err := One(ctx, d, id, to)
	if err != nil {
		return report.Document{}, err
	}
	days, err := d.Reader().BinDays(ctx, id, from.String(), to.String())
	if err != nil {
		return report.Document{}, err
	}
	moves, err := Movements(ctx, d, id, b.since(from), to)
	looks := keepsBy(b, moves, to).Looks
	moves = slices.DeleteFunc(moves, func(m bin.Movement) bool { return m.Day.Before(from) })
	return composeCard(d.Profile(), b, to, days, moves, looks), err
}

func composeCard(p elevator.Profile, b Bin, day quantity.Date, days []bin.Row, moves []bin.Movement, looks []message.Text) report.Document {
	title := message.New("Bin card %s", orUnnamed(b.ID))
	if b.Name != "" {
		title = message.New("Bin card %s, %s", message.Name(b.ID), message.Name(b.Name))
	}
	d := paper(p, title, day)
	put := func(blocks ...report.Block) { d.Blocks = append(d.Blocks, blocks...) }
	put(report.Pairs{Pairs: facts(b)})
	for _, h := range b.Grain {
		if h.Lies().Sign() < 0 {
			put(report.Para{Strong: true, Text: message.New("THE BOOK LET OUT MORE THAN WAS IN: %s of %s are missing. A manager posts a weigh-over.", h.Lies().Neg(), message.Words(h.Name))})
		}
	}
	for _, look := range looks {
		put(report.Para{Strong: true, Text: look})
	}
	put(layerTable(b), dayTable(days), moveTable(moves))
	put(report.Para{Text: message.New("Grain leaves a bin from the top: which layer left is an estimate by this rule.")}, report.Para{Text: bin.BinEntry.Said()})
	return d
}

// facts are what is known of the bin and of the grain in it.
func facts(b Bin) []report.Pair {
	var out []report.Pair
	say := func(label, value message.Text) { out = append(out, report.Pair{Label: label, Value: value}) }
	if b.Commodity != "" {
		say(message.New("Kept for"), message.Words(grain.NameOf(b.Commodity)))
	}
	if level, known := b.Level(); known {
		say(message.New("Full to the eave"), message.New("%s", toTenths.Apply(quantity.Int(int64(level), quantity.Percent).Div(quantity.Int(10, quantity.Plain)))))
	}
	for _, h := range b.Grain {
		name := message.Words(h.Name)
		say(name, message.New("%s", h.Lies()))
		if m, known := h.Moisture(); known {
			say(message.New("Moisture"), message.New("%s", m))
		}
		if w, known := h.TestWeight(); known {
			say(message.New("Test weight"), message.New("%s", w))
		}
		if holds, known := b.Holds(densityOf(h)); known {
			say(message.New("Holds of it, heaped"), message.New("%s", holds))
		}
		if oldest := h.Oldest(); !oldest.IsZero() {
			say(message.New("Oldest received on"), message.New("%s", oldest))
		}
	}
	return out
}

func layerTable(b Bin) report.Table {
	t := report.Table{Name: message.New("Layers, the lowest first"), Empty: message.New("Nothing lies in it."), Columns: append([]report.Column{
		{Title: message.New("Grain")}, {Title: message.New("Filled on")}, {Title: message.New("Oldest")},
	}, figures(message.New("Weight"), message.New("Moisture"), message.New("Test weight"))...)}
	t.Columns[4].Unit = quantity.Percent.String()
	for _, h := range b.Grain {
		for _, l := range h.Heap.Layers {
			t.Rows = append(t.Rows, report.Row{Cells: []message.Text{
				message.Words(h.Name), message.Name(l.Filled.String()), message.Name(l.Oldest.String()),
				figure(l.Weight), meanCell(l.Grain, grain.Moisture), meanCell(l.Grain, grain.TestWeight),
			}})
		}
	}
	return t
}

func meanCell(g bin.Grain, factor grain.FactorID) message.Text {
	m, known := g.Mean(factor)
	if !known {
		return message.Text{}
	}
	return report.Figure(toHundredths.Apply(m).Fixed(2))
}

func dayTable(days []bin.Row) report.Table {
	t := report.Table{Name: message.New("Day by day"), Empty: message.New("Nothing moved in this period."), Columns: append([]report.Column{
		{Title: message.New("Day")}, {Title: message.New("Grain")},
	}, figures(message.New("Yesterday"), message.New("Received"), message.New("Loaded out"), message.New("Taken back"), message.New("Moved in"), message.New("Moved out"), message.New("Tonight"))...)}
	for _, r := range days {
		t.Rows = append(t.Rows, report.Row{Cells: []message.Text{
			message.Name(r.Day.String()), message.Words(grain.NameOf(r.Commodity)), figure(r.Before()), figure(r.In.Weight), figure(r.Out),
			figure(r.Back.Sub(r.Returned)), figure(r.MovedIn), figure(r.MovedOut), figure(r.Close.Balance()),
		}})
	}
	return t
}

func moveTable(moves []bin.Movement) report.Table {
	t := report.Table{Name: message.New("Movements"), Empty: message.New("No movement is written down."), Columns: []report.Column{
		{Title: message.New("No."), Align: report.Right}, {Title: message.New("Day")}, {Title: message.New("What")}, {Title: message.New("From")}, {Title: message.New("Into")},
		{Title: message.New("Note")}, {Title: message.New("By")},
	}}
	for _, m := range moves {
		t.Rows = append(t.Rows, report.Row{Kind: standing(m), Cells: []message.Text{
			report.Figure(quantity.Int(m.Number, quantity.Plain).Figure()), message.Name(m.Day.String()), m.What.Name(),
			weighed(m.From), weighed(m.Into), Note(m), message.Name(m.By),
		}})
	}
	return t
}

func weighed(all []bin.Weighed) message.Text {
	var parts []message.Text
	for _, w := range all {
		if w.Weight.IsZero() {
			parts = append(parts, message.Name(w.Bin))
		} else {
			parts = append(parts, message.New("%s: %s", message.Name(w.Bin), w.Weight))
		}
	}
	return message.Texts(", ", parts)
}

// Note is the remark of a movement beside its weights.
func Note(m bin.Movement) message.Text {
	var parts []message.Text
	say := func(t message.Text) { parts = append(parts, t) }
	if m.Drying != nil && m.What == bin.Dry {
		y := m.Yields()
		say(message.New("%s to %s, %s of water", m.Drying.MoistureIn, m.Drying.MoistureOut, toTenths.Apply(y.Water)))
		if quantity.Recorded(m.Drying.Fuel) {
			say(message.New("fuel %s", m.Drying.Fuel))
		}
		if quantity.Recorded(m.Drying.Hours) {
			say(message.New("%s running", m.Drying.Hours))
		}
	}
	if quantity.Recorded(m.Screenings) {
		say(message.New("screenings %s", m.Screenings))
	}
	if quantity.Recorded(m.Hours) {
		say(message.New("%s running", m.Hours))
	}
	if m.Count != nil {
		say(message.New("counted %s, the book had %s", m.Count.Counted, m.Count.Book))
		if !m.Count.Posted {
			say(message.New("not posted"))
		}
	}
	for _, t := range m.Readings {
		say(message.New("%s", t))
	}
	if m.Undoes != 0 {
		say(message.New("undoes no. %d", m.Undoes))
	}
	if m.UndoneBy != 0 {
		say(message.New("undone by no. %d", m.UndoneBy))
	}
	if m.Lot != "" {
		say(message.New("lot %v", m.Lot))
	}
	for _, asked := range m.Asked {
		say(asked.Message())
	}
	if m.Reason != "" {
		say(message.Name(m.Reason))
	}
	return message.Texts("; ", parts)
}

// paper begins a paper under the elevator's name.
func paper(p elevator.Profile, title message.Text, day quantity.Date) report.Document {
	d := report.Of(p, day)
	d.Title, d.About = title, message.New("in the evening of %s", day)
	d.Footer = law.ToConfirm(message.New("Every total is the sum of the lines printed above it. Local law and the licensing authority outrank the program that made this paper."))
	return d
}
