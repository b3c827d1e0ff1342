package kit

import "fyne.io/fyne/v2"

// seat is a widget's place on a ring. A widget without one works alone.
type seat struct {
	ring    *Ring
	id      string
	stop    Keyed
	missing func() bool
}

func (s *seat) place() *seat { return s }

// AcceptsTab keeps Tab from walking the object tree: a seated widget gets the
// key itself and hands it to its ring.
func (s *seat) AcceptsTab() bool { return s.ring != nil }

// offer gives a key to the ring first and answers whether it was used up.
func (s *seat) offer(ev *fyne.KeyEvent) bool {
	return s.ring != nil && s.ring.take(s.id, ev)
}

// advance moves the keyboard on: to the stop named, or to the next one. A
// stop that names itself leaves the keyboard wherever it is by now.
func (s *seat) advance(next string) {
	if s.ring == nil || next == s.id {
		return
	}
	if next == "" || !s.ring.Focus(next) {
		s.ring.Next(s.id)
	}
}

// tookFocus remembers who had the keyboard last, so that a click on bare
// ground does not lose it for good, and tells the ring.
func (s *seat) tookFocus() {
	if s.ring == nil {
		return
	}
	s.ring.stage.last = s.stop
	if s.ring.OnArrive != nil {
		s.ring.OnArrive(s.id)
	}
}

// open tells whether the widget can have the keyboard now.
func (s *seat) open() bool {
	if d, ok := s.stop.(fyne.Disableable); ok && d.Disabled() {
		return false
	}
	return s.stop.Visible()
}
