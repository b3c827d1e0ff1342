package yard

import (
	"context"
	"strings"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
)

// limits are the problems of a load that a manager may accept: limits of the rates, and this
// elevator's flags on a reading.
type limits struct{ form *LoadForm }

// limit is one of them, with its message.
type limit struct{ id, sentence string }

func (s limits) all() []limit {
	var out []limit
	for _, p := range s.form.Now.problems {
		if p.Accept != "" {
			out = append(out, limit{p.Accept, s.form.session.Text(p.Sentence)})
		}
	}
	for _, doubt := range entry.Stops(s.form.Now.Load, s.form.session.Desk.Profile()) {
		if !doubt.Final {
			out = append(out, limit{doubt.Code, s.form.session.Text(doubt.Sentence)})
		}
	}
	return out
}

// canAccept reports whether there is a limit that a manager may accept.
func (s limits) canAccept() bool { return len(s.all()) > 0 }

// ask asks a manager for the permission to settle the load beyond a limit, with a reason that is
// recorded.
func (s limits) ask() {
	all, f := s.all(), s.form.session
	if len(all) == 0 {
		return
	}
	if err := s.form.Commit(); err != nil {
		f.Fail(err)
		return
	}
	var sentences []string
	options := make([]model.Option, len(all))
	for i, l := range all {
		options[i] = model.Option{Code: l.id, Detail: l.sentence}
		sentences = append(sentences, l.sentence)
	}
	fields := []model.AskField{
		{ID: "who", Label: s.form.session.Say("Manager"), Options: f.Managers(), Value: f.ManagerHere(), Chars: 24, Required: true},
		{ID: "reason", Label: s.form.session.Say("Reason"), Chars: 40, Required: true},
	}
	if len(all) > 1 {
		fields = append([]model.AskField{{ID: "limit", Label: s.form.session.Say("Limit"), Options: options, Chars: 24, Required: true}}, fields...)
	}
	f.Put(model.Ask{
		Draft: "accept", Of: s.form.id,
		Title: s.form.session.Say("Accept beyond a limit?"), Text: strings.Join(sentences, "\n"), State: model.Warn,
		Fields: fields, Yes: s.form.session.Say("Accept"),
		Then: func(values map[string]string) {
			chosen := all[0].id
			if values["limit"] != "" {
				chosen = values["limit"]
			}
			s.accept(values["who"], chosen, values["reason"])
		},
	})
}

// accept records the permission under the manager's own name.
func (s limits) accept(who, limit, reason string) {
	f := s.form.session
	err := f.As(who, func() error {
		return scalehouse.Accept(context.Background(), f.Desk, s.form.id, limit, reason)
	})
	if err == nil {
		err = s.form.Reload()
	}
	if err != nil {
		f.Fail(err)
		return
	}
	f.Notify(model.OK, s.form.session.Say("%s has accepted %s: %s", who, limit, reason))
	f.Changed()
}
