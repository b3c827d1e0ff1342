package widgets

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"

	"tenthpoint/ui/model"
)

// boardOf is a board with a number of cards in each column.
func boardOf(t *testing.T, counts ...int) (*house, *Cards) {
	cards := NewCards("Open")
	var columns []model.TruckColumn
	for c, n := range counts {
		column := model.TruckColumn{Title: fmt.Sprint("column ", c)}
		for i := range n {
			column.Rows = append(column.Rows, model.TruckRow{ID: fmt.Sprint(c, ".", i), Truck: fmt.Sprint(i)})
		}
		columns = append(columns, column)
	}
	cards.Set(columns)
	h := newHouse(t)
	order := NewFocusOrder(h.UI)
	order.Add("cards", cards)
	h.Show(cards, fyne.NewSize(900, 400))
	order.Focus("cards")
	return h, cards
}

// Arrows walk a board: past empty columns, to the card at the same height or the last there is, and
// never off an end.
func TestArrowsWalkTheCards(t *testing.T) {
	h, cards := boardOf(t, 3, 0, 1)
	opened := ""
	cards.OnOpen = func(id string) { opened = id }
	for _, step := range []struct {
		key  fyne.KeyName
		want string
	}{
		{fyne.KeyDown, "0.1"}, {fyne.KeyDown, "0.2"}, {fyne.KeyDown, "0.2"}, {fyne.KeyRight, "2.0"}, {fyne.KeyRight, "2.0"},
		{fyne.KeyLeft, "0.0"}, {fyne.KeyUp, "0.0"}, {fyne.KeyDown, "0.1"}, {fyne.KeyHome, "0.0"},
	} {
		if h.Press(step.key); cards.Chosen() != step.want {
			t.Fatalf("after %s the keyboard is on %q, want %q", step.key, cards.Chosen(), step.want)
		}
	}
	if h.Press(fyne.KeyReturn); opened != "0.0" {
		t.Errorf("Enter opened %q", opened)
	}
	cards.Set([]model.TruckColumn{{Title: "a"}, {Title: "b", Rows: []model.TruckRow{{ID: "0.0"}, {ID: "x"}}}})
	if cards.Chosen() != "0.0" {
		t.Errorf("a card that moved to another column lost the keyboard to %q", cards.Chosen())
	}
}

// A click opens the card under it, and the card with the keyboard is in sight in a column with more
// cards than there is room for.
func TestClicksOnCards(t *testing.T) {
	h, cards := boardOf(t, 30, 1)
	opened := ""
	cards.OnOpen = func(id string) { opened = id }
	l := cards.layout(cards.Size())
	cards.Tapped(&fyne.PointEvent{Position: fyne.NewPos(10, l.head+l.card*1.5)})
	if opened != "0.1" {
		t.Errorf("a click on the second card opened %q", opened)
	}
	opened = ""
	cards.Tapped(&fyne.PointEvent{Position: fyne.NewPos(10, l.head/2)})
	cards.Tapped(&fyne.PointEvent{Position: fyne.NewPos(l.wide+l.gap+10, l.head+l.card*1.5)})
	if opened != "" {
		t.Errorf("a click beside the cards opened %q", opened)
	}
	for range 29 {
		h.Press(fyne.KeyDown)
	}
	cards.Tapped(&fyne.PointEvent{Position: fyne.NewPos(10, l.head+l.card*(float32(l.room)-0.5))})
	if opened != "0.29" {
		t.Errorf("after walking down the last card in sight is %q", opened)
	}
}
