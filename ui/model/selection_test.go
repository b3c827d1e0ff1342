package model

import (
	"slices"
	"testing"
)

func rowsOf(keys ...string) []Row {
	out := make([]Row, len(keys))
	for i, key := range keys {
		out[i].Key = key
	}
	return out
}

// The choice follows its key while rows come and go, and is lost with its row.
func TestSelectionFollowsItsKey(t *testing.T) {
	s := Selection{Rows: rowsOf("a", "b", "c"), Chosen: 1}
	for _, c := range []struct {
		rows []Row
		want int
	}{
		{rowsOf("new", "a", "b"), 2},
		{rowsOf("b"), 0},
		{rowsOf("a", ""), -1},
		{rowsOf("b"), -1}, // what was lost is not restored
	} {
		s.Replace(c.rows)
		if s.Chosen != c.want {
			t.Errorf("among %v row %d is chosen, want %d", c.rows, s.Chosen, c.want)
		}
	}
}

func TestSelectionStaysWithinItsRows(t *testing.T) {
	three, none := Selection{Rows: rowsOf("a", "b", "c")}, Selection{Chosen: -1}
	for _, c := range []struct{ i, want, wantOfNone int }{{-5, 0, -1}, {0, 0, -1}, {2, 2, -1}, {9, 2, -1}} {
		if got := three.Nearest(c.i); got != c.want {
			t.Errorf("nearest to %d of three rows is %d, want %d", c.i, got, c.want)
		}
		if got := none.Nearest(c.i); got != c.wantOfNone {
			t.Errorf("nearest to %d of no rows is %d, want %d", c.i, got, c.wantOfNone)
		}
	}
	if none.Key() != "" || none.Find("") != -1 || none.Has(0) {
		t.Error("a list without rows has a chosen one")
	}
}

// A column is one row: its head and its cell stay together.
func TestColumnsGiveHeadsAndCells(t *testing.T) {
	columns := Columns[string]{
		Words("Name", 10, func(r string) string { return r }).Growing().Wishing(20),
		Figures("Letters", 4, func(r string) string { return r[:1] }).Dropped(2).Stated(),
	}
	want := []Column{{Title: "Name", Width: 10, Wish: 20, Grow: true}, {Title: "Letters", Width: 4, Figures: true, Drop: 2, State: true}}
	if got := columns.Heads(); !slices.Equal(got, want) {
		t.Errorf("heads %+v, want %+v", got, want)
	}
	if got := columns.Cells("corn"); !slices.Equal(got, []string{"corn", "c"}) {
		t.Errorf("cells %q", got)
	}
}
