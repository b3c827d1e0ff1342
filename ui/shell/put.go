package shell

import (
	"tenthpoint/ui/model"
	"tenthpoint/ui/widgets"
)

// Put shows a presenter's question as a dialog.
func (w *Window) Put(ask model.Ask) {
	switch {
	case ask.Notice:
		w.Stage.Tell(widgets.Notice{Title: ask.Title, Text: ask.Text, State: ask.State, Close: ask.No}, nil)
	case len(ask.Fields) == 0:
		w.Stage.Ask(widgets.Question{
			Title: ask.Title, Text: ask.Text, State: ask.State, Yes: ask.Yes, No: ask.No, Danger: ask.Danger,
		}, func(yes bool) {
			if yes {
				ask.Then(nil)
			}
		})
	case isChoice(ask):
		w.putChoice(ask)
	default:
		w.putForm(ask)
	}
}

// isChoice reports whether a question is only which one of a list.
func isChoice(ask model.Ask) bool {
	return len(ask.Fields) == 1 && ask.Fields[0].Options != nil && !ask.Fields[0].FreeText
}

func (w *Window) putChoice(ask model.Ask) {
	field := ask.Fields[0]
	w.Stage.AskChoice(widgets.Choice{
		Title: ask.Title, Text: ask.Text, Label: field.Label, Options: field.Options, Yes: ask.Yes, No: ask.No,
	}, func(chosen model.Option, ok bool) {
		if ok {
			ask.Then(map[string]string{field.ID: chosen.Code})
		}
	})
}

func (w *Window) putForm(ask model.Ask) {
	w.Stage.AskForm(ask, func(values map[string]string, ok bool) {
		switch {
		case ok:
			ask.Then(values)
		case ask.GivenUp != nil:
			ask.GivenUp()
		}
	})
}
