package session

import (
	"tenthpoint/ui/model"
)

// withDraft lets what is typed into a question outlive the program: it is kept
// at every keystroke until the person goes on or gives it up, and fills the
// fields in when the same is asked after a stop.
func withDraft(f *Session, ask model.Ask) model.Ask {
	if ask.Draft == "" {
		return ask
	}
	at := DraftAt{"ask " + ask.Draft, ask.Of}
	asked := map[string]string{}
	for _, field := range ask.Fields {
		asked[field.ID] = field.Value
	}
	if before := f.Drafts().TypedBefore(at); before != nil {
		ask.Fields = filledIn(ask.Fields, before)
		f.Say(model.Plain, Say("What was typed here before the stop stands here again."))
	}
	ask.Typed = func(values map[string]string) { f.Drafts().Jot(at, TypedOver(asked, values)) }
	ask.GivenUp = func() { f.Drafts().Keep(at, nil) }
	then := ask.Then
	ask.Then = func(values map[string]string) {
		then(values)
		f.Drafts().Keep(at, nil)
	}
	return ask
}

// filledIn are fields with the texts typed before in them.
func filledIn(fields []model.AskField, before map[string]string) []model.AskField {
	out := make([]model.AskField, len(fields))
	for i, field := range fields {
		if text, typed := before[field.ID]; typed {
			field.Value = text
		}
		out[i] = field
	}
	return out
}

// TypedOver are the values that are others than before.
func TypedOver(before, values map[string]string) map[string]string {
	out := map[string]string{}
	for id, text := range values {
		if text != before[id] {
			out[id] = text
		}
	}
	return out
}
