package season

import (
	"cmp"
	"slices"

	"tenthpoint/internal/grain/look"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// bench is the meters, and how far they were off.
type bench struct{ *Facts }

// round is the checks of one meter on one day.
type round struct {
	meter  string
	nth    int // of the meters, for its look
	day    quantity.Date
	checks int
	mean   quantity.Amount // pt
}

// mostRounds is as many as a picture has room for; the newest are shown.
const mostRounds = 28

// A mean of a few checks is told to the hundredth; the room for it ends at a whole tenth.
var (
	tenthUp   = quantity.To("0.1", quantity.Up)
	hundredth = quantity.To("0.01", quantity.HalfUp)
)

// rounds are the checks of all meters, day by day.
func (f bench) rounds() []round {
	var out []round
	for n, m := range f.Meters {
		for left := m.Log.Points; len(left) > 0; {
			same := 1
			for same < len(left) && left[same].Check.Day == left[0].Check.Day {
				same++
			}
			if day := left[0].Check.Day; day.Between(f.From, f.To) {
				out = append(out, round{meter: m.ID, nth: n, day: day, checks: same, mean: meanError(left[:same])})
			}
			left = left[same:]
		}
	}
	slices.SortStableFunc(out, func(a, b round) int { return cmp.Or(a.day.Cmp(b.day), cmp.Compare(a.nth, b.nth)) })
	return out
}

func meanError(of []meter.ErrorPoint) quantity.Amount {
	sum := quantity.Zero(quantity.Point)
	for _, p := range of {
		sum = sum.Add(p.Check.Error())
	}
	return hundredth.Apply(sum.Div(counted(len(of))))
}

// picture shows the bias of each meter from check to check.
func (f bench) picture() report.Picture {
	p := report.Picture{Title: message.New("Meters against the reference, points"), Empty: message.New("No meter was checked in these days."), Base: 500}
	rounds := f.rounds()
	if len(rounds) == 0 {
		return p
	}
	rounds = rounds[max(0, len(rounds)-mostRounds):]
	edge := f.edge(rounds)
	height := func(e quantity.Amount) int { return quantity.Permille(e.Div(edge), quantity.HalfUp) / 2 }
	for _, r := range rounds {
		p.Stacks = append(p.Stacks, report.Stack{
			Label: message.Name(monthAndDay(r.day)), Value: signed(r.mean), Parts: []report.Part{{Height: height(r.mean), Look: look.Kind(r.nth)}},
			Said: message.New("%s, meter %v: %s points off, the mean of %s.", r.day, r.meter, signed(r.mean), checks(r.checks)),
		})
	}
	for n, m := range f.Meters {
		p.Legend = append(p.Legend, report.Legend{Name: message.New("meter %v", m.ID), Look: look.Kind(n)})
	}
	p.Guides = []report.Guide{{At: 0, Label: signed(edge.Neg())}, {At: 500, Label: report.Figure("0")}, {At: 1000, Label: signed(edge)}}
	if limit, some := f.limit(); some {
		p.Guides = append(p.Guides, report.Guide{At: 500 + height(limit), Label: signed(limit), Limit: true}, report.Guide{At: 500 - height(limit), Label: signed(limit.Neg()), Limit: true})
	}
	p.Says = f.says()
	return p
}

// edge is the largest error that the picture has room for: of the rounds shown and the limit.
func (f bench) edge(shown []round) quantity.Amount {
	edge := quantity.Of("0.5", quantity.Point)
	if limit, some := f.limit(); some {
		edge = quantity.Max(edge, limit)
	}
	for _, r := range shown {
		edge = quantity.Max(edge, quantity.Max(r.mean, r.mean.Neg()))
	}
	return tenthUp.Apply(edge)
}

// limit is the error allowed at the newest check that has a limit.
func (f bench) limit() (limit quantity.Amount, some bool) {
	for _, m := range f.Meters {
		for _, p := range m.Log.Points {
			if p.Limited {
				limit, some = p.Limit, true
			}
		}
	}
	return limit, some
}

// says is the mean error of each meter over all its checks of the span.
func (f bench) says() message.Text {
	var parts []any
	for _, m := range f.Meters {
		all := slices.DeleteFunc(slices.Clone(m.Log.Points), func(p meter.ErrorPoint) bool { return !p.Check.Day.Between(f.From, f.To) })
		if len(all) > 0 {
			parts = append(parts, message.New("%v: %s points off in the mean of %s", m.ID, signed(meanError(all)), checks(len(all))))
		}
	}
	return message.New("%s. No reading is ever changed by it.", message.List("; ", parts...))
}

// signed is a figure with its sign, above zero too.
func signed(a quantity.Amount) message.Text {
	if a.Sign() > 0 {
		return report.Figure("+" + a.Figure())
	}
	return figure(a)
}

// table is every round of checks.
func (f bench) table() report.Table {
	t := report.Table{Name: message.New("Meters against the reference"), Empty: message.New("No meter was checked in these days."), Columns: []report.Column{
		{Title: message.New("Day")}, {Title: message.New("Meter")}, {Title: message.New("Checks"), Align: report.Right}, {Title: message.New("Mean error"), Unit: "pt", Align: report.Right},
	}}
	for _, r := range f.rounds() {
		t.Rows = append(t.Rows, report.Row{Cells: []message.Text{message.Name(r.day.String()), message.Name(r.meter), count(r.checks), signed(r.mean)}})
	}
	return t
}
