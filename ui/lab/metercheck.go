package lab

import (
	"context"
	"strings"

	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// AskCheck asks for a reference sample read on the chosen meter, and writes it
// down.
func (m *Meters) AskCheck() {
	meter, there := m.current()
	if !there {
		return
	}
	m.session.Put(model.Ask{
		Draft: "check", Of: "meter " + meter.ID,
		Title: session.Say("A reference on meter %s", meter.ID),
		Text:  session.Say("Grain whose moisture an oven has told, read on the meter as any sample. A bias is shown, and never taken off a reading."),
		Fields: []model.AskField{
			{ID: "crop", Label: session.Say("Commodity"), Options: m.session.Known().CommodityOptions, Value: m.lastCrop(), Chars: 24, Required: true},
			{ID: "name", Label: session.Say("Reference"), Chars: 12, Hint: session.Say("its own number")},
			{ID: "oven", Label: session.Say("Oven says"), Unit: "%", Figures: true, Chars: 7, Required: true},
			{ID: "meter", Label: session.Say("Meter reads"), Unit: "%", Figures: true, Chars: 7, Required: true},
			{ID: "warmth", Label: session.Say("Sample at"), Unit: m.degrees().String(), Figures: true, Chars: 7, Hint: session.Say("the rule may ask for it")},
		},
		Yes:   session.Say("Write the check down"),
		Check: func(values map[string]string) map[string]string { _, wrong := m.readCheck(meter, values); return wrong },
		Then: func(values map[string]string) {
			check, _ := m.readCheck(meter, values)
			m.writeCheck(meter, check)
		},
	})
}

// lastCrop is the grain checked last on the meter.
func (m *Meters) lastCrop() string {
	if n := len(m.log.Checks); n > 0 {
		return m.log.Checks[n-1].Crop
	}
	return ""
}

// degrees is the unit of the house's thermometers.
func (m *Meters) degrees() quantity.Unit {
	if usesCelsius(m.session.Desk.Profile()) {
		return quantity.Celsius
	}
	return quantity.Fahrenheit
}

// readCheck reads a check as typed, and says by field what is wrong.
func (m *Meters) readCheck(checked meter.Meter, values map[string]string) (meter.Check, map[string]string) {
	wrong := map[string]string{}
	c := meter.Check{Meter: checked.ID, Calibration: checked.Calibration, Crop: values["crop"], Name: strings.TrimSpace(values["name"])}
	read := func(id, label string, field quantity.Field) (a quantity.Amount) {
		if strings.TrimSpace(values[id]) == "" {
			return a
		}
		return readFigure(field, id, label, values, wrong)
	}
	c.Reference = read("oven", session.Say("Oven says"), moisture.MoistureField)
	c.Reading = read("meter", session.Say("Meter reads"), moisture.MoistureField)
	temperature := moisture.FahrenheitField
	if m.degrees() == quantity.Celsius {
		temperature = moisture.CelsiusField
	}
	c.Sample = read("warmth", session.Say("Sample at"), temperature)
	return c, wrong
}

func (m *Meters) writeCheck(meter meter.Meter, c meter.Check) {
	if err := scalehouse.CheckMeter(context.Background(), m.session.Desk, c); err != nil {
		m.session.Fail(err)
		return
	}
	m.Refresh()
	status := m.status[meter.ID]
	state := statusRemark(status.State).State
	m.session.Say(state, session.Say("the check is written down: %s off. %s", withSign(c.Error(), c.Error().String()), session.Say(status.Sentence)))
	m.session.Changed()
}
