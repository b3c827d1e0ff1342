package sheets

import (
	"context"

	"tenthpoint/internal/entry/settling"
	"tenthpoint/internal/office/money"
	"tenthpoint/internal/paysheet"
	acts "tenthpoint/internal/scalehouse/money"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/ask"
)

// handOn asks which levy is handed on to its fund, and records it in a manager's name.
func handOn(p *Payments) {
	f := p.session
	today := f.Desk.Today()
	owed, err := money.Owings(context.Background(), f.Desk, today)
	if err != nil {
		f.Fail(err)
		return
	}
	var levies []model.Option
	for _, o := range owed {
		if o.Left.Sign() > 0 {
			levies = append(levies, model.Option{Code: o.Levy, Name: o.Levy, Detail: f.Say("%s left", o.Left)})
		}
	}
	if len(levies) == 0 {
		f.Notify(model.Warn, f.Say("No levy is to be handed on."))
		return
	}
	filled := ask.Filled{Values: map[string]string{"levy": levies[0].Code}}
	fields := ask.Fields(f, settling.HandoverFields(), filled)
	fields[0].Options, fields[0].Required = levies, true
	f.Put(model.Ask{
		Draft: "handover", Of: "levies",
		Title:  f.Say("Hand a levy on"),
		Text:   f.Say("What is handed on is owed to the fund no more. It is recorded here; no bank is told."),
		Fields: append(fields, model.AskField{ID: managerField, Label: f.Say("Manager"), Options: f.Managers(), Value: f.ManagerHere(), Chars: 24, Required: true}),
		Yes:    f.Say("Record"),
		Check: func(values map[string]string) map[string]string {
			_, problems := settling.ReadHandover(values, today)
			return ask.Sentences(f, problems)
		},
		Then: func(values map[string]string) {
			h, _ := settling.ReadHandover(values, today)
			recordHandover(p, values[managerField], h)
		},
	})
}

func recordHandover(p *Payments, manager string, h paysheet.Handover) {
	var made paysheet.Handover
	err := p.session.As(manager, func() (err error) {
		made, err = acts.HandOn(context.Background(), p.session.Desk, h)
		return err
	})
	if err != nil {
		p.session.Fail(err)
		return
	}
	p.took(p.session.Say("handover %d of the levy %v: %s, of sheets up to %s.", made.Number, made.Levy, made.Amount, made.Through))
}

// takeBack asks which handover was stopped or mistyped, and ends it in a manager's name.
func takeBack(p *Payments) {
	f := p.session
	all, err := money.Handovers(context.Background(), f.Desk)
	if err != nil {
		f.Fail(err)
		return
	}
	known := map[string]paysheet.Handover{}
	var options []model.Option
	for _, h := range all {
		if h.InForce() {
			known[h.ID()] = h
			options = append(options, model.Option{Code: h.ID(), Name: f.Signs().Write(h.Amount.FixedString(cents)), Detail: session.Join(", ", f.Date(h.Day), h.Reference)})
		}
	}
	if len(options) == 0 {
		f.Notify(model.Warn, f.Say("No levy was handed on."))
		return
	}
	f.Put(model.Ask{
		Title: f.Say("Take a handover back"), Yes: f.Say("Take back"),
		Text: f.Say("The levy is owed to the fund again. The handover stays in the book as void."),
		Fields: []model.AskField{
			{ID: "handover", Label: f.Say("Handover"), Options: options, Value: options[len(options)-1].Code, Chars: 24, Required: true},
			{ID: "why", Label: f.Say("Reason"), Chars: 36, Required: true},
			{ID: managerField, Label: f.Say("Manager"), Options: f.Managers(), Value: f.ManagerHere(), Chars: 24, Required: true},
		},
		Then: func(values map[string]string) {
			h := known[values["handover"]]
			if err := f.As(values[managerField], func() error {
				return acts.VoidHandover(context.Background(), f.Desk, h.Levy, h.Number, values["why"])
			}); err != nil {
				f.Fail(err)
				return
			}
			p.took(f.Say("handover %d of the levy %v is void.", h.Number, h.Levy))
		},
	})
}
