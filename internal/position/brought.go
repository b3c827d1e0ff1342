package position

import (
	"strings"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/title"
)

// Brought is the change that a ticket makes in the house: the grain that was weighed, what the elevator owes
// for it, and what lies between the two. Net is Settled and all the rest together. Of a load that
// was only weighed, Net alone is set.
type Brought struct {
	Net, Settled                      quantity.Amount
	Dockage, Water, Handling, Quality quantity.Amount
	// Owners are the parts of Settled of those who share in the load; none where one has all.
	Owners []quantity.Amount
	// Results are the results of the sample by factor, moisture among them.
	Results map[grain.FactorID]quantity.Amount
}

// BroughtBy reads what a ticket changes in the house. It asks only for net and settled weight, so
// that any ticket of any engine can be read.
func BroughtBy(r settle.Recorded) (Brought, error) {
	net, known := r.Lines[settle.LineConvertedNet]
	if !known {
		net, known = r.Lines[settle.LineNet]
	}
	if !known || !net.Unit().IsMass() {
		return Brought{}, message.Storage.Errorf("the figures written down with the load have no net weight")
	}
	none := quantity.Zero(net.Unit())
	b := Brought{Net: net, Settled: none, Dockage: none, Water: none, Handling: none, Quality: none}
	if r.Weighed {
		return b, nil
	}
	part := func(line string) quantity.Amount {
		if a, there := r.Lines[line]; there && a.Unit() == none.Unit() {
			return a
		}
		return none
	}
	if settled, there := r.Lines[settle.LineSettled]; !there || settled.Unit() != none.Unit() {
		return b, message.Storage.Errorf("the figures written down with the load have no settled weight in %s", none.Unit().String())
	}
	b.Settled = part(settle.LineSettled)
	b.Dockage, b.Water, b.Handling = part(settle.LineDockage), part(settle.LineWater), part(settle.LineHandling)
	b.Quality = net.Sub(b.Settled).Sub(b.Dockage).Sub(b.Water).Sub(b.Handling)
	for owner := 1; ; owner++ {
		line := settle.OwnLine(owner, settle.LineSettled)
		if _, there := r.Lines[line]; !there {
			break
		}
		b.Owners = append(b.Owners, part(line))
	}
	b.Results = results(r)
	return b, nil
}

// factors begins the ids of the lines of results.
var factors = settle.FactorLine("")

// results are the results of the sample that were recorded as figures.
func results(r settle.Recorded) map[grain.FactorID]quantity.Amount {
	out := map[grain.FactorID]quantity.Amount{}
	for id, a := range r.Lines {
		if factor, is := strings.CutPrefix(id, factors); is {
			out[grain.FactorID(factor)] = a
		}
	}
	if m, tested := r.Lines[settle.LineMoisture]; tested {
		out[grain.Moisture] = m
	}
	return out
}

// Entry is an amount added to a line.
type Entry struct {
	Line   Line
	Weight quantity.Amount
}

// Entries are a ticket's amounts on the lines: its net weight, parted by who owns it and by what
// was settled off it. Terms are those of each owner, counted from zero. What shares of owners do
// not come to, if a damaged book should have it so, stands as undecided.
func (b Brought) Entries(terms func(owner int) title.Terms) []Entry {
	var out []Entry
	add := func(line Line, weight quantity.Amount) {
		if !weight.IsZero() {
			out = append(out, Entry{line, weight})
		}
	}
	if len(b.Owners) == 0 {
		add(LineOf(terms(0)), b.Settled)
	}
	rest := b.Settled
	for i, part := range b.Owners {
		add(LineOf(terms(i)), part)
		rest = rest.Sub(part)
	}
	if len(b.Owners) > 0 {
		add(Undecided, rest)
	}
	add(Screenings, b.Dockage)
	add(Water, b.Water)
	add(Handling, b.Handling)
	add(Quality, b.Quality)
	return out
}

// Grain is the grain that was brought on a day, with what its sample measured.
func (b Brought) Grain(day quantity.Date) bin.Grain {
	g := bin.Of(b.Net, day)
	for factor, result := range b.Results {
		switch {
		case factor == grain.TestWeight:
			if density, err := quantity.TestWeight(result, densityOf(b.Net.Unit())); err == nil {
				g = g.With(factor, density)
			}
		case result.Unit() == quantity.Percent || result.Unit() == quantity.PPM || result.Unit() == quantity.PPB:
			g = g.With(factor, result)
		}
	}
	return g
}

// densityOf is the unit that test weights are averaged in, for a unit of weight.
func densityOf(weight quantity.Unit) quantity.Unit {
	if weight == quantity.Kg || weight == quantity.Tonne {
		return quantity.KgPerHL
	}
	return quantity.LbPerBushel
}
