package daysheet

import (
	"fmt"
	"slices"

	"tenthpoint/internal/grain/look"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// piece is one ticket's part of a column of a picture.
type piece struct {
	label     string
	commodity string
	size      quantity.Amount
}

// HourPicture is the loads of the day by the hour, stacked by grain. It has the names of the grains;
// the two pictures that stand beside it have not.
func (s *Sheet) HourPicture() report.Picture {
	p := report.Picture{Title: message.New("Loads by hour"), Legend: s.grains(), Empty: message.New("No load was ticketed.")}
	var labels []string
	for _, h := range s.Hours {
		labels = append(labels, h.Hour)
	}
	return s.stacked(p, labels, func(t Ticket) (piece, bool) {
		return piece{t.Time[:min(2, len(t.Time))], t.Commodity, one}, true
	})
}

// SpreadPicture is the loads of the day by their moisture, stacked by grain.
func (s *Sheet) SpreadPicture() report.Picture {
	p := report.Picture{Title: message.New("Loads by moisture, whole percents"), Empty: message.New("No load was tested.")}
	var labels []string
	for _, m := range s.Spread {
		labels = append(labels, m.Moisture)
	}
	return s.stacked(p, labels, func(t Ticket) (piece, bool) {
		if t.Moisture == nil {
			return piece{}, false
		}
		return piece{fmt.Sprint(percents(*t.Moisture)), t.Commodity, one}, true
	})
}

// PlacePicture is the weight that came into each bin, stacked by grain; what was weighed in another unit
// than most is left out.
func (s *Sheet) PlacePicture() report.Picture {
	p := report.Picture{Title: message.New("Where it went"), Empty: message.New("Nothing came in.")}
	unit, some := s.inboundUnit()
	if !some {
		return p
	}
	p.Title = message.New("Where it went, %s", unit)
	var labels []string
	pieceOf := func(t Ticket) (piece, bool) {
		return piece{t.Bin, t.Commodity, t.Settled}, !t.Outbound && t.Settled.Unit() == unit
	}
	each(s.Parts, func(_ Part, t Ticket) {
		if one, counts := pieceOf(t); counts && !slices.Contains(labels, one.label) {
			labels = append(labels, one.label)
		}
	})
	slices.Sort(labels)
	return s.stacked(p, labels, pieceOf)
}

// grains are the names of the grains of the day.
func (s *Sheet) grains() []report.Legend {
	var out []report.Legend
	for _, p := range s.Parts {
		one := report.Legend{Name: message.Words(p.Name), Look: look.Of(p.Commodity)}
		known := slices.ContainsFunc(out, func(l report.Legend) bool { return l.Look == one.Look })
		if len(p.Tickets) > 0 && !known {
			out = append(out, one)
		}
	}
	return out
}

// inboundUnit is the unit of the first grain that came in.
func (s *Sheet) inboundUnit() (quantity.Unit, bool) {
	for _, p := range s.Parts {
		if !p.Outbound && len(p.Tickets) > 0 {
			return p.units.weight, true
		}
	}
	return quantity.Plain, false
}

var one = quantity.Int(1, quantity.Plain)

// stacked adds the pieces of all tickets up into columns.
func (s *Sheet) stacked(p report.Picture, labels []string, pieceOf func(Ticket) (piece, bool)) report.Picture {
	sums := map[string]map[string]quantity.Amount{}
	totals := map[string]quantity.Amount{}
	var grains []string
	each(s.Parts, func(_ Part, t Ticket) {
		one, counts := pieceOf(t)
		if !counts {
			return
		}
		if sums[one.label] == nil {
			sums[one.label] = map[string]quantity.Amount{}
		}
		sums[one.label][one.commodity] = added(sums[one.label], one.commodity, one.size)
		totals[one.label] = added(totals, one.label, one.size)
		if !slices.Contains(grains, one.commodity) {
			grains = append(grains, one.commodity)
		}
	})
	for _, label := range labels {
		p.Stacks = append(p.Stacks, stackOf(label, sums[label], totals, grains))
	}
	return p
}

// added is a sum and one more.
func added(sums map[string]quantity.Amount, of string, size quantity.Amount) quantity.Amount {
	if sum, some := sums[of]; some {
		return sum.Add(size)
	}
	return size
}

// stackOf is a column, as high as its part of the highest one.
func stackOf(label string, of map[string]quantity.Amount, totals map[string]quantity.Amount, grains []string) report.Stack {
	out := report.Stack{Label: orNone(label)}
	total, some := totals[label]
	if !some {
		return out
	}
	most := total
	for _, t := range totals {
		most = quantity.Max(most, t)
	}
	out.Value = report.Figure(total.Figure())
	for _, id := range grains {
		if size, some := of[id]; some && most.Sign() > 0 {
			out.Parts = append(out.Parts, report.Part{Height: quantity.Permille(size.Div(most), quantity.HalfUp), Look: look.Of(id)})
		}
	}
	return out
}
