package lab

import (
	"context"
	"errors"
	"strings"

	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse/instruments"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// AskMeter asks for a meter of the elevator: a new one, or else changes to the chosen one. A meter
// with a new calibration is a new instrument: its checks begin again.
func (m *Meters) AskMeter(isNew bool) {
	edited, there := m.current()
	title := m.session.Say("Change meter %s", edited.ID)
	if isNew || !there {
		edited, title = meter.Meter{Method: meter.Direct}, m.session.Say("A new meter")
	}
	m.session.Put(model.Ask{
		Draft: "meter", Of: "meter " + edited.ID,
		Title: title, Text: m.session.Say("A new calibration begins a new log: what was known of the old one does not carry over."),
		Fields: []model.AskField{
			{ID: "id", Label: m.session.Say("Name"), Value: edited.ID, Chars: 12, Hint: m.session.Say("short, as on its label"), Required: true},
			{ID: "model", Label: m.session.Say("Model"), Value: edited.Model, Chars: 28, Hint: m.session.Say("as on its plate"), Required: true},
			{ID: "serial", Label: m.session.Say("Serial"), Value: edited.Serial, Chars: 16},
			{ID: "method", Label: m.session.Say("Read by"), Options: meterMethods(m.session.Language), Value: string(edited.Method), Chars: 24, Required: true},
			{ID: "calibration", Label: m.session.Say("Calibration"), Value: edited.Calibration, Chars: 16, Required: true},
			{ID: "tolerance", Label: m.session.Say("Tolerance"), Unit: "pt", Figures: true, Value: figureText(edited.Tolerance), Chars: 7, Hint: m.session.Say("as its maker claims")},
			{ID: "coldest", Label: m.session.Say("Room from"), Unit: m.degrees().String(), Figures: true, Value: figureText(edited.Ambient.Low), Chars: 7},
			{ID: "warmest", Label: m.session.Say("Room to"), Unit: m.degrees().String(), Figures: true, Value: figureText(edited.Ambient.High), Chars: 7},
			{ID: "apart", Label: m.session.Say("Grain off by"), Unit: m.degrees().String(), Figures: true, Value: figureText(edited.MaxDifference), Chars: 7, Hint: m.session.Say("at most")},
		},
		Yes: m.session.Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			_, wrong := m.readMeter(edited, values)
			return wrong
		},
		Then: func(values map[string]string) {
			changed, _ := m.readMeter(edited, values)
			m.setMeter(changed)
		},
	})
}

func meterMethods(in session.Language) []model.Option {
	var out []model.Option
	for _, method := range meter.Methods() {
		if method.UsesMeter() {
			out = append(out, model.Option{Code: string(method), Name: methodWord(in, method), ByName: true})
		}
	}
	return out
}

// figureText is a figure as the text of a field; empty where there is none.
func figureText(a quantity.Amount) string {
	if a.Unit() == quantity.Plain {
		return ""
	}
	return session.Bare(a)
}

// The limits of a maker's specifications of a meter.
var (
	toleranceField  = quantity.Field{Unit: quantity.Point, Places: 2, Min: quantity.Of("0.01", quantity.Point), Max: quantity.Int(5, quantity.Point)}
	fahrenheitApart = quantity.Field{Unit: quantity.Fahrenheit, Places: 1, Min: quantity.Int(1, quantity.Fahrenheit), Max: quantity.Int(100, quantity.Fahrenheit)}
	celsiusApart    = quantity.Field{Unit: quantity.Celsius, Places: 1, Min: quantity.Int(1, quantity.Celsius), Max: quantity.Int(60, quantity.Celsius)}
)

// readMeter applies what is typed to the meter, and returns the errors by field. Ranges of single
// grains, which have no field, stay.
func (m *Meters) readMeter(was meter.Meter, values map[string]string) (meter.Meter, map[string]string) {
	wrong := map[string]string{}
	text := func(id string) string { return strings.TrimSpace(values[id]) }
	read := func(id, label string, field quantity.Field) (a quantity.Amount) {
		if text(id) == "" {
			return a
		}
		return readFigure(m.session.Language, field, id, label, values, wrong)
	}
	temperature, apart := moisture.FahrenheitField, fahrenheitApart
	if m.degrees() == quantity.Celsius {
		temperature, apart = moisture.CelsiusField, celsiusApart
	}
	edited := was
	edited.ID, edited.Model, edited.Serial = text("id"), text("model"), text("serial")
	edited.Method, edited.Calibration = meter.Method(text("method")), text("calibration")
	edited.Tolerance = read("tolerance", m.session.Say("Tolerance"), toleranceField)
	edited.Ambient = quantity.Span{Low: read("coldest", m.session.Say("Room from"), temperature), High: read("warmest", m.session.Say("Room to"), temperature)}
	edited.MaxDifference = read("apart", m.session.Say("Grain off by"), apart)
	if (text("coldest") == "") != (text("warmest") == "") {
		wrong["warmest"] = m.session.Say("Give both ends of the range, or neither.")
	}
	if len(wrong) == 0 {
		if err := errors.Join(edited.Check()...); err != nil {
			wrong["id"] = m.session.Sentence(err)
		}
	}
	return edited, wrong
}

func (m *Meters) setMeter(meter meter.Meter) {
	if err := instruments.SetMeter(context.Background(), m.session.Desk, meter); err != nil {
		m.session.Fail(err)
		return
	}
	m.chosen = meter.ID
	m.Refresh()
	m.session.Notify(model.OK, m.session.Say("meter %s is written down.", meter.ID))
	m.session.Changed()
}
