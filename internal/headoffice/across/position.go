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

// Position is what lies at all sites.
type Position struct{ rows []Stock }

// Add enters the position of a site, its bins added up. A grain that a site weighs in two units has a
// row for each.
func (p *Position) Add(site string, bins daysheet.Position) {
	var own []Stock
	for _, b := range bins {
		i := slices.IndexFunc(own, func(s Stock) bool { return s.Commodity == b.Commodity && s.Weight.Unit() == b.Weight.Unit() })
		if i < 0 {
			own = append(own, Stock{Site: site, Commodity: b.Commodity, Name: b.Name, Weight: b.Weight})
			continue
		}
		own[i].Weight = own[i].Weight.Add(b.Weight)
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
		i := slices.IndexFunc(out, func(s Stock) bool { return s.Commodity == r.Commodity && s.Weight.Unit() == r.Weight.Unit() })
		if i < 0 {
			out = append(out, Stock{Commodity: r.Commodity, Name: r.Name, Weight: r.Weight})
			continue
		}
		out[i].Weight = out[i].Weight.Add(r.Weight)
	}
	return out
}
