package session

import (
	"errors"

	"tenthpoint/internal/pin"
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
	secret := secretFields(ask.Fields)
	ask.Typed = func(values map[string]string) {
		f.Drafts().Save(at, without(secret, TypedOver(asked, values)))
	}
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

// secretFields are the ids of fields that no draft keeps.
func secretFields(fields []model.AskField) (ids []string) {
	for _, field := range fields {
		if field.Secret {
			ids = append(ids, field.ID)
		}
	}
	return ids
}

// without are values without some of them.
func without(ids []string, values map[string]string) map[string]string {
	for _, id := range ids {
		delete(values, id)
	}
	return values
}

// filledIn are fields with the texts typed before in them.
func filledIn(fields []model.AskField, before map[string]string) []model.AskField {
	out := make([]model.AskField, len(fields))
	for i, field := range fields {
		if text, typed := before[field.ID]; typed && !field.Secret {
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
		again := asked
		again.Fields = filledIn(asked.Fields, values)
		tryAct(f, again, func() { then(values) })
	}
	return ask
}

// tryAct does the act on an answer. When it fails the question is put again; when it asks for a PIN that
// is asked for, and the act is done again.
func tryAct(f *Session, again model.Ask, act func()) {
	var locked pin.Asked
	f.failed, f.asking = nil, true
	act()
	f.asking = false
	switch {
	case f.failed == nil:
		return
	case errors.As(f.failed, &locked):
		askPIN(f, locked.Who, func() { tryAct(f, again, act) }, func() { f.Put(again) })
		return
	}
	again.Fault = f.Sentence(f.failed)
	f.Put(again)
}
