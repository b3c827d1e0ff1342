package view

import (
	"tenthpoint/ui/kit"
	"tenthpoint/ui/present"
)

// Put puts a presenter's question before the window.
func (w *Window) Put(ask present.Ask) {
	switch {
	case ask.Notice:
		w.stage.Tell(kit.Notice{Title: ask.Title, Text: ask.Text, State: kit.State(ask.State), Close: ask.No}, nil)
	case len(ask.Fields) == 0:
		w.stage.Ask(kit.Question{
			Title: ask.Title, Text: ask.Text, State: kit.State(ask.State), Yes: ask.Yes, No: ask.No, Danger: ask.Danger,
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
func isChoice(ask present.Ask) bool {
	return len(ask.Fields) == 1 && ask.Fields[0].Options != nil && !ask.Fields[0].FreeText
}

func (w *Window) putChoice(ask present.Ask) {
	field := ask.Fields[0]
	w.stage.AskChoice(kit.Choice{
		Title: ask.Title, Text: ask.Text, Label: field.Label, Options: options(field.Options), Yes: ask.Yes, No: ask.No,
	}, func(chosen kit.Option, ok bool) {
		if ok {
			ask.Then(map[string]string{field.ID: chosen.Code})
		}
	})
}

func (w *Window) putForm(ask present.Ask) {
	form := kit.Form{
		Title: ask.Title, Text: ask.Text, State: kit.State(ask.State), Yes: ask.Yes, No: ask.No, Danger: ask.Danger, Check: ask.Check, OnEdit: ask.Typed,
	}
	for _, f := range ask.Fields {
		form.Fields = append(form.Fields, kit.FieldSpec{
			ID: f.ID, Label: f.Label, Unit: f.Unit, Value: f.Value, Hint: f.Hint, Chars: f.Chars,
			Figures: f.Figures, Tick: f.Tick, Required: f.Required, Options: options(f.Options), FreeText: f.FreeText,
		})
	}
	w.stage.AskForm(form, func(values map[string]string, ok bool) {
		switch {
		case ok:
			ask.Then(values)
		case ask.GivenUp != nil:
			ask.GivenUp()
		}
	})
}

// options are a presenter's options as the kit takes them; none stay none.
func options(all []present.Option) []kit.Option {
	if all == nil {
		return nil
	}
	out := make([]kit.Option, len(all))
	for i, o := range all {
		out[i] = kit.Option(o)
	}
	return out
}
