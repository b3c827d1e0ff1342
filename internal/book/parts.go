package book

import "tenthpoint/internal/message"

// A Part is a table, index, trigger or function of a book, as an engine keeps it.
type Part struct{ Kind, Name, Text string }

// CompareParts lists what is missing of a book's parts, what differs, and what does not belong there.
// What guards the journal is among them, so nothing may be otherwise than the program made it.
func CompareParts(want, is []Part) []message.Text {
	left := map[string]Part{}
	for _, p := range is {
		left[p.key()] = p
	}
	var problems []message.Text
	for _, w := range want {
		p, there := left[w.key()]
		delete(left, w.key())
		switch {
		case !there:
			problems = append(problems, message.New("The %s %v was removed from the book; somebody meant to alter it.", w.Kind, w.Name))
		case p != w:
			problems = append(problems, message.New("The %s %v is not the one that the program made: it says %q.", w.Kind, w.Name, p.Text))
		}
	}
	for _, p := range is {
		if _, foreign := left[p.key()]; foreign {
			problems = append(problems, message.New("The %s %q does not belong in a book; another program put it in.", p.Kind, p.Name))
		}
	}
	return problems
}

func (p Part) key() string { return p.Kind + " " + p.Name }
