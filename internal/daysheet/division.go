package daysheet

import (
	"cmp"
	"fmt"
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/title"
)

// Hour is the loads of one hour of the day, over all commodities.
type Hour struct {
	Hour    string // "14"
	In, Out int
}

// Place is one bin's intake or shipments of one commodity.
type Place struct {
	Name, Bin string
	Outbound  bool
	Sum       Sum
}

// DispositionSum is one commodity by disposition.
type DispositionSum struct {
	Name, How message.Text // "sold", "stored", "contract C-12"
	Whose     title.Whose
	Sum       Sum
}

// Spread is the number of loads at a moisture, in whole percents.
type Spread struct {
	Moisture string // "15": from 15.0 % to below 16.0 %
	Loads    int
}

// each visits every ticket that counts.
func each(parts []Part, visit func(Part, Ticket)) {
	for _, p := range parts {
		for _, t := range p.Tickets {
			visit(p, t)
		}
	}
}

func hours(parts []Part) []Hour {
	var out []Hour
	each(parts, func(_ Part, t Ticket) {
		hour := t.Time[:min(2, len(t.Time))]
		i := slices.IndexFunc(out, func(h Hour) bool { return h.Hour == hour })
		if i < 0 {
			i = len(out)
			out = append(out, Hour{Hour: hour})
		}
		if t.Outbound {
			out[i].Out++
		} else {
			out[i].In++
		}
	})
	slices.SortFunc(out, func(a, b Hour) int { return cmp.Compare(a.Hour, b.Hour) })
	return out
}

func places(parts []Part) []Place {
	var out []Place
	each(parts, func(p Part, t Ticket) {
		i := slices.IndexFunc(out, func(o Place) bool {
			return o.Name == t.Name && o.Bin == t.Bin && o.Outbound == t.Outbound && o.Sum.units() == p.units
		})
		if i < 0 {
			i = len(out)
			out = append(out, Place{Name: t.Name, Bin: t.Bin, Outbound: t.Outbound, Sum: newSum(p.units)})
		}
		out[i].Sum.join(sumOfOne(t))
	})
	slices.SortStableFunc(out, func(a, b Place) int { return cmp.Or(cmp.Compare(a.Name, b.Name), cmp.Compare(a.Bin, b.Bin)) })
	return out
}

// byDisposition splits the intake by disposition.
func byDisposition(parts []Part) []DispositionSum {
	var out []DispositionSum
	each(parts, func(p Part, t Ticket) {
		if t.Outbound {
			return
		}
		for _, part := range t.byTitle() {
			how := part.how()
			i := slices.IndexFunc(out, func(d DispositionSum) bool {
				return d.Name.String() == t.Name && d.How.Equal(how) && d.Sum.units() == p.units
			})
			if i < 0 {
				i = len(out)
				out = append(out, DispositionSum{Name: message.Words(t.Name), How: how, Whose: part.Terms().Owner(), Sum: newSum(p.units)})
			}
			out[i].Sum.join(sumOfOne(part))
		}
	})
	slices.SortStableFunc(out, func(a, b DispositionSum) int {
		return cmp.Or(cmp.Compare(a.Name.String(), b.Name.String()), cmp.Compare(a.How.String(), b.How.String()))
	})
	return out
}

// how returns the disposition of the grain, in words.
func (t Ticket) how() message.Text {
	if t.isApart() {
		return message.New("by owner")
	}
	switch terms := t.Terms(); {
	case terms.Under == title.Contract:
		return message.List(" ", message.New("contract"), message.Own(terms.No))
	case terms.No != "":
		return terms.Said()
	default:
		return terms.Under.Name()
	}
}

// whole drops the part of a percent below one.
var whole = quantity.To("1", quantity.Down)

// spread counts loads by whole percents of moisture, without gaps between the
// driest and the wettest.
func spread(parts []Part) []Spread {
	loads := map[int]int{}
	low, high := 0, -1
	each(parts, func(_ Part, t Ticket) {
		if t.Moisture == nil {
			return
		}
		at := percents(*t.Moisture)
		if high < low {
			low, high = at, at
		}
		low, high = min(low, at), max(high, at)
		loads[at]++
	})
	var out []Spread
	for at := low; at <= high; at++ {
		out = append(out, Spread{Moisture: fmt.Sprint(at), Loads: loads[at]})
	}
	return out
}

// percents returns the whole percents of a moisture, below a hundred.
func percents(m quantity.Amount) int {
	d, _ := whole.Apply(m).Decimal()
	return int(d.IntPart())
}
