package present

import (
	"context"
	"slices"
	"strings"

	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
)

// acceptable is a limit that a manager may let the load through.
type acceptable struct{ id, sentence string }

// acceptables are the limits that stop this load and that a manager may
// accept: of the rates, and of this elevator's doubts about a reading.
func (f *LoadForm) acceptables() []acceptable {
	var out []acceptable
	for _, p := range f.now.problems {
		if p.Accept != "" {
			out = append(out, acceptable{p.Accept, translate(p.Sentence)})
		}
	}
	for _, flag := range f.now.load.Sample.Flags {
		code, words, _ := strings.Cut(flag, ": ")
		if slices.Contains(f.frame.Desk.Profile().StopOn, code) && !f.isAccepted(code) {
			out = append(out, acceptable{code, words})
		}
	}
	for _, stop := range f.now.load.Sample.Stops {
		if !stop.Final && !f.isAccepted(stop.Code) {
			out = append(out, acceptable{stop.Code, translate(stop.Sentence)})
		}
	}
	return out
}

func (f *LoadForm) isAccepted(limit string) bool {
	return slices.ContainsFunc(f.now.load.Accepted, func(a load.AcceptedLimit) bool { return a.Limit == limit })
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
		f.frame.Fail(err)
		return
	}
	var sentences []string
	options := make([]model.Option, len(limits))
	for i, l := range limits {
		options[i] = model.Option{Code: l.id, Detail: l.sentence}
		sentences = append(sentences, l.sentence)
	}
	fields := []model.AskField{
		{ID: "who", Label: Say("Manager"), Options: f.frame.managers(), Value: f.frame.managerHere(), Chars: 24, Required: true},
		{ID: "reason", Label: Say("Reason"), Chars: 40, Required: true},
	}
	if len(limits) > 1 {
		fields = append([]model.AskField{{ID: "limit", Label: Say("Limit"), Options: options, Chars: 24, Required: true}}, fields...)
	}
	f.frame.Put(model.Ask{
		Draft: "accept", Of: f.id,
		Title: Say("Accept beyond a limit?"), Text: strings.Join(sentences, "\n"), State: model.Warn,
		Fields: fields, Yes: Say("Accept"),
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
	err := f.frame.as(who, func() error {
		return f.frame.Desk.Accept(context.Background(), f.id, limit, reason)
	})
	if err == nil {
		err = f.Reload()
	}
	if err != nil {
		f.frame.Fail(err)
		return
	}
	f.frame.Say(model.OK, Say("%s has accepted %s: %s", who, limit, reason))
	f.frame.Changed()
}
