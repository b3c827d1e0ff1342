package office_test

import (
	"testing"

	"tenthpoint/internal/book"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
)

func TestSearchForWhatWasFound(t *testing.T) {
	today := quantity.MustDate("2026-10-07")
	read := func(line string) office.Search {
		return office.ReadSearch(line, today, func(english string) string { return english }).Search
	}
	for _, c := range []struct {
		line string
		want func(office.Search) bool
	}{
		{"grain corn", func(s office.Search) bool { return s.Commodity == "corn" && len(s.Terms) == 0 }},
		{"grain wheat-hrw moisture 12..13.5", func(s office.Search) bool {
			return s.Commodity == "wheat-hrw" && s.MoistFrom == "12" && s.MoistBelow == "13.5"
		}},
		{"moisture 15.5", func(s office.Search) bool { return s.MoistFrom == "15.5" && s.MoistBelow == "15.501" }},
		{"moisture 15,5..16", func(s office.Search) bool { return s.MoistFrom == "" && len(s.Terms) == 2 }},
		{"moisture damp", func(s office.Search) bool { return s.MoistFrom == "" && len(s.Terms) == 2 }},
		{"hour 7", func(s office.Search) bool { return s.Hour == "07" && s.FromDay == "2026-10-07" }},
		{"2026-10-02 hour 14", func(s office.Search) bool { return s.Hour == "14" && s.FromDay == "2026-10-02" }},
		{"hour 24", func(s office.Search) bool { return s.Hour == "" && len(s.Terms) == 2 }},
		{"with drying", func(s office.Search) bool { return s.With == "drying" }},
		{"with holloway", func(s office.Search) bool { return s.With == "" && len(s.Terms) == 2 }},
		{"grain gold", func(s office.Search) bool { return s.Commodity == "" && len(s.Terms) == 2 }},
	} {
		if got := read(c.line); !c.want(got) {
			t.Errorf("%q is read as %+v", c.line, book.Search(got))
		}
	}
}
