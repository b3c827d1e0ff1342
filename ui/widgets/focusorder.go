package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// Keyed is a widget that has a place in the focus order: all focusable widgets are.
type Keyed interface {
	fyne.Widget
	fyne.Focusable
	place() *focusStop
}

// FocusOrder is the tab order of a form. Without it the order would be that of the object tree,
// which is seldom the order in which the work is done.
type FocusOrder struct {
	// OnEscape, when set, is asked before the commands are. It reports whether it used the key up.
	OnEscape func() bool
	// OnArrive, when set, is called with the stop that gains the focus.
	OnArrive func(id string)

	ui    *UIContext
	Stops []*focusStop
	held  func() fyne.KeyModifier // which modifiers are down now
}

// NewFocusOrder makes an empty focus order.
func NewFocusOrder(ui *UIContext) *FocusOrder {
	return &FocusOrder{ui: ui, held: modifiersHeld}
}

// modifiersHeld returns the modifiers held, none without a keyboard.
func modifiersHeld() fyne.KeyModifier {
	if d, ok := fyne.CurrentApp().Driver().(desktop.Driver); ok {
		return d.CurrentKeyModifiers()
	}
	return 0
}

// Add appends a widget to the focus order. The id names it in presenters and tests. Adding an id twice
// panics: that is a programming error.
func (r *FocusOrder) Add(id string, stop Keyed) {
	if r.find(id) >= 0 {
		panic("widgets: the focus order has two stops " + id)
	}
	s := stop.place()
	s.order, s.id, s.Stop = r, id, stop
	r.Stops = append(r.Stops, s)
}

// SetMissing sets how to find out whether a stop still has to be filled.
func (r *FocusOrder) SetMissing(id string, missing func() bool) {
	if i := r.find(id); i >= 0 {
		r.Stops[i].missing = missing
	}
}

// IDs lists the stops in order.
func (r *FocusOrder) IDs() []string {
	ids := make([]string, len(r.Stops))
	for i, s := range r.Stops {
		ids[i] = s.id
	}
	return ids
}

// Focus moves the focus to the stop of an id and reports whether it could: a hidden or disabled
// stop cannot have it.
func (r *FocusOrder) Focus(id string) bool {
	i := r.find(id)
	return i >= 0 && r.Stops[i].open() && r.focus(r.Stops[i])
}

// focus reports whether the keyboard is there now: a widget that is not on the canvas, or hidden
// with all around it, does not get it.
func (r *FocusOrder) focus(s *focusStop) bool {
	r.ui.canvas.Focus(s.Stop)
	return r.ui.canvas.Focused() == fyne.Focusable(s.Stop)
}

// FocusFirst moves the focus to the first stop that can have it.
func (r *FocusOrder) FocusFirst() bool { return r.step(-1, +1) }

// Current is the id of the stop that has the focus, or "".
func (r *FocusOrder) Current() string {
	if stop, ok := r.ui.canvas.Focused().(Keyed); ok && stop.place().order == r {
		return stop.place().id
	}
	return ""
}

// FirstMissing is the id of the first stop still to be filled, or "".
func (r *FocusOrder) FirstMissing() string {
	for _, s := range r.Stops {
		if s.open() && s.missing != nil && s.missing() {
			return s.id
		}
	}
	return ""
}

// Next moves the focus to the stop after an id, round the ring.
func (r *FocusOrder) Next(id string) bool { return r.step(r.find(id), +1) }

// Prev moves the focus to the stop before an id, round the ring.
func (r *FocusOrder) Prev(id string) bool {
	from := r.find(id)
	if from < 0 {
		from = 0
	}
	return r.step(from, -1)
}

func (r *FocusOrder) step(from, by int) bool {
	n := len(r.Stops)
	for i := 1; i <= n; i++ {
		s := r.Stops[((from+by*i)%n+n)%n]
		if s.open() && r.focus(s) {
			return true
		}
	}
	return false
}

func (r *FocusOrder) find(id string) int {
	for i, s := range r.Stops {
		if s.id == id {
			return i
		}
	}
	return -1
}

// take offers a key to the handlers above the widgets: moving round the order, moving back, the
// commands.
func (r *FocusOrder) take(from string, ev *fyne.KeyEvent) bool {
	switch {
	case ev.Name == fyne.KeyTab && r.held()&fyne.KeyModifierShift != 0:
		r.Prev(from)
		return true
	case ev.Name == fyne.KeyTab:
		r.Next(from)
		return true
	case ev.Name == fyne.KeyEscape && r.OnEscape != nil && r.OnEscape():
		return true
	}
	return r.ui.takeKey(ev)
}

// focusStop is a widget's place on a ring. A widget without one works alone.
type focusStop struct {
	order   *FocusOrder
	id      string
	name    string // where the widget does not show it itself
	Stop    Keyed
	missing func() bool
}

func (s *focusStop) place() *focusStop { return s }

// words are those of the window; English before the widget has a place in one.
func (s *focusStop) words() Words {
	if s.order == nil {
		return EnglishWords()
	}
	return s.order.ui.words
}

// AcceptsTab keeps Tab from moving through the object tree: a widget with a stop gets the key
// itself and passes it to its ring.
func (s *focusStop) AcceptsTab() bool { return s.order != nil }

// offer passes a key to the reader of codes and to the ring first and reports whether it was handled.
func (s *focusStop) offer(ev *fyne.KeyEvent) bool {
	if s.order == nil {
		return false
	}
	return s.order.ui.scan.key(ev.Name) || s.order.take(s.id, ev)
}

// advance moves the focus on: to the stop named, or to the next one. A stop that names itself
// leaves the focus unchanged.
func (s *focusStop) advance(next string) {
	if s.order == nil || next == s.id {
		return
	}
	if next == "" || !s.order.Focus(next) {
		s.order.Next(s.id)
	}
}

// tookFocus remembers the last focused widget, so that a click on the background does not lose it
// for good, and tells the ring.
func (s *focusStop) tookFocus() {
	if s.order == nil {
		return
	}
	s.order.ui.last = s.Stop
	if s.order.OnArrive != nil {
		s.order.OnArrive(s.id)
	}
}

// open reports whether the widget can have the focus now.
func (s *focusStop) open() bool {
	if d, ok := s.Stop.(fyne.Disableable); ok && d.Disabled() {
		return false
	}
	return s.Stop.Visible()
}
