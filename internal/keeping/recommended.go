package keeping

import (
	"slices"
	"sync"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
	"tenthpoint/schedules/keeping"
)

// Recommended is a moisture that a source recommends for storing up to so many months.
type Recommended struct {
	Grains   []string
	Months   quantity.Amount // plain
	Moisture quantity.Amount
	Source   string
}

var shippedLimits = sync.OnceValue(func() []Recommended { return shipped("limits.toml", keeping.Limits, readLimits) })

func readLimits(root *tomlfile.Table) []Recommended {
	var out []Recommended
	root.Date("dated")
	for _, t := range root.Tables("limit") {
		out = append(out, Recommended{t.Texts("grains"), quantity.Of(t.Text("months"), quantity.Plain), t.Amount("moisture", quantity.Percent), t.Text("source")})
	}
	return out
}

// daysPerMonth is a month of a recommendation.
var daysPerMonth = quantity.Int(30, quantity.Day)

// RecommendedFor are the moistures that sources recommend for storing a grain for so
// many days: of each source the shortest time that is long enough. None where no
// source has been read.
func RecommendedFor(grain string, days quantity.Amount) []Recommended {
	var out []Recommended
	for _, l := range shippedLimits() {
		if !slices.Contains(l.Grains, grain) || daysPerMonth.Mul(l.Months).Less(days) {
			continue
		}
		i := slices.IndexFunc(out, func(r Recommended) bool { return r.Source == l.Source })
		switch {
		case i < 0:
			out = append(out, l)
		case l.Months.Less(out[i].Months):
			out[i] = l
		}
	}
	return out
}
