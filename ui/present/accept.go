package present

import (
	"context"
	"strings"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/house"
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
	for _, doubt := range entry.Stops(f.now.load, f.frame.Desk.Profile()) {
		if !doubt.Final {
			out = append(out, acceptable{doubt.Code, translate(doubt.Sentence)})
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

// managers are the people who may accept, void and correct.
func (f *Frame) managers() []model.Option {
	out := []model.Option{}
	for _, p := range f.Desk.People() {
		if p.Role == house.Manager {
			out = append(out, model.Option{Code: p.Name})
		}
	}
	return out
}

// managerHere is who is signed in, if that is a manager.
func (f *Frame) managerHere() string {
	if who := f.Desk.Who(); who.Role == house.Manager {
		return who.Name
	}
	return ""
}

// as does an act under another person's name and gives the desk back to who
// was there.
func (f *Frame) as(who string, act func() error) error {
	before := f.Desk.Who().Name
	if who == before {
		return act()
	}
	if err := f.Desk.SignIn(who); err != nil {
		return err
	}
	err := act()
	if before == "" {
		return err
	}
	if back := f.Desk.SignIn(before); err == nil {
		err = back
	}
	return err
}
