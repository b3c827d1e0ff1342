package session

import (
	"tenthpoint/ui/model"
)

// withDraft keeps the answers typed into a dialog over a restart: it saves them at every keystroke
// until the person confirms or cancels, and fills the fields in when the same is asked after a
// restart.
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
		f.Notify(model.Plain, f.Say("What was typed here before the stop stands here again."))
	}
	ask.Typed = func(values map[string]string) { f.Drafts().Save(at, TypedOver(asked, values)) }
	givenUp := ask.GivenUp
	ask.GivenUp = func() {
		f.Drafts().SaveSync(at, nil)
		if givenUp != nil {
			givenUp()
		}
	}
	then := ask.Then
	ask.Then = func(values map[string]string) {
		f.Drafts().SaveSync(at, nil)
		then(values)
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

// keptOpen puts a question again when the act that follows from its answer fails: a
// person who typed five fields types the one that was wrong.
func keptOpen(f *Session, ask model.Ask) model.Ask {
	then := ask.Then
	if then == nil || len(ask.Fields) == 0 {
		return ask
	}
	asked := ask
	ask.Then = func(values map[string]string) {
		f.failed = nil
		then(values)
		if f.failed == nil {
			return
		}
		again := asked
		again.Fields, again.Fault = filledIn(asked.Fields, values), f.Sentence(f.failed)
		f.Put(again)
	}
	return ask
}
