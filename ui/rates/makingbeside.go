package rates

import (
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle/trial"
	"tenthpoint/internal/worksheet"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// tried is a figure of a load at rising moistures, for a curve.
type tried struct {
	moisture, figure quantity.Amount
}

// besideMaking is the panel beside the figures.
type besideMaking struct{ *Making }

// Curves show what the edition being made takes at rising moistures, in percent of the weight and in
// dollars, laid over the edition it was begun from.
func (m *Making) Curves() []model.Curves {
	if !m.begun {
		return nil
	}
	taken := func(row trial.Row) *worksheet.Step { return row.Taken }
	charged := func(row trial.Row) *worksheet.Step { return row.Settlement.Adjustments }
	return []model.Curves{
		besideMaking{m}.curves(m.session.Say("Taken in percent of the weight, by moisture"), taken, false),
		besideMaking{m}.curves(m.session.Say("Drying and discounts of the load in $, by moisture"), charged, true),
	}
}

// curves are one figure under both editions. Charges are written as they are to the owner, below zero, and
// drawn above it.
func (m besideMaking) curves(title string, of func(trial.Row) *worksheet.Step, turned bool) model.Curves {
	out := model.Curves{Title: title, Empty: m.session.Say("Mend what is wrong, and the curves are drawn.")}
	base := m.draft.Base()
	lines := [][]tried{m.try(m.edition, base, of, turned), m.try(base, base, of, turned)}
	names := []string{m.session.Say("this one"), base.ID}
	bounds := boundsOf(lines)
	if m.edition == nil || bounds.empty {
		return out
	}
	for i, line := range lines {
		curve := model.Curve{Name: names[i], Dashed: i > 0}
		for _, p := range line {
			curve.Points = append(curve.Points, model.ChartPoint{X: bounds.x(p.moisture), Y: bounds.y(p.figure)})
		}
		out.Curves = append(out.Curves, curve)
	}
	out.Guides, out.Below = bounds.guides()
	return out
}

// try is the figure at every moisture at which the load can be settled.
func (m besideMaking) try(e, base *rates.Edition, of func(trial.Row) *worksheet.Step, turned bool) []tried {
	if e == nil {
		return nil
	}
	var out []tried
	for _, row := range trial.Of(e, m.loads.on(base).under(e), grid(base)).Rows {
		if row.Settlement == nil || of(row) == nil {
			continue
		}
		figure := of(row).Value().In(quantity.Plain)
		if turned {
			figure = figure.Neg()
		}
		out = append(out, tried{row.Moisture, figure})
	}
	return out
}

// bounds is the room that curves take.
type bounds struct {
	empty                  bool
	left, right, low, high quantity.Amount
}

func boundsOf(lines [][]tried) bounds {
	b := bounds{empty: true, low: quantity.Zero(quantity.Plain), high: quantity.Zero(quantity.Plain)}
	for _, p := range slices.Concat(lines...) {
		if b.empty {
			b.left, b.right, b.empty = p.moisture, p.moisture, false
		}
		b.left, b.right = quantity.Min(b.left, p.moisture), quantity.Max(b.right, p.moisture)
		b.low, b.high = quantity.Min(b.low, p.figure), quantity.Max(b.high, p.figure)
	}
	if b.low.Equal(b.high) {
		b.high = b.low.Add(quantity.Int(1, quantity.Plain))
	}
	return b
}

func (b bounds) x(at quantity.Amount) int {
	if b.left.Equal(b.right) {
		return 500
	}
	return quantity.Permille(at.Sub(b.left).Div(b.right.Sub(b.left)), quantity.HalfUp)
}

func (b bounds) y(at quantity.Amount) int {
	return quantity.Permille(at.Sub(b.low).Div(b.high.Sub(b.low)), quantity.HalfUp)
}

// guides are the ends and the middle of both scales.
func (b bounds) guides() (across, below []model.Guide) {
	two := quantity.Int(2, quantity.Plain)
	for _, at := range []quantity.Amount{b.low, b.low.Add(b.high).Div(two), b.high} {
		across = append(across, model.Guide{At: b.y(at), Label: session.ToOne.Apply(at).Figure()})
	}
	for _, at := range []quantity.Amount{b.left, b.left.Add(b.right).Div(two), b.right} {
		below = append(below, model.Guide{At: b.x(at), Label: at.Fixed(1)})
	}
	return across, below
}

// Beside are the problems, or else the differences from the edition it was begun from.
func (m *Making) Beside() []model.CardLine {
	if !m.begun {
		return nil
	}
	if len(m.problems) > 0 {
		return besideMaking{m}.mistakes()
	}
	lines := []model.CardLine{{Kind: model.CardTitle, Left: m.session.Say("What differs from %s", m.draft.Base().ID)}}
	if m.house != nil {
		for _, line := range message.Lines(m.house) {
			lines = append(lines, model.CardLine{Kind: model.CardMark, Left: m.session.Text(line)})
		}
	}
	for _, d := range rates.Diff(m.draft.Base(), m.edition) {
		what := session.Join(": ", m.session.Text(d.Section), m.session.Text(d.Label))
		change := m.session.Say("%s, before %s", session.OrElse(m.session.Text(d.After), session.NoFigure), session.OrElse(m.session.Text(d.Before), session.NoFigure))
		lines = append(lines, model.CardLine{Kind: model.CardPair, Left: what, Note: change})
	}
	return lines
}

// mistakes are all of them, each with its figure.
func (m besideMaking) mistakes() []model.CardLine {
	lines := []model.CardLine{{Kind: model.CardTitle, Left: m.session.Say("Mistakes")}}
	for _, p := range m.problems {
		where := ""
		for _, f := range m.figures() {
			if f.Line == p.Line {
				n := m.words(f)
				where = session.Join(": ", n.section, n.label)
			}
		}
		lines = append(lines, model.CardLine{Kind: model.CardMark, Left: session.Join(": ", where, m.session.Text(p.What))},
			model.CardLine{Kind: model.CardText, Left: m.session.Text(p.Remedy)}, model.CardLine{Kind: model.CardGap})
	}
	return lines
}
