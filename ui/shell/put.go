package shell

import (
	"tenthpoint/ui/model"
	"tenthpoint/ui/widgets"
)

// Put shows a presenter's question as a dialog.
func (w *Window) Put(ask model.Ask) {
	switch {
	case ask.Notice:
		w.UI.Tell(widgets.Notice{Title: ask.Title, Text: ask.Text, State: ask.State, Close: ask.No}, nil)
	case len(ask.Fields) == 0:
		w.UI.Ask(widgets.Question{
			Title: ask.Title, Text: ask.Text, State: ask.State, Yes: ask.Yes, No: ask.No, Danger: ask.Danger,
		}, func(yes bool) { w.answer(ask, nil, yes) })
	case isChoice(ask):
		w.putChoice(ask)
	default:
		w.UI.AskForm(ask, func(values map[string]string, ok bool) { w.answer(ask, values, ok) })
	}
}

// isChoice reports whether a question is only which one of a list.
func isChoice(ask model.Ask) bool {
	return len(ask.Fields) == 1 && ask.Fields[0].Options != nil && !ask.Fields[0].FreeText
}

func (w *Window) putChoice(ask model.Ask) {
	field := ask.Fields[0]
	w.UI.AskChoice(widgets.Choice{
		Title: ask.Title, Text: ask.Text, Label: field.Label, Options: field.Options, Yes: ask.Yes, No: ask.No, Fault: ask.Fault,
	}, func(chosen model.Option, ok bool) { w.answer(ask, map[string]string{field.ID: chosen.Code}, ok) })
}

// answer passes on the answer to a question, or says that nothing was done: a person who pressed
// the wrong key would believe the opposite.
func (w *Window) answer(ask model.Ask, values map[string]string, ok bool) {
	if ok {
		ask.Then(values)
		return
	}
	w.Say(model.Plain, w.Session.Say("Nothing was done: %s", ask.Title))
	if ask.GivenUp != nil {
		ask.GivenUp()
	}
}
