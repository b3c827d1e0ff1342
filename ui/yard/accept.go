package yard

import (
	"context"
	"strings"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/scalehouse"

	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// acceptable is a limit that a manager may let the load through.
type acceptable struct{ id, sentence string }

// acceptables are the limits that stop this load and that a manager may
// accept: of the rates, and of this elevator's doubts about a reading.
func (f *LoadForm) acceptables() []acceptable {
	var out []acceptable
	for _, p := range f.Now.problems {
		if p.Accept != "" {
			out = append(out, acceptable{p.Accept, session.Say(p.Sentence)})
		}
	}
	for _, doubt := range entry.Stops(f.Now.Load, f.session.Desk.Profile()) {
		if !doubt.Final {
			out = append(out, acceptable{doubt.Code, session.Say(doubt.Sentence)})
		}
	}
	return out
}

// CanAccept reports whether a limit stands in the way that a manager may
// accept.
func (f *LoadForm) CanAccept() bool { return len(f.acceptables()) > 0 }

// Accept asks a manager for the leave to settle the load beyond a limit, with a
// reason that goes on record.
func (f *LoadForm) Accept() {
	limits := f.acceptables()
	if len(limits) == 0 {
		return
	}
	if err := f.Commit(); err != nil {
		f.session.Fail(err)
		return
	}
	var sentences []string
	options := make([]model.Option, len(limits))
	for i, l := range limits {
		options[i] = model.Option{Code: l.id, Detail: l.sentence}
		sentences = append(sentences, l.sentence)
	}
	fields := []model.AskField{
		{ID: "who", Label: session.Say("Manager"), Options: f.session.Managers(), Value: f.session.ManagerHere(), Chars: 24, Required: true},
		{ID: "reason", Label: session.Say("Reason"), Chars: 40, Required: true},
	}
	if len(limits) > 1 {
		fields = append([]model.AskField{{ID: "limit", Label: session.Say("Limit"), Options: options, Chars: 24, Required: true}}, fields...)
	}
	f.session.Put(model.Ask{
		Draft: "accept", Of: f.id,
		Title: session.Say("Accept beyond a limit?"), Text: strings.Join(sentences, "\n"), State: model.Warn,
		Fields: fields, Yes: session.Say("Accept"),
		Then: func(values map[string]string) {
			limit := limits[0].id
			if values["limit"] != "" {
				limit = values["limit"]
			}
			f.accept(values["who"], limit, values["reason"])
		},
	})
}

// accept writes the leave down under the manager's own name.
func (f *LoadForm) accept(who, limit, reason string) {
	err := f.session.As(who, func() error {
		return scalehouse.Accept(context.Background(), f.session.Desk, f.id, limit, reason)
	})
	if err == nil {
		err = f.Reload()
	}
	if err != nil {
		f.session.Fail(err)
		return
	}
	f.session.Say(model.OK, session.Say("%s has accepted %s: %s", who, limit, reason))
	f.session.Changed()
}
