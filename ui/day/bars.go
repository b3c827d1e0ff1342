package day

import (
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Hours are the loads of the day by the hour.
func (s *DaySheet) Hours() model.Bars { return barsIn(s.session.Language, s.sheet.HourBars()) }

// Spread returns the number of loads by moisture.
func (s *DaySheet) Spread() model.Bars { return barsIn(s.session.Language, s.sheet.SpreadBars()) }

// barsIn is a chart of the day's paper on the screen, where a bar of no height has no figure.
func barsIn(in session.Language, b report.Bars) model.Bars {
	out := model.Bars{Title: in.Text(b.Title), Empty: in.Text(b.Empty)}
	for i, height := range b.Heights {
		bar := model.Bar{Label: in.Text(b.Labels[i]), Height: height}
		if height > 0 {
			bar.Value = in.Text(b.Values[i])
		}
		out.Bars = append(out.Bars, bar)
	}
	return out
}

// WhereTo returns the intake of each bin, in the quantity settled.
func (s *DaySheet) WhereTo() model.Bars {
	out := model.Bars{Title: s.session.Say("Where it went"), Empty: s.session.Say("Nothing came in.")}
	var bins []string
	took := map[string]quantity.Amount{}
	unit := quantity.Plain
	for _, p := range s.sheet.Places {
		if unit == quantity.Plain && !p.Outbound {
			unit = p.Sum.Quantity.Unit()
		}
		if p.Outbound || p.Sum.Quantity.Unit() != unit {
			continue
		}
		if _, seen := took[p.Bin]; !seen {
			bins, took[p.Bin] = append(bins, p.Bin), quantity.Zero(unit)
		}
		took[p.Bin] = took[p.Bin].Add(p.Sum.Quantity)
	}
	if len(bins) == 0 {
		return out
	}
	out.Title = s.session.Say("Where it went, %s", unit)
	most := quantity.Zero(unit)
	for _, bin := range bins {
		most = quantity.Max(most, took[bin])
	}
	for _, bin := range bins {
		out.Bars = append(out.Bars, model.Bar{Label: session.OrElse(bin, s.session.Say("none")), Value: session.ToOne.Apply(took[bin]).Figure(), Height: thousandths(took[bin], most)})
	}
	return out
}

// thousandths returns a part of a whole in thousandths.
func thousandths(part, whole quantity.Amount) int {
	if whole.Sign() <= 0 {
		return 0
	}
	return quantity.Permille(part.Div(whole), quantity.HalfUp)
}
