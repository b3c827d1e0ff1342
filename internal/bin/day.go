package bin

import (
	"cmp"
	"slices"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/quantity"
)

// Place is the place of a heap: bin, commodity and unit. Weights in different units are kept apart.
type Place struct {
	Bin, Commodity string
	Unit           quantity.Unit
}

// Tally is the weights of trucks at a place on one day.
type Tally struct {
	// In is the grain they brought; Out the weight they carried away.
	In  Grain           `json:"in"`
	Out quantity.Amount `json:"out"`
	// Back is the weight that left with tickets of earlier days that were voided or corrected on this day, and
	// Returned what such tickets had carried away.
	Back     quantity.Amount `json:"back"`
	Returned quantity.Amount `json:"returned"`
}

// NoTrucks is the tally of a day without trucks.
func NoTrucks(unit quantity.Unit) Tally {
	none := quantity.Zero(unit)
	return Tally{In: None(unit), Out: none, Back: none, Returned: none}
}

// Add is two tallies together.
func (t Tally) Add(o Tally) Tally {
	t.In, t.Out = t.In.Mix(o.In), t.Out.Add(o.Out)
	t.Back, t.Returned = t.Back.Add(o.Back), t.Returned.Add(o.Returned)
	if t.In.Weight.IsZero() {
		t.In = None(t.In.Weight.Unit())
	}
	return t
}

// Equal reports whether two tallies are the same to the last digit.
func (t Tally) Equal(o Tally) bool {
	return t.In.Equal(o.In) && t.Out.Equal(o.Out) && t.Back.Equal(o.Back) && t.Returned.Equal(o.Returned)
}

// Neg is a tally taken back.
func (t Tally) Neg() Tally {
	return Tally{t.In.Neg(), t.Out.Neg(), t.Back.Neg(), t.Returned.Neg()}
}

// IsEmpty reports whether trucks did nothing.
func (t Tally) IsEmpty() bool {
	return t.In.Weight.IsZero() && t.Out.IsZero() && t.Back.IsZero() && t.Returned.IsZero()
}

// Row is one place on one day.
type Row struct {
	Place
	Day quantity.Date
	Tally
	// MovedIn and MovedOut are the movements of the day into the place and out of it.
	MovedIn, MovedOut quantity.Amount
	// Close is the content in the evening.
	Close Heap
}

// NoRow is the row of a place on a day before anything happens.
func NoRow(p Place, day quantity.Date) Row {
	none := quantity.Zero(p.Unit)
	return Row{Place: p, Day: day, Tally: NoTrucks(p.Unit), MovedIn: none, MovedOut: none, Close: Empty(p.Unit)}
}

// IsEmpty reports whether nothing happened at the place on the day.
func (r Row) IsEmpty() bool { return r.Tally.IsEmpty() && r.MovedIn.IsZero() && r.MovedOut.IsZero() }

// Before is the book's balance of the evening before.
func (r Row) Before() quantity.Amount {
	return r.Close.Balance().Sub(r.In.Weight).Sub(r.Returned).Sub(r.MovedIn).Add(r.Out).Add(r.Back).Add(r.MovedOut)
}

// House is all heaps of a house.
type House map[Place]Heap

// At is the heap at a place; an empty one where nothing lies.
func (h House) At(p Place) Heap {
	if heap, there := h[p]; there {
		return heap
	}
	return Empty(p.Unit)
}

// CloseDay works a day out: the rows of all places where anything happened. Open is the house in
// the evening before, and is not changed; movements are in the order of their numbers.
func CloseDay(day quantity.Date, open House, trucks map[Place]Tally, moves []Movement) []Row {
	c := &closing{day: day, open: open, rows: map[Place]*Row{}}
	places := make([]Place, 0, len(trucks))
	for p := range trucks {
		places = append(places, p)
	}
	slices.SortFunc(places, comparePlaces)
	for _, p := range places {
		r := c.row(p)
		r.Tally = trucks[p]
		r.Close = r.Close.Put(r.In, day).Put(Of(r.Returned, day), day)
		_, r.Close = r.Close.Take(r.Back)
	}
	for _, m := range moves {
		c.move(m)
	}
	for _, p := range places {
		r := c.row(p)
		_, r.Close = r.Close.Take(r.Out)
	}
	return c.sorted()
}

// closing is a day being worked out.
type closing struct {
	day  quantity.Date
	open House
	rows map[Place]*Row
}

func (c *closing) row(p Place) *Row {
	if r, there := c.rows[p]; there {
		return r
	}
	r := NoRow(p, c.day)
	r.Close = c.open.At(p)
	c.rows[p] = &r
	return &r
}

// move takes grain out of bins and puts into others what became of it.
func (c *closing) move(m Movement) {
	if m.What == Aerate || m.What == Temperatures {
		return
	}
	unit := m.Unit()
	taken := None(unit)
	for _, w := range m.From {
		r := c.row(Place{w.Bin, m.Commodity, unit})
		var lot Grain
		lot, r.Close = r.Close.Take(w.Weight)
		r.MovedOut = r.MovedOut.Add(w.Weight)
		taken = taken.Mix(lot)
	}
	if m.What == Open {
		taken = *m.Found
	}
	if missing := m.In().Sub(taken.Weight); missing.Sign() > 0 {
		taken = taken.Mix(Of(missing, m.Day))
	}
	made := m.made(taken)
	for _, w := range m.Into {
		var lot Grain
		lot, made = made.Part(w.Weight)
		r := c.row(Place{w.Bin, m.Commodity, unit})
		r.Close = r.Close.Put(lot, c.day)
		r.MovedIn = r.MovedIn.Add(w.Weight)
	}
}

// made is the grain that came of what was taken out of bins.
func (m Movement) made(taken Grain) Grain {
	out := m.Out()
	switch {
	case out.IsZero():
		return None(m.Unit())
	case m.Drying != nil && !taken.Weight.IsZero():
		g := taken.scaled(out).With(grain.Moisture, m.Drying.MoistureOut).Without(grain.TestWeight)
		if quantity.Recorded(m.Drying.TestWeight) {
			g = g.With(grain.TestWeight, m.Drying.TestWeight)
		}
		return g
	case out.More(taken.Weight):
		return taken.Mix(Of(out.Sub(taken.Weight), m.Day))
	}
	g, _ := taken.Part(out)
	return g
}

func (c *closing) sorted() []Row {
	out := make([]Row, 0, len(c.rows))
	for _, r := range c.rows {
		out = append(out, *r)
	}
	slices.SortFunc(out, func(a, b Row) int { return comparePlaces(a.Place, b.Place) })
	return out
}

func comparePlaces(a, b Place) int {
	return cmp.Or(cmp.Compare(a.Bin, b.Bin), cmp.Compare(a.Commodity, b.Commodity), cmp.Compare(a.Unit.String(), b.Unit.String()))
}
