package entry

import (
	"tenthpoint/internal/guard"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
)

// guard adds the questions of the guards, and applies the answers that were typed.
func (t *trying) guard() {
	around, err := t.house.Around(t.Load)
	if err != nil {
		t.AddMessage(WholeLoad, FieldMessage{Stop, message.Stopped(message.Of(err)), err})
		return
	}
	around.Past = t.start.Past
	t.Found = guard.Check(t.Load, around)
	for _, a := range t.draft.answered {
		t.answer(a)
	}
	t.Asked = guard.Unanswered(t.Load, t.Found)
	for _, f := range t.Found {
		kind := Warn
		if _, asked := t.Asked.Find(f.ID); asked {
			kind = Ask
		}
		t.AddMessage(t.beside(f.Field), FieldMessage{Severity: kind, Text: f.Said})
	}
	if !t.start.Past {
		t.Lacking = guard.Lacks(t.Load, around.House)
	}
	for _, l := range t.Lacking {
		t.Missing[l.Field] = true
	}
}

// answer puts an answer on the copy of the load. An error in it is reported at its question.
func (t *trying) answer(a Answer) {
	f, asked := guard.Asked(t.Found).Find(a.Guard)
	if !asked {
		return // the book refuses it, and reports why
	}
	reason, err := f.Reason(a.Reason)
	if err == nil {
		err = t.Load.Apply(load.Stamped{Fact: f.Answer(reason), Stamp: t.house.Stamp()})
	}
	if err != nil {
		t.AddMessage(t.beside(f.Field), FieldMessage{Stop, message.Stopped(message.Of(err)), err})
	}
}
