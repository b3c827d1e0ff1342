package elevator

import (
	"strings"
	"testing"
)

// The split that says the most about a load counts.
func TestFarmFor(t *testing.T) {
	g := Grower{Farms: []Farm{
		{Name: "Home place", Number: "4711", Place: "any"},
		{Name: "Home place", Commodity: "corn", Place: "corn"},
		{Name: "Home place", Commodity: "corn", CropYear: "2026", Place: "corn of 2026"},
		{Name: "Home place", Field: "North 40", Place: "field"},
	}}
	for _, c := range []struct{ text, field, commodity, year, want string }{
		{"home place", "", "soybeans", "", "any"}, {"4711", "", "soybeans", "2026", "any"}, {"HOME PLACE", "", "corn", "", "corn"},
		{"Home place", "", "corn", "2026", "corn of 2026"}, {"Home place", "north 40", "soybeans", "", "field"}, {"Creek", "", "corn", "", ""}, {"", "", "corn", "", ""},
	} {
		if f, known := g.FarmFor(c.text, c.field, c.commodity, c.year); f.Place != c.want || known != (c.want != "") {
			t.Errorf("%v is %+v", c, f)
		}
	}
	if n := len(g.WithFarm(Farm{Name: "HOME PLACE", Commodity: "corn"}).Farms); n != 4 {
		t.Errorf("a farm written again leaves %d", n)
	}
}

// A card leads to the one that has taken its place in the end, also over several.
func TestCards(t *testing.T) {
	all := []Grower{
		{ID: "1", Name: "Ada Field", Into: &Takeover{Grower: "2"}},
		{ID: "2", Name: "A. Field", Into: &Takeover{Grower: "3"}, Former: []string{"Ada F."}},
		{ID: "3", Name: "Estate of Ada Field"}, {ID: "4", Name: "Len Lord"},
		{ID: "5", Name: "round", Into: &Takeover{Grower: "6"}}, {ID: "6", Name: "and round", Into: &Takeover{Grower: "5"}},
	}
	cards := Cards(all)
	if len(cards) != 2 || strings.Join(cards[0].Codes, " ") != "3 1 2" || strings.Join(cards[0].Names, ", ") != "Ada Field, A. Field, Ada F." {
		t.Errorf("cards %+v", cards)
	}
	if c, known := CardOf(all, "1"); !known || c.ID != "3" {
		t.Errorf("1 is %+v", c)
	}
	if _, known := CardOf(all, "9"); known {
		t.Error("a code of nobody is known")
	}
}
