package across

import (
	"slices"

	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/quantity"
)

// Delivered is a grower's grain of one kind at a site, by the site's own working.
type Delivered struct {
	Site, Commodity, Name string
	Loads                 int
	Quantity, Payable     quantity.Amount
	// Later is the quantity without a price.
	Later quantity.Amount
}

// Account is the account of a grower who delivers at several sites.
type Account struct{ Parts []Delivered }

// Add enters the grower's account at a site.
func (a *Account) Add(site string, own daysheet.Account) {
	for _, p := range own.Parts {
		a.Parts = append(a.Parts, Delivered{
			Site: site, Commodity: p.Commodity, Name: p.Name, Loads: p.Sum.Loads,
			Quantity: p.Sum.Quantity, Payable: p.Sum.Payable, Later: p.Sum.LaterQuantity,
		})
	}
}

// Totals are the parts of all sites added up: by grain, in each pair of units it is settled in.
func (a *Account) Totals() []Delivered {
	var out []Delivered
	for _, p := range a.Parts {
		p.Site = ""
		i := slices.IndexFunc(out, func(d Delivered) bool {
			return d.Commodity == p.Commodity && d.Quantity.Unit() == p.Quantity.Unit() && d.Payable.Unit() == p.Payable.Unit()
		})
		if i < 0 {
			out = append(out, p)
			continue
		}
		out[i].Loads += p.Loads
		out[i].Quantity, out[i].Payable, out[i].Later = out[i].Quantity.Add(p.Quantity), out[i].Payable.Add(p.Payable), out[i].Later.Add(p.Later)
	}
	return out
}
