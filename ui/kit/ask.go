package kit

import (
	"tenthpoint/ui/model"

	"fyne.io/fyne/v2/widget"
)

// Question is a choice between going on and leaving things as they are.
type Question struct {
	Title string
	Text  string
	State model.State // the icon beside the title
	Yes   string      // what going on is called: "Void the ticket". Empty: Words.Agree
	No    string      // empty: Words.Cancel
	// Danger marks what cannot be undone: the keyboard starts on No.
	Danger bool
}

// Ask puts a question. The answer is called once, with false for No or Escape.
func (s *Stage) Ask(q Question, answer func(yes bool)) *Dialog {
	d := s.newDialog(q.Title, q.State, q.Text)
	d.onDismiss = func() { answer(false) }
	importance, first := widget.HighImportance, "yes"
	if q.Danger {
		importance, first = widget.DangerImportance, "no"
	}
	d.addButton("no", or(q.No, words.Cancel), widget.MediumImportance, d.Dismiss)
	d.addButton("yes", or(q.Yes, words.Agree), importance, func() {
		d.finish(func() { answer(true) })
	})
	return d.show(first)
}

// Notice is something to be read and put away.
type Notice struct {
	Title string
	Text  string
	State model.State
	Close string // empty: Words.Close
}

// Tell shows a notice. The function, which may be nil, is called once it is
// put away.
func (s *Stage) Tell(n Notice, then func()) *Dialog {
	d := s.newDialog(n.Title, n.State, n.Text)
	d.onDismiss = then
	d.addButton("close", or(n.Close, words.Close), widget.HighImportance, d.Dismiss)
	return d.show("close")
}

// Reason asks for a sentence that goes on record with what is about to happen.
type Reason struct {
	Title, Text string
	State       model.State
	Label       string // what is asked: "Reason"
	Required    bool   // an empty answer does not go on
	Yes, No     string
	Danger      bool // Enter in the field goes to the safe button, not on
}

// AskReason asks for a reason. The answer is called once.
func (s *Stage) AskReason(r Reason, answer func(reason string, ok bool)) *Dialog {
	form := model.Ask{
		Title: r.Title, Text: r.Text, State: r.State, Yes: r.Yes, No: r.No, Danger: r.Danger,
		Fields: []model.AskField{{ID: "reason", Label: r.Label, Chars: 40, Required: r.Required}},
	}
	return s.AskForm(form, func(values map[string]string, ok bool) { answer(values["reason"], ok) })
}

// or gives a text, or another when it is empty.
func or(text, otherwise string) string {
	if text == "" {
		return otherwise
	}
	return text
}
