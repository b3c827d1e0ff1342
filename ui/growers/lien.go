package growers

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

const managerField = "who"

func manager(f *session.Session) model.AskField {
	return model.AskField{ID: managerField, Label: f.Say("Manager"), Options: f.Managers(), Value: f.ManagerHere(), Chars: 24, Required: true}
}

// addLien asks for a lender's notice on the chosen grower's grain, and records it in a manager's name.
func addLien(g *Growers) {
	f := g.session
	one, ok := g.grower()
	if !ok {
		return
	}
	filled := ask.Filled{Values: map[string]string{settling.Grower: one.ID}}
	f.Put(model.Ask{
		Draft: "lien", Of: "grower " + one.ID, Title: f.Say("A notice of lien"), Yes: f.Say("Record"),
		Text:   f.Say("While it is in force a settlement sheet names the lender on the payment, or says why not. What a notice binds you to is law: confirm locally."),
		Fields: append(ask.Fields(f, settling.LienFields(), filled), manager(f)),
		Check: func(values map[string]string) map[string]string {
			_, problems := settling.ReadLien(values, session.House(f))
			return ask.Sentences(f, problems)
		},
		Then: func(values map[string]string) {
			l, _ := settling.ReadLien(values, session.House(f))
			var made paysheet.Lien
			err := f.As(values[managerField], func() (err error) {
				made, err = acts.AddLien(context.Background(), f.Desk, l)
				return err
			})
			if err != nil {
				f.Fail(err)
				return
			}
			g.took(one.ID, f.Say("notice of lien %d of %s is written down until %s.", made.Number, made.Holder, made.Until))
		},
	})
}

// liens are the notices on the chosen grower's grain that have not ended.
func liens(g *Growers) []paysheet.Lien {
	var out []paysheet.Lien
	all, _ := money.Liens(context.Background(), g.session.Desk) // a book that cannot be read says so everywhere
	for _, l := range all {
		if l.Grower == g.chosen && l.Ended == nil {
			out = append(out, l)
		}
	}
	return out
}

// endLien asks which notice was released, and ends it in a manager's name.
func endLien(g *Growers) {
	f := g.session
	known := map[string]paysheet.Lien{}
	var options []model.Option
	for _, l := range liens(g) {
		known[l.ID()] = l
		options = append(options, model.Option{Code: l.ID(), Name: l.Holder, Detail: f.Say("until %s", l.Until)})
	}
	if len(options) == 0 {
		f.Notify(model.Warn, f.Say("No notice of lien is written down."))
		return
	}
	f.Put(model.Ask{
		Title: f.Say("End a notice of lien"), Yes: f.Say("End"),
		Text: f.Say("The notice stays in the book as ended."),
		Fields: []model.AskField{
			{ID: "lien", Label: f.Say("Notice"), Options: options, Value: options[len(options)-1].Code, Chars: 24, Required: true},
			{ID: "why", Label: f.Say("Reason"), Chars: 36, Required: true},
			manager(f),
		},
		Then: func(values map[string]string) {
			l := known[values["lien"]]
			if err := f.As(values[managerField], func() error {
				return acts.EndLien(context.Background(), f.Desk, l.Number, values["why"])
			}); err != nil {
				f.Fail(err)
				return
			}
			g.took(l.Grower, f.Say("notice of lien %d has ended.", l.Number))
		},
	})
}

// cardLiens are the notices on a grower's grain.
func cardLiens(g *Growers, c *session.Card) {
	all := liens(g)
	if len(all) == 0 {
		return
	}
	c.Part(c.Session.Say("NOTICES OF LIEN"))
	for _, l := range all {
		of := c.Session.Say("every grain")
		if l.Commodity != "" {
			of = c.Session.GrainName(l.Commodity)
		}
		c.Noted(model.CardMark, l.Holder, of, c.Session.Say("until %s", c.Session.Date(l.Until)))
	}
}
