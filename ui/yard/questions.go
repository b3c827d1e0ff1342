package yard

import (
	"context"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
)

// questions are the guards' questions about a load before its ticket: improbable figures, each
// answered with a reason from a short list.
type questions struct{ form *LoadForm }

// waiting reports whether one waits for an answer.
func (q questions) waiting() bool { return len(q.form.Now.asked) > 0 }

// ask shows the first unanswered question. What is typed is recorded before, so that the answer is
// about the figures in the book.
func (q questions) ask() {
	f := q.form.session
	if !q.waiting() {
		return
	}
	if err := q.form.Commit(); err != nil {
		f.Fail(err)
		return
	}
	if !q.waiting() {
		return
	}
	asked := q.form.Now.asked[0]
	f.Put(model.Ask{
		Draft: "answer", Of: q.form.id,
		Title: q.form.session.Say("Is this right?"), Text: q.form.session.Text(asked.Said), State: model.Warn,
		Fields: q.fields(asked), Yes: q.form.session.Say("It is right"),
		Then: func(values map[string]string) { q.answer(asked, values["who"], values["reason"]) },
	})
}

// fields ask for the reason, and for a manager where the elevator requires one.
func (q questions) fields(asked guard.Finding) []model.AskField {
	options := make([]model.Option, len(asked.Reasons))
	for i, r := range asked.Reasons {
		options[i] = model.Option{Code: r, Name: q.form.session.Say(r)}
	}
	fields := []model.AskField{{ID: "reason", Label: q.form.session.Say("Reason"), Options: options, Chars: 40, Required: true}}
	if asked.Act != elevator.GuardManager {
		return fields
	}
	f := q.form.session
	return append([]model.AskField{{ID: "who", Label: q.form.session.Say("Manager"), Options: f.Managers(), Value: f.ManagerHere(), Chars: 24, Required: true}}, fields...)
}

// answer records the answer, under the manager's name where one answered.
func (q questions) answer(asked guard.Finding, who, reason string) {
	f := q.form.session
	write := func() error { return scalehouse.Answer(context.Background(), f.Desk, q.form.id, asked.ID, reason) }
	err := error(nil)
	if who != "" {
		err = f.As(who, write)
	} else {
		err = write()
	}
	if err == nil {
		err = q.form.Reload()
	}
	if err != nil {
		f.Fail(err)
		return
	}
	f.Notify(model.OK, q.form.session.Say("answered: %s", q.form.session.Say(reason)))
	f.Changed()
}
