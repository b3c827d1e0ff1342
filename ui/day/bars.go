package day

import (
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Hours are the loads of the day by the hour.
func (s *DaySheet) Hours() model.Bars {
	out := model.Bars{Title: s.session.Say("Loads by hour"), Empty: s.session.Say("No load was ticketed.")}
	most := 1
	for _, h := range s.sheet.Hours {
		most = max(most, h.In+h.Out)
	}
	for _, h := range s.sheet.Hours {
		out.Bars = append(out.Bars, countBar(h.Hour, h.In+h.Out, most))
	}
	return out
}

// Spread returns the number of loads by moisture.
func (s *DaySheet) Spread() model.Bars {
	out := model.Bars{Title: s.session.Say("Loads by moisture, whole percents"), Empty: s.session.Say("No load was tested.")}
	most := 1
	for _, m := range s.sheet.Spread {
		most = max(most, m.Loads)
	}
	for _, m := range s.sheet.Spread {
		out.Bars = append(out.Bars, countBar(m.Moisture, m.Loads, most))
	}
	return out
}

func countBar(label string, n, most int) model.Bar {
	bar := model.Bar{Label: label, Height: n * 1000 / most}
	if n > 0 {
		bar.Value = session.Counted(int64(n))
	}
	return bar
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
