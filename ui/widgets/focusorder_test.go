package widgets

import (
	"strings"
	"tenthpoint/ui/widgets/status"
	"tenthpoint/ui/widgettest"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

func TestTabFollowsTheRingNotTheTree(t *testing.T) {
	h := newHouse(t)
	order := NewFocusOrder(h.UI)
	gross, tare, stored, weigh := NewFigureEntry(), NewFigureEntry(), NewCheckbox("stored"), NewButton("Weigh", nothing)
	order.Add("gross", gross)
	order.Add("tare", tare)
	order.Add("stored", stored)
	order.Add("weigh", weigh)
	// In a border layout the middle comes first in the tree.
	h.Show(container.NewBorder(gross, weigh, nil, nil, container.NewVBox(stored, tare)), fyne.NewSize(300, 300))
	widgettest.Equal(t, "order", strings.Join(order.IDs(), " "), "gross tare stored weigh")

	order.FocusFirst()
	var walked []string
	for range 5 {
		walked = append(walked, order.Current())
		h.Press(fyne.KeyTab)
	}
	widgettest.Equal(t, "Tab", strings.Join(walked, " "), "gross tare stored weigh gross")

	order.held = func() fyne.KeyModifier { return fyne.KeyModifierShift }
	walked = nil
	order.Focus("tare")
	for range 4 {
		walked = append(walked, order.Current())
		h.Press(fyne.KeyTab)
	}
	widgettest.Equal(t, "Shift-Tab", strings.Join(walked, " "), "tare gross weigh stored")
}

// A view is told where the keyboard is, once for every stop it comes to.
func TestRingTellsWhereTheKeyboardIs(t *testing.T) {
	h := newHouse(t)
	order := h.Cast(map[string]Keyed{"a": NewFieldEntry(), "b": NewCheckbox("b"), "c": NewButton("c", nothing)}, "a", "b", "c")
	var told []string
	order.OnArrive = func(id string) { told = append(told, id) }
	order.FocusFirst()
	h.Press(fyne.KeyTab, fyne.KeyEnter, fyne.KeyTab)
	widgettest.Equal(t, "told", strings.Join(told, " "), "a b c a")
}

func TestRingPassesOverWhatIsClosed(t *testing.T) {
	h := newHouse(t)
	a, b, c := NewFieldEntry(), NewFieldEntry(), NewFieldEntry()
	order := h.Cast(map[string]Keyed{"a": a, "b": b, "c": c}, "a", "b", "c")
	b.Disable()
	order.Focus("a")
	h.Press(fyne.KeyTab)
	h.At(order, "c")
	c.Hide()
	order.Focus("a")
	h.Press(fyne.KeyTab)
	h.At(order, "a")
	widgettest.Equal(t, "focus on a grey field", order.Focus("b"), false)
	widgettest.Equal(t, "focus on an unknown field", order.Focus("z"), false)
}

func TestFocusOffTheCanvasIsNoFocus(t *testing.T) {
	h := newHouse(t)
	order := NewFocusOrder(h.UI)
	order.Add("a", NewFieldEntry()) // never shown
	h.Show(NewFieldEntry(), fyne.NewSize(100, 100))
	widgettest.Equal(t, "focus", order.Focus("a"), false)
	widgettest.Equal(t, "current", order.Current(), "")
}

func TestFirstMissing(t *testing.T) {
	h := newHouse(t)
	a, b, c := NewFieldEntry(), NewFieldEntry(), NewFieldEntry()
	order := h.Cast(map[string]Keyed{"a": a, "b": b, "c": c}, "a", "b", "c")
	for id, e := range map[string]*FieldEntry{"b": b, "c": c} {
		order.SetMissing(id, func() bool { return e.Text == "" })
	}
	widgettest.Equal(t, "nothing filled", order.FirstMissing(), "b")
	b.SetText("x")
	widgettest.Equal(t, "b filled", order.FirstMissing(), "c")
	c.Hide()
	widgettest.Equal(t, "c hidden", order.FirstMissing(), "")
}

func TestKeysGoToCommandsFirst(t *testing.T) {
	d := &deeds{open: true}
	h := newHouse(t, d.commands()...)
	d.watch(h.Commands)
	entry, button, tick, table, reader := NewFieldEntry(), NewButton("b", nothing), NewCheckbox("t"), exampleTable(), NewReader(status.NewList())
	pick := NewAutocomplete(widgettest.Growers())
	ids := []string{"entry", "button", "tick", "table", "reader", "pick"}
	order := h.Cast(map[string]Keyed{"entry": entry, "button": button, "tick": tick, "table": table, "reader": reader, "pick": pick}, ids...)
	for _, id := range ids {
		if !order.Focus(id) {
			t.Fatalf("%s did not take the keyboard", id)
		}
		d.ran = nil
		h.Press(fyne.KeyF2, fyne.KeyF9, fyne.KeyEscape)
		widgettest.Equal(t, id, strings.Join(d.ran, ","), "new,settle,back")
		h.At(order, id)
	}
}

func TestEscapeOfTheRingComesBeforeTheCommands(t *testing.T) {
	d := &deeds{}
	h := newHouse(t, d.commands()...)
	order := h.Cast(map[string]Keyed{"a": NewFieldEntry()}, "a")
	used := true
	order.OnEscape = func() bool { return used }
	order.Focus("a")
	h.Press(fyne.KeyEscape)
	widgettest.Equal(t, "ran", len(d.ran), 0)
	used = false
	h.Press(fyne.KeyEscape)
	widgettest.Equal(t, "ran", strings.Join(d.ran, ","), "back")
}

// TestBareGroundIsNotTheEnd: after a click on nothing, F-keys still work and
// any other key brings the keyboard back.
func TestBareGroundIsNotTheEnd(t *testing.T) {
	d := &deeds{}
	h := newHouse(t, d.commands()...)
	order := h.Cast(map[string]Keyed{"a": NewFieldEntry(), "b": NewFieldEntry()}, "a", "b")
	order.Focus("b")
	h.UI.canvas.Unfocus()
	h.Press(fyne.KeyF2)
	widgettest.Equal(t, "ran", strings.Join(d.ran, ","), "new")
	h.At(order, "")
	h.Press(fyne.KeyLeft)
	h.At(order, "b")
}

func TestRingRefusesAnIDTwice(t *testing.T) {
	h := newHouse(t)
	order := NewFocusOrder(h.UI)
	order.Add("a", NewFieldEntry())
	defer func() {
		if recover() == nil {
			t.Error("two stops have the id a")
		}
	}()
	order.Add("a", NewFieldEntry())
}
