package view

import "tenthpoint/ui/present"

// Form, paper and working take turns by one key. Beside a form the paper and the
// working change places; where only one has room, the form is the third in turn.

// turn brings the next to the front.
func (l *formAndPaper) turn() {
	switch {
	case l.narrow && !l.turned:
		l.turned, l.working = true, false
	case l.narrow && l.working:
		l.turned, l.working = false, false
	default:
		l.working = !l.working
	}
}

// toForm brings the form to the front, and reports whether it was not.
func (l *formAndPaper) toForm() bool {
	if !l.narrow || !l.turned {
		return false
	}
	l.turned, l.working = false, false
	return true
}

// next names what the key brings to the front; paper is the paper's own name.
func (l *formAndPaper) next(paper string) string {
	switch {
	case l.narrow && !l.turned:
		return paper
	case l.narrow && l.working:
		return present.Say("Form")
	case l.working:
		return paper
	}
	return present.Say("Working")
}
