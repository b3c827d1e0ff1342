package widgets

import (
	"strings"
	"tenthpoint/ui/widgettest"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

func TestTabFollowsTheRingNotTheTree(t *testing.T) {
	h := newHouse(t)
	ring := NewFocusOrder(h.Stage)
	gross, tare, stored, weigh := NewFigureEntry(), NewFigureEntry(), NewCheckbox("stored"), NewButton("Weigh", nothing)
	ring.Add("gross", gross)
	ring.Add("tare", tare)
	ring.Add("stored", stored)
	ring.Add("weigh", weigh)
	// In a border layout the middle comes first in the tree.
	h.Show(container.NewBorder(gross, weigh, nil, nil, container.NewVBox(stored, tare)), fyne.NewSize(300, 300))
	widgettest.Equal(t, "order", strings.Join(ring.IDs(), " "), "gross tare stored weigh")

	ring.FocusFirst()
	var walked []string
	for range 5 {
		walked = append(walked, ring.Current())
		h.Press(fyne.KeyTab)
	}
	widgettest.Equal(t, "Tab", strings.Join(walked, " "), "gross tare stored weigh gross")

	ring.held = func() fyne.KeyModifier { return fyne.KeyModifierShift }
	walked = nil
	ring.Focus("tare")
	for range 4 {
		walked = append(walked, ring.Current())
		h.Press(fyne.KeyTab)
	}
	widgettest.Equal(t, "Shift-Tab", strings.Join(walked, " "), "tare gross weigh stored")
}

// A view is told where the keyboard is, once for every stop it comes to.
func TestRingTellsWhereTheKeyboardIs(t *testing.T) {
	h := newHouse(t)
	ring := h.Cast(map[string]Keyed{"a": NewFieldEntry(), "b": NewCheckbox("b"), "c": NewButton("c", nothing)}, "a", "b", "c")
	var told []string
	ring.OnArrive = func(id string) { told = append(told, id) }
	ring.FocusFirst()
	h.Press(fyne.KeyTab, fyne.KeyEnter, fyne.KeyTab)
	widgettest.Equal(t, "told", strings.Join(told, " "), "a b c a")
}

func TestRingPassesOverWhatIsClosed(t *testing.T) {
	h := newHouse(t)
	a, b, c := NewFieldEntry(), NewFieldEntry(), NewFieldEntry()
	ring := h.Cast(map[string]Keyed{"a": a, "b": b, "c": c}, "a", "b", "c")
	b.Disable()
	ring.Focus("a")
	h.Press(fyne.KeyTab)
	h.At(ring, "c")
	c.Hide()
	ring.Focus("a")
	h.Press(fyne.KeyTab)
	h.At(ring, "a")
	widgettest.Equal(t, "focus on a grey field", ring.Focus("b"), false)
	widgettest.Equal(t, "focus on an unknown field", ring.Focus("z"), false)
}

func TestFocusOffTheCanvasIsNoFocus(t *testing.T) {
	h := newHouse(t)
	ring := NewFocusOrder(h.Stage)
	ring.Add("a", NewFieldEntry()) // never shown
	h.Show(NewFieldEntry(), fyne.NewSize(100, 100))
	widgettest.Equal(t, "focus", ring.Focus("a"), false)
	widgettest.Equal(t, "current", ring.Current(), "")
}

func TestFirstMissing(t *testing.T) {
	h := newHouse(t)
	a, b, c := NewFieldEntry(), NewFieldEntry(), NewFieldEntry()
	ring := h.Cast(map[string]Keyed{"a": a, "b": b, "c": c}, "a", "b", "c")
	for id, e := range map[string]*FieldEntry{"b": b, "c": c} {
		ring.SetMissing(id, func() bool { return e.Text == "" })
	}
	widgettest.Equal(t, "nothing filled", ring.FirstMissing(), "b")
	b.SetText("x")
	widgettest.Equal(t, "b filled", ring.FirstMissing(), "c")
	c.Hide()
	widgettest.Equal(t, "c hidden", ring.FirstMissing(), "")
}

func TestKeysGoToCommandsFirst(t *testing.T) {
	d := &deeds{open: true}
	h := newHouse(t, d.commands()...)
	d.watch(h.Commands)
	entry, button, tick, table, reader := NewFieldEntry(), NewButton("b", nothing), NewCheckbox("t"), exampleTable(), NewReader(NewRemarks())
	pick := NewAutocomplete(widgettest.Growers())
	order := []string{"entry", "button", "tick", "table", "reader", "pick"}
	ring := h.Cast(map[string]Keyed{"entry": entry, "button": button, "tick": tick, "table": table, "reader": reader, "pick": pick}, order...)
	for _, id := range order {
		if !ring.Focus(id) {
			t.Fatalf("%s did not take the keyboard", id)
		}
		d.ran = nil
		h.Press(fyne.KeyF2, fyne.KeyF9, fyne.KeyEscape)
		widgettest.Equal(t, id, strings.Join(d.ran, ","), "new,settle,back")
		h.At(ring, id)
	}
}

func TestEscapeOfTheRingComesBeforeTheCommands(t *testing.T) {
	d := &deeds{}
	h := newHouse(t, d.commands()...)
	ring := h.Cast(map[string]Keyed{"a": NewFieldEntry()}, "a")
	used := true
	ring.OnEscape = func() bool { return used }
	ring.Focus("a")
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
	ring := h.Cast(map[string]Keyed{"a": NewFieldEntry(), "b": NewFieldEntry()}, "a", "b")
	ring.Focus("b")
	h.Stage.canvas.Unfocus()
	h.Press(fyne.KeyF2)
	widgettest.Equal(t, "ran", strings.Join(d.ran, ","), "new")
	h.At(ring, "")
	h.Press(fyne.KeyLeft)
	h.At(ring, "b")
}

func TestRingRefusesAnIDTwice(t *testing.T) {
	h := newHouse(t)
	ring := NewFocusOrder(h.Stage)
	ring.Add("a", NewFieldEntry())
	defer func() {
		if recover() == nil {
			t.Error("two stops have the id a")
		}
	}()
	ring.Add("a", NewFieldEntry())
}
