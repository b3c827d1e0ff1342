package lab

import (
	"context"
	"strings"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse/instruments"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// starter asks for the check of a meter before the first test of a day.
type starter struct {
	session *session.Session
	setup   office.Bench
	degrees quantity.Unit
}

// isDue reports whether a meter has had no start check today.
func (s starter) isDue(meterID string) bool {
	if meterID == "" {
		return false
	}
	started, err := office.IsStarted(context.Background(), s.session.Desk, meterID)
	if err != nil {
		s.session.Fail(err)
		return false
	}
	return !started
}

// ask asks for the start check of a meter, and calls then once it is recorded.
func (s starter) ask(meterID string, then func()) {
	unit := s.degrees.String()
	figure := func(id, label, unit, value string) model.AskField {
		return model.AskField{ID: id, Label: label, Unit: unit, Value: value, Figures: true, Chars: 8}
	}
	s.session.Put(model.Ask{
		Draft: "start", Of: "meter " + meterID,
		Title: s.session.Say("Before the first test: meter %s", meterID),
		Text:  s.session.Say("Once a day, and when somebody else takes the bench over. Where it cannot be done, say why; that is written down too."),
		Fields: []model.AskField{
			{ID: "battery", Label: s.session.Say("Battery or supply is good"), Checkbox: true},
			{ID: "mark", Label: s.session.Say("Set to its mark; a dial is nulled"), Checkbox: true},
			figure("weight", s.session.Say("Check weight"), "g", "250"),
			figure("balance", s.session.Say("Balance shows"), "g", ""),
			figure("thermometer", s.session.Say("Thermometer"), unit, ""),
			figure("other", s.session.Say("Another shows"), unit, ""),
			{ID: "skip", Label: s.session.Say("Not done, because"), Chars: 28},
		},
		Yes:   s.session.Say("Write down"),
		Check: func(values map[string]string) map[string]string { _, wrong := s.read(meterID, values); return wrong },
		Then: func(values map[string]string) {
			check, _ := s.read(meterID, values)
			if s.write(check) && then != nil {
				then()
			}
		},
	})
}

// read parses the check, and returns the errors by field.
func (s starter) read(meterID string, values map[string]string) (meter.StartCheck, map[string]string) {
	wrong := map[string]string{}
	c := meter.StartCheck{Meter: meterID, Skipped: strings.TrimSpace(values["skip"])}
	if c.Skipped != "" {
		return c, wrong
	}
	c.Battery, c.Mark = values["battery"] == model.TickOn, values["mark"] == model.TickOn
	if !c.Battery {
		wrong["battery"] = s.session.Say("Look at it, and tick it when it is good.")
	}
	if !c.Mark {
		wrong["mark"] = s.session.Say("Set it, and tick it then.")
	}
	temperature := moisture.FahrenheitField
	if s.degrees == quantity.Celsius {
		temperature = moisture.CelsiusField
	}
	for _, one := range []struct {
		id, label string
		field     quantity.Field
		into      *quantity.Amount
	}{
		{"weight", s.session.Say("Check weight"), moisture.MassField, &c.Weight},
		{"balance", s.session.Say("Balance shows"), moisture.MassField, &c.Balance},
		{"thermometer", s.session.Say("Thermometer"), temperature, &c.Thermometer},
		{"other", s.session.Say("Another shows"), temperature, &c.Other},
	} {
		*one.into = readFigure(s.session.Language, one.field, one.id, one.label, values, wrong)
	}
	return c, wrong
}

// write records the check and shows its result; it reports whether it is recorded.
func (s starter) write(c meter.StartCheck) bool {
	if err := instruments.StartMeter(context.Background(), s.session.Desk, c); err != nil {
		s.session.Fail(err)
		return false
	}
	state, said := model.OK, s.session.Say("the start check of meter %s is written down.", c.Meter)
	for _, doubt := range c.Doubts(s.setup.Trust.MassWithin) {
		state, said = model.Warn, session.Join(" ", said, s.session.Text(doubt))
	}
	s.session.Notify(state, said)
	return true
}
