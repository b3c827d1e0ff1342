// Package across adds up what several sites have, for the office. The figures of a site are its own;
// nothing of a site is worked out here.
package across

import (
	"cmp"
	"slices"

	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/quantity"
)

// Stock is the grain of one kind at a site.
type Stock struct {
	Site            string
	Commodity, Name string
	Weight          quantity.Amount
}

// Position is the grain at all sites.
type Position struct{ rows []Stock }

// Add enters the position of a site, its bins added up. A grain that a site weighs in two units has a
// row for each.
func (p *Position) Add(site string, bins daysheet.Position) {
	var own []Stock
	for _, b := range bins {
		own = withMore(own, Stock{Site: site, Commodity: b.Commodity, Name: b.Name, Weight: b.Weight})
	}
	p.rows = append(p.rows, own...)
}

// Rows are the grains of each site, grain by grain.
func (p *Position) Rows() []Stock {
	rows := slices.Clone(p.rows)
	slices.SortStableFunc(rows, func(a, b Stock) int { return cmp.Or(cmp.Compare(a.Name, b.Name), cmp.Compare(a.Site, b.Site)) })
	return rows
}

// Totals are the grains of all sites added up, in each unit they are weighed in.
func (p *Position) Totals() []Stock {
	var out []Stock
	for _, r := range p.Rows() {
		r.Site = ""
		out = withMore(out, r)
	}
	return out
}

// withMore are rows with more grain: in the row of its kind and unit, or in one of its own.
func withMore(rows []Stock, more Stock) []Stock {
	i := slices.IndexFunc(rows, func(s Stock) bool { return s.Commodity == more.Commodity && s.Weight.Unit() == more.Weight.Unit() })
	if i < 0 {
		return append(rows, more)
	}
	rows[i].Weight = rows[i].Weight.Add(more.Weight)
	return rows
}
