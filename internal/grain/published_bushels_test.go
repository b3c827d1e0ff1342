package grain

import (
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/quantity"
)

// bushelRowGrains says which commodities a printed name is the bushel of. Names
// that are no commodity here, or several weights under one name, are left out
// and listed in SOURCE.toml.
var bushelRowGrains = map[string][]string{
	"corn, shelled":               {"corn"},
	"wheat":                       {"wheat-hrw", "wheat-hrs", "wheat-srw", "wheat-white", "wheat-white-club", "wheat-durum"},
	"soybeans":                    {"soybeans"},
	"oats":                        {"oats"},
	"barley":                      {"barley", "barley-malting-six", "barley-malting-two"},
	"rye":                         {"rye"},
	"kaffir corn (grain sorghum)": {"sorghum"},
	"flaxseed":                    {"flaxseed"},
	"rapeseed":                    {"rapeseed", "canola"},
	"canola / rapeseed":           {"rapeseed", "canola"},
	"peas":                        {"peas"},
	"peas, smooth":                {"peas"},
	"beans":                       {"beans"},
	"beans, dried":                {"beans"},
	"white beans":                 {"beans"},
}

// TestEveryBushelRow walks every printed bushel weight of a commodity; each
// statute among them is named by the commodity, and no statute is named that
// has no row.
func TestEveryBushelRow(t *testing.T) {
	named := map[string][]string{} // commodity -> statutes with a row
	for _, row := range published(t, "states-bushel-weights", "bushels.csv") {
		statute, _, _ := strings.Cut(row["source"], " (")
		for _, id := range bushelRowGrains[row["grain"]] {
			c := mustCommodity(t, id)
			if !c.Bushel.Equal(quantity.Of(row["lb_per_bu"], quantity.LbPerBushel)) {
				t.Errorf("%s: bushel %s, %s prints %s", id, c.Bushel, row["source"], row["lb_per_bu"])
			}
			if strings.HasPrefix(statute, "Alberta") {
				continue
			}
			named[id] = append(named[id], statute)
			if !strings.Contains(c.BushelSource, statute) {
				t.Errorf("%s does not name %s, which gives its bushel", id, statute)
			}
		}
	}
	for _, c := range All() {
		if c.BushelSource == "" {
			t.Errorf("%s says nothing of where its bushel comes from", c.ID)
		}
		if !c.Bushel.IsZero() && len(named[c.ID]) == 0 {
			t.Errorf("%s has a bushel of %s and no published row", c.ID, c.Bushel)
		}
		for _, law := range lawsIn(c.BushelSource) {
			if !c.Bushel.IsZero() && !slices.Contains(named[c.ID], law) {
				t.Errorf("%s names %q, which has no published row for it", c.ID, law)
			}
		}
	}
}

var statutes = []string{"Indiana Code 24-6-1-1", "Arkansas Code 4-18-331", "Minnesota Statutes 239.32", "Iowa Code 210.10", "North Dakota Century Code 64-01-05"}

func lawsIn(source string) []string {
	var out []string
	for _, law := range statutes {
		if strings.Contains(source, law) {
			out = append(out, law)
		}
	}
	return out
}

// TestDisputedBushelsStayOpen: where the statutes read disagree, or only
// statistics name a weight, the program has none.
func TestDisputedBushelsStayOpen(t *testing.T) {
	weights := map[string]map[string]bool{}
	for _, row := range published(t, "states-bushel-weights", "bushels.csv") {
		if weights[row["grain"]] == nil {
			weights[row["grain"]] = map[string]bool{}
		}
		weights[row["grain"]][row["lb_per_bu"]] = true
	}
	if len(weights["buckwheat"]) < 2 {
		t.Fatalf("the statutes on buckwheat agree now: %v; give it a bushel", weights["buckwheat"])
	}
	for _, id := range []string{"buckwheat", "triticale", "sunflower", "faba-beans", "mustard", "canary-seed", "lentils", "chickpeas", "safflower", "mixed-grain"} {
		if c := mustCommodity(t, id); !c.Bushel.IsZero() {
			t.Errorf("%s has a bushel of %s, but no law read names one alone", id, c.Bushel)
		}
	}
}
