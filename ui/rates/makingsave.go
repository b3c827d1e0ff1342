package rates

import (
	"context"

	"tenthpoint/internal/ratefiles"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// CanSave reports whether the edition has no mistake and goes with the others of the house.
func (m *Making) CanSave() bool {
	return m.begun && m.edition != nil && m.house == nil && m.session.RatesFolder != ""
}

// WhyNotSave is why it may not be saved.
func (m *Making) WhyNotSave() string {
	switch {
	case !m.begun:
		return m.Empty()
	case m.session.RatesFolder == "":
		return m.session.Say("This book has no folder of its own, so no edition can be kept beside it.")
	}
	return m.Headline().Text
}

// isExampleAsItIs reports whether every figure is still that of an invented edition.
func (m *Making) isExampleAsItIs() bool {
	return m.draft.Base().Status == rates.Example && m.draft.SameFigures()
}

// AskSave asks a manager to make the edition the house's own. The figures of an example are not taken
// over in silence: they are asked about by name.
func (m *Making) AskSave() {
	e := m.edition
	ask := model.Ask{
		Title: m.session.Say("Make %s the house's own?", e.ID), Yes: m.session.Say("Make it ours"),
		Text:   m.session.Say("It is in force from %s for %s, on tickets of that day and after. Tickets that are there keep their rates.", m.session.Date(e.From), m.session.GrainName(e.Commodity.ID)),
		Fields: []model.AskField{{ID: "who", Label: m.session.Say("Manager"), Options: m.session.Managers(), Value: m.session.ManagerHere(), Chars: 24, Required: true}},
		Then:   func(values map[string]string) { m.save(values["who"]) },
	}
	if m.isExampleAsItIs() {
		ask.State = model.Warn
		ask.Text = session.Join("\n", m.session.Say("Not one figure differs from %s, which is invented. As the house's own it no longer carries the mark EXAMPLE - NOT FOR TRADE.", m.draft.Base().ID), ask.Text)
		ask.Yes = m.session.Say("Take the invented figures")
	}
	m.session.Put(ask)
}

// save writes the fact, then the file, and has the rates read again.
func (m *Making) save(who string) {
	e := m.edition
	err := m.session.As(who, func() error {
		return scalehouse.MakeEdition(context.Background(), m.session.Desk, e, m.draft.Base().ID, m.draft.SameFigures())
	})
	if err == nil {
		err = ratefiles.WriteOwn(m.session.RatesFolder, e)
	}
	if err != nil {
		m.session.Fail(err)
		return
	}
	m.begun = false
	m.session.Changed()
	list := NewRates(m.session)
	list.ReadAgain()
	m.session.Notify(model.OK, m.session.Say("Edition %s is the house's own, in force from %s.", e.ID, m.session.Date(e.From)))
	m.session.Go("rates")
}

// makeMine takes the chosen edition to the screen where one's own is made.
func makeMine(r *Rates) {
	r.session.RatesBegun = r.chosen
	r.session.Go("making")
}
