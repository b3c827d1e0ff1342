package position

import (
	"cmp"
	"slices"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/quantity"
)

// Record is the position of one commodity on one day, in one unit of weight.
type Record struct {
	Commodity string
	Unit      quantity.Unit
	Bins      []InBin
	Total     InBin // of all bins
	// Adjusted is the adjustments by kind; below zero where the house has less.
	Adjusted map[bin.Adjustment]quantity.Amount
	Lines    []OfLine
}

// InBin is one bin on the day, as weighed: Before + Received + Moved - LoadedOut - Back = InHouse.
type InBin struct {
	Bin                         string
	Before, Received, LoadedOut quantity.Amount
	// Back is what tickets of earlier days took with them that were voided or corrected, less what
	// such tickets had carried away.
	Back quantity.Amount
	// Moved is the movements in less the movements out; over all bins it is what was adjusted.
	Moved   quantity.Amount
	InHouse quantity.Amount
}

// OfLine is one line of owners on the day, as settled.
type OfLine struct {
	Line             Line
	Before, Up, Down quantity.Amount
	Close            quantity.Amount
}

// Of returns the closing balance of a group.
func (r Record) Of(g Group) quantity.Amount {
	total := quantity.Zero(r.Unit)
	for _, l := range r.Lines {
		if l.Line.Group() == g {
			total = total.Add(l.Close)
		}
	}
	return total
}

// Off is by how much the house has more than the lines account for; zero when it balances.
func (r Record) Off() quantity.Amount {
	off := r.Total.InHouse
	for _, l := range r.Lines {
		off = off.Sub(l.Close)
	}
	return off
}

// IsShort reports whether depositors' grain is gone: what the company owns is below zero.
func (r Record) IsShort() bool { return r.Of(Company).Sign() < 0 }

// byLegalWeight rounds bushels that are counted and not settled (practice).
var byLegalWeight = quantity.To("0.01", quantity.HalfUp)

// Bushels is a weight in bushels of legal weight; false where the law names no bushel of the grain
// or the weight is not in pounds.
func (r Record) Bushels(weight quantity.Amount) (quantity.Amount, bool) {
	c, err := grain.ByID(r.Commodity)
	if err != nil || c.Bushel.IsZero() || weight.Unit() != quantity.Lb {
		return quantity.Zero(quantity.Bushel), false
	}
	return byLegalWeight.Apply(weight.Div(c.Bushel)), true
}

// LineDay is the balance of a line as the book keeps it, with what changed it on the day; of a line
// that nothing changed that day, the balance alone.
type LineDay struct {
	Commodity         string
	Line              Line
	Up, Down, Balance quantity.Amount
}

// Day makes the records of a day, by commodity. Rows are those of the day, Standing what lies where
// nothing happened on it; moves are the movements of the day.
func Day(rows []bin.Row, standing []bin.Row, lines []LineDay, moves []bin.Movement) []Record {
	d := &records{all: map[key]*Record{}}
	for _, r := range rows {
		d.bin(r.Place, InBin{
			Bin: r.Bin, Before: r.Before(), Received: r.In.Weight, LoadedOut: r.Out,
			Back: r.Back.Sub(r.Returned), Moved: r.MovedIn.Sub(r.MovedOut), InHouse: r.Close.Balance(),
		})
	}
	for _, r := range standing {
		none := quantity.Zero(r.Unit)
		d.bin(r.Place, InBin{Bin: r.Bin, Before: r.Close.Balance(), Received: none, LoadedOut: none, Back: none, Moved: none, InHouse: r.Close.Balance()})
	}
	for _, l := range lines {
		r := d.of(l.Commodity, l.Balance.Unit())
		r.Lines = append(r.Lines, OfLine{l.Line, l.Balance.Sub(l.Up).Add(l.Down), l.Up, l.Down, l.Balance})
	}
	for _, m := range moves {
		if change := m.Out().Sub(m.In()); m.Adjusts != "" {
			r := d.of(m.Commodity, m.Unit())
			had, some := r.Adjusted[m.Adjusts]
			if some {
				change = change.Add(had)
			}
			r.Adjusted[m.Adjusts] = change
		}
	}
	return d.sorted()
}

type key struct {
	commodity string
	unit      quantity.Unit
}

type records struct{ all map[key]*Record }

func (d *records) of(commodity string, unit quantity.Unit) *Record {
	k := key{commodity, unit}
	if d.all[k] == nil {
		d.all[k] = &Record{Commodity: commodity, Unit: unit, Total: emptyBin(unit), Adjusted: map[bin.Adjustment]quantity.Amount{}}
	}
	return d.all[k]
}

func emptyBin(unit quantity.Unit) InBin {
	none := quantity.Zero(unit)
	return InBin{Before: none, Received: none, LoadedOut: none, Back: none, Moved: none, InHouse: none}
}

func (d *records) bin(p bin.Place, b InBin) {
	r := d.of(p.Commodity, p.Unit)
	r.Bins = append(r.Bins, b)
	t := &r.Total
	t.Before, t.Received, t.LoadedOut = t.Before.Add(b.Before), t.Received.Add(b.Received), t.LoadedOut.Add(b.LoadedOut)
	t.Back, t.Moved, t.InHouse = t.Back.Add(b.Back), t.Moved.Add(b.Moved), t.InHouse.Add(b.InHouse)
}

func (d *records) sorted() []Record {
	out := make([]Record, 0, len(d.all))
	order := Lines()
	for _, r := range d.all {
		slices.SortFunc(r.Bins, func(a, b InBin) int { return cmp.Compare(a.Bin, b.Bin) })
		slices.SortFunc(r.Lines, func(a, b OfLine) int {
			return cmp.Compare(slices.Index(order, a.Line), slices.Index(order, b.Line))
		})
		out = append(out, *r)
	}
	slices.SortFunc(out, func(a, b Record) int {
		return cmp.Or(cmp.Compare(a.Commodity, b.Commodity), cmp.Compare(a.Unit.String(), b.Unit.String()))
	})
	return out
}

// Postings are a movement's deductions from the lines: what the dryer takes out is water that was
// settled long ago.
func Postings(m bin.Movement) []Entry {
	if m.Unit() == quantity.Plain {
		return nil
	}
	l := m.Loss()
	var out []Entry
	for _, e := range []Entry{{Water, l.Water}, {Screenings, l.Screenings}, {Handling, l.Handling}, {Counted, l.House}} {
		if !e.Weight.IsZero() {
			out = append(out, e)
		}
	}
	return out
}
