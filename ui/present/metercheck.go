package present

import (
	"context"
	"strings"

	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
)

// AskCheck asks for a reference sample read on the meter in hand, and writes it
// down.
func (m *Meters) AskCheck() {
	meter, there := m.inHand()
	if !there {
		return
	}
	m.frame.Put(model.Ask{
		Draft: "check", Of: "meter " + meter.ID,
		Title: Say("A reference on meter %s", meter.ID),
		Text:  Say("Grain whose moisture an oven has told, read on the meter as any sample. A bias is shown, and never taken off a reading."),
		Fields: []model.AskField{
			{ID: "crop", Label: Say("Commodity"), Options: m.frame.known().commodityOptions, Value: m.lastCrop(), Chars: 24, Required: true},
			{ID: "name", Label: Say("Reference"), Chars: 12, Hint: Say("its own number")},
			{ID: "oven", Label: Say("Oven says"), Unit: "%", Figures: true, Chars: 7, Required: true},
			{ID: "meter", Label: Say("Meter reads"), Unit: "%", Figures: true, Chars: 7, Required: true},
			{ID: "warmth", Label: Say("Sample at"), Unit: m.degrees().String(), Figures: true, Chars: 7, Hint: Say("the rule may ask for it")},
		},
		Yes:   Say("Write the check down"),
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

// degrees is the scale of the house's thermometers.
func (m *Meters) degrees() quantity.Unit {
	if p := m.frame.Desk.Profile(); p.Rules == "canada" || p.WeightUnit() == quantity.Kg {
		return quantity.Celsius
	}
	return quantity.Fahrenheit
}

// readCheck reads a check as typed, and says by field what is wrong.
func (m *Meters) readCheck(checked meter.Meter, values map[string]string) (meter.Check, map[string]string) {
	wrong := map[string]string{}
	c := meter.Check{Meter: checked.ID, Calibration: checked.Calibration, Crop: values["crop"], Name: strings.TrimSpace(values["name"])}
	read := func(id, label string, field quantity.Field) (a quantity.Amount) {
		field.Name = label
		if strings.TrimSpace(values[id]) == "" {
			return a
		}
		a, err := field.Parse(values[id])
		if err != nil {
			wrong[id] = sentence(err)
		}
		return a
	}
	c.Reference = read("oven", Say("Oven says"), moisture.MoistureField)
	c.Reading = read("meter", Say("Meter reads"), moisture.MoistureField)
	warmth := moisture.FahrenheitField
	if m.degrees() == quantity.Celsius {
		warmth = moisture.CelsiusField
	}
	c.Sample = read("warmth", Say("Sample at"), warmth)
	return c, wrong
}

func (m *Meters) writeCheck(meter meter.Meter, c meter.Check) {
	if err := m.frame.Desk.CheckMeter(context.Background(), c); err != nil {
		m.frame.Fail(err)
		return
	}
	m.Refresh()
	stand := m.stands[meter.ID]
	state := standingWord(stand.State).State
	m.frame.Say(state, Say("the check is written down: %s off. %s", withSign(c.Error(), c.Error().String()), translate(stand.Sentence)))
	m.frame.Changed()
}
