package model

import "testing"

// What is copied out of a table comes apart again in a spreadsheet, whatever stands in its cells.
func TestTabSeparated(t *testing.T) {
	rows := []Row{{Cells: []string{"1", "Ada\tField", "\u22124.00"}}, {Cells: []string{"2", "two\nlines", ""}}}
	if got, want := TabSeparated([]Column{{Title: "No."}, {Title: "Grower"}, {Title: "$"}}, rows), "No.\tGrower\t$\n1\tAda Field\t-4.00\n2\ttwo lines\t\n"; got != want {
		t.Errorf("copied %q, want %q", got, want)
	}
	if got := TabSeparated(nil, rows[:1]); got != "1\tAda Field\t-4.00\n" {
		t.Errorf("one row is copied as %q", got)
	}
}

func TestTextOfCard(t *testing.T) {
	got := TextOfCard([]CardLine{{Left: "Net", Right: "28,000 lb"}, {Kind: CardRule}, {Left: "Payable", Right: "$2,483.10", Note: "rounded"}})
	if want := "Net\t28,000 lb\nPayable\t$2,483.10\nrounded\n"; got != want {
		t.Errorf("copied %q, want %q", got, want)
	}
}
