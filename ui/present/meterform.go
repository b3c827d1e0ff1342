package present

import (
	"context"
	"errors"
	"strings"

	"tenthpoint/internal/bench"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
)

// AskMeter asks for a meter of the house: a new one, or with an id the one in
// hand to be changed. A new calibration is a new instrument: its checks begin
// anew.
func (m *Meters) AskMeter(isNew bool) {
	meter, there := m.inHand()
	title := Say("Change meter %s", meter.ID)
	if isNew || !there {
		meter, title = bench.Meter{Method: bench.Direct}, Say("A new meter")
	}
	m.frame.Put(model.Ask{
		Draft: "meter", Of: "meter " + meter.ID,
		Title: title, Text: Say("A new calibration begins a new log: what was known of the old one does not carry over."),
		Fields: []model.AskField{
			{ID: "id", Label: Say("Name"), Value: meter.ID, Chars: 12, Hint: Say("short, as on its label"), Required: true},
			{ID: "model", Label: Say("Model"), Value: meter.Model, Chars: 28, Hint: Say("as on its plate"), Required: true},
			{ID: "serial", Label: Say("Serial"), Value: meter.Serial, Chars: 16},
			{ID: "method", Label: Say("Read by"), Options: meterMethods(), Value: string(meter.Method), Chars: 24, Required: true},
			{ID: "calibration", Label: Say("Calibration"), Value: meter.Calibration, Chars: 16, Required: true},
			{ID: "tolerance", Label: Say("Tolerance"), Unit: "pt", Figures: true, Value: figureText(meter.Tolerance), Chars: 7, Hint: Say("as its maker claims")},
			{ID: "coldest", Label: Say("Room from"), Unit: m.degrees().String(), Figures: true, Value: figureText(meter.Ambient.Low), Chars: 7},
			{ID: "warmest", Label: Say("Room to"), Unit: m.degrees().String(), Figures: true, Value: figureText(meter.Ambient.High), Chars: 7},
			{ID: "apart", Label: Say("Grain off by"), Unit: m.degrees().String(), Figures: true, Value: figureText(meter.MaxDifference), Chars: 7, Hint: Say("at most")},
		},
		Yes: Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			_, wrong := m.readMeter(meter, values)
			return wrong
		},
		Then: func(values map[string]string) {
			changed, _ := m.readMeter(meter, values)
			m.setMeter(changed)
		},
	})
}

func meterMethods() []model.Option {
	var out []model.Option
	for _, method := range bench.Methods() {
		if method.UsesMeter() {
			out = append(out, model.Option{Code: string(method), Name: methodWord(method), ByName: true})
		}
	}
	return out
}

// figureText is a figure as a field holds it; empty where nobody wrote one down.
func figureText(a quantity.Amount) string {
	if a.Unit() == quantity.Plain {
		return ""
	}
	return bare(a)
}

// tolerance and difference are what a maker may claim.
var (
	toleranceField  = quantity.Field{Unit: quantity.Point, Places: 2, Min: quantity.Of("0.01", quantity.Point), Max: quantity.Int(5, quantity.Point)}
	fahrenheitApart = quantity.Field{Unit: quantity.Fahrenheit, Places: 1, Min: quantity.Int(1, quantity.Fahrenheit), Max: quantity.Int(100, quantity.Fahrenheit)}
	celsiusApart    = quantity.Field{Unit: quantity.Celsius, Places: 1, Min: quantity.Int(1, quantity.Celsius), Max: quantity.Int(60, quantity.Celsius)}
)

// readMeter reads a meter as typed over what it was, and says by field what is
// wrong. What is posted for single grains stays.
func (m *Meters) readMeter(was bench.Meter, values map[string]string) (bench.Meter, map[string]string) {
	wrong := map[string]string{}
	text := func(id string) string { return strings.TrimSpace(values[id]) }
	read := func(id, label string, field quantity.Field) (a quantity.Amount) {
		field.Name = label
		if text(id) == "" {
			return a
		}
		a, err := field.Parse(text(id))
		if err != nil {
			wrong[id] = sentence(err)
		}
		return a
	}
	warmth, apart := bench.FahrenheitField, fahrenheitApart
	if m.degrees() == quantity.Celsius {
		warmth, apart = bench.CelsiusField, celsiusApart
	}
	meter := was
	meter.ID, meter.Model, meter.Serial = text("id"), text("model"), text("serial")
	meter.Method, meter.Calibration = bench.Method(text("method")), text("calibration")
	meter.Tolerance = read("tolerance", Say("Tolerance"), toleranceField)
	meter.Ambient = bench.Span{Low: read("coldest", Say("Room from"), warmth), High: read("warmest", Say("Room to"), warmth)}
	meter.MaxDifference = read("apart", Say("Grain off by"), apart)
	if (text("coldest") == "") != (text("warmest") == "") {
		wrong["warmest"] = Say("Give both ends of the range, or neither.")
	}
	if len(wrong) == 0 {
		if err := errors.Join(meter.Check()...); err != nil {
			wrong["id"] = sentence(err)
		}
	}
	return meter, wrong
}

func (m *Meters) setMeter(meter bench.Meter) {
	if err := m.frame.Desk.SetMeter(context.Background(), meter); err != nil {
		m.frame.Fail(err)
		return
	}
	m.chosen = meter.ID
	m.Refresh()
	m.frame.Say(model.OK, Say("meter %s is written down.", meter.ID))
	m.frame.Changed()
}
