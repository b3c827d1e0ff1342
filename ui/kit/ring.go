package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// Keyed is a widget that has a place on a ring. All of the kit's focusable
// widgets are.
type Keyed interface {
	fyne.Widget
	fyne.Focusable
	place() *seat
}

// Ring fixes the order in which the keyboard walks a form. Without it the
// order would be the order of the object tree, which is seldom the order in
// which the work is done.
type Ring struct {
	// OnEscape, when set, is asked before the commands are. It answers whether
	// it used the key up.
	OnEscape func() bool
	// OnArrive, when set, is told of the stop that has the keyboard from now on.
	OnArrive func(id string)

	stage *Stage
	seats []*seat
	held  func() fyne.KeyModifier // which modifiers are down now
}

// NewRing makes an empty ring on a stage.
func NewRing(stage *Stage) *Ring { return &Ring{stage: stage, held: modifiersHeld} }

// modifiersHeld asks the platform. Without a keyboard there is none held.
func modifiersHeld() fyne.KeyModifier {
	if d, ok := fyne.CurrentApp().Driver().(desktop.Driver); ok {
		return d.CurrentKeyModifiers()
	}
	return 0
}

// Add gives a widget the next place on the ring. The id names it in presenters
// and tests. Adding an id twice panics: it is a slip in code.
func (r *Ring) Add(id string, stop Keyed) {
	if r.find(id) >= 0 {
		panic("kit: ring has two stops " + id)
	}
	s := stop.place()
	s.ring, s.id, s.stop = r, id, stop
	r.seats = append(r.seats, s)
}

// SetMissing says how to tell whether the stop of an id still has to be filled.
func (r *Ring) SetMissing(id string, missing func() bool) {
	if i := r.find(id); i >= 0 {
		r.seats[i].missing = missing
	}
}

// IDs lists the stops in order.
func (r *Ring) IDs() []string {
	ids := make([]string, len(r.seats))
	for i, s := range r.seats {
		ids[i] = s.id
	}
	return ids
}

// Focus puts the keyboard on the stop of an id and answers whether it could:
// a hidden or disabled stop cannot have it.
func (r *Ring) Focus(id string) bool {
	i := r.find(id)
	return i >= 0 && r.seats[i].open() && r.focus(r.seats[i])
}

// focus answers whether the keyboard is there now: a widget that is not on the
// canvas, or hidden with all around it, does not get it.
func (r *Ring) focus(s *seat) bool {
	r.stage.canvas.Focus(s.stop)
	return r.stage.canvas.Focused() == fyne.Focusable(s.stop)
}

// FocusFirst puts the keyboard on the first stop that can have it.
func (r *Ring) FocusFirst() bool { return r.step(-1, +1) }

// Current is the id of the stop that has the keyboard, or "".
func (r *Ring) Current() string {
	if stop, ok := r.stage.canvas.Focused().(Keyed); ok && stop.place().ring == r {
		return stop.place().id
	}
	return ""
}

// FirstMissing is the id of the first stop still to be filled, or "".
func (r *Ring) FirstMissing() string {
	for _, s := range r.seats {
		if s.open() && s.missing != nil && s.missing() {
			return s.id
		}
	}
	return ""
}

// Next puts the keyboard on the stop after an id, round the ring.
func (r *Ring) Next(id string) bool { return r.step(r.find(id), +1) }

// Prev puts the keyboard on the stop before an id, round the ring.
func (r *Ring) Prev(id string) bool {
	from := r.find(id)
	if from < 0 {
		from = 0
	}
	return r.step(from, -1)
}

func (r *Ring) step(from, by int) bool {
	n := len(r.seats)
	for i := 1; i <= n; i++ {
		s := r.seats[((from+by*i)%n+n)%n]
		if s.open() && r.focus(s) {
			return true
		}
	}
	return false
}

func (r *Ring) find(id string) int {
	for i, s := range r.seats {
		if s.id == id {
			return i
		}
	}
	return -1
}

// take offers a key to what stands above the widgets: the walk round the ring,
// the way back, the commands.
func (r *Ring) take(from string, ev *fyne.KeyEvent) bool {
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
	return r.stage.takeKey(ev)
}
