package across

import (
	"cmp"
	"slices"

	"tenthpoint/internal/position"
	"tenthpoint/internal/quantity"
)

// Standing is the grain of one kind at a site in the evening of a day: how much lies there, and whose
// it is. Off is by how much the house has more than its owners account for.
type Standing struct {
	Site, Commodity                      string
	InHouse, Owed, Company, Between, Off quantity.Amount
}

// Owners is whose grain lies at all sites.
type Owners struct{ rows []Standing }

// Add enters the daily position records of a site.
func (o *Owners) Add(site string, records []position.Record) {
	for _, r := range records {
		o.rows = append(o.rows, Standing{
			Site: site, Commodity: r.Commodity, InHouse: r.Total.InHouse,
			Owed: r.Of(position.Owed), Company: r.Of(position.Company), Between: r.Of(position.Between), Off: r.Off(),
		})
	}
}

// Rows are the grains of each site, grain by grain.
func (o *Owners) Rows() []Standing {
	rows := slices.Clone(o.rows)
	slices.SortStableFunc(rows, func(a, b Standing) int {
		return cmp.Or(cmp.Compare(a.Commodity, b.Commodity), cmp.Compare(a.Site, b.Site))
	})
	return rows
}

// Totals are the grains of all sites added up, in each unit they are weighed in.
func (o *Owners) Totals() []Standing {
	var out []Standing
	for _, r := range o.Rows() {
		r.Site = ""
		i := slices.IndexFunc(out, func(s Standing) bool {
			return s.Commodity == r.Commodity && s.InHouse.Unit() == r.InHouse.Unit()
		})
		if i < 0 {
			out = append(out, r)
			continue
		}
		out[i].InHouse, out[i].Owed = out[i].InHouse.Add(r.InHouse), out[i].Owed.Add(r.Owed)
		out[i].Company, out[i].Between, out[i].Off = out[i].Company.Add(r.Company), out[i].Between.Add(r.Between), out[i].Off.Add(r.Off)
	}
	return out
}
