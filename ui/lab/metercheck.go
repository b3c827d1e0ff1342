package lab

import (
	"context"
	"slices"
	"strconv"
	"strings"

	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse/instruments"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/ask"
)

// roundRows is the most references of a round on one sheet.
const roundRows = 6

// AskCheck asks for a round of reference samples read on the chosen meter, and records it: judged once,
// as one reference shows little. A meter with a dial is read by its dial.
func (m *Meters) AskCheck() {
	checked, there := m.current()
	if !there {
		return
	}
	r := round{m, checked}
	m.session.Put(model.Ask{
		Draft: "check", Of: "meter " + checked.ID,
		Title:  m.session.Say("A round of references on meter %s", checked.ID),
		Text:   m.session.Say("Grain whose moisture an oven has told, read on the meter as any sample: a line for each, as far as they go. A bias is shown, and never taken off a reading."),
		Fields: r.fields(),
		Yes:    m.session.Say("Save the round"),
		Check: func(values map[string]string) map[string]string {
			_, wrong := r.read(values)
			return wrong
		},
		Then: func(values map[string]string) {
			checks, _ := r.read(values)
			r.save(checks)
		},
	})
}

// round is a sheet of references being read on a meter.
type round struct {
	*Meters
	checked meter.Meter
}

// fields are the grain, on a dial meter the mass, and a line for each reference.
func (m round) fields() []model.AskField {
	say, byDial := m.session.Say, m.checked.Method == meter.ByDial
	fields := []model.AskField{{ID: "crop", Label: say("Commodity"), Options: m.session.Known().CommodityOptions, Value: m.lastCrop(), Chars: 24, Required: true}}
	read := model.AskField{Label: say("Meter reads"), Unit: "%"}
	if byDial {
		read = model.AskField{Label: say("Dial")}
		fields = append(fields, model.AskField{ID: "mass", Label: say("Mass"), Unit: "g", Value: m.lastMass(), Figures: true, Chars: 7, Required: true, Hint: say("as the chart asks for")})
	}
	for row := 1; row <= roundRows; row++ {
		cell := func(name string, f model.AskField) {
			f.ID, f.Row, f.Chars, f.Figures = cellID(name, row), row, 8, name != "name"
			fields = append(fields, f)
		}
		cell("oven", model.AskField{Label: say("Oven says"), Unit: "%", Last: row > 1})
		cell("meter", read)
		cell("temperature", model.AskField{Label: say("Sample at"), Unit: m.degrees().String()})
		if unit, needs := m.testWeightUnit(); byDial && needs {
			cell("weight", model.AskField{Label: say("Test weight"), Unit: unit.String()})
		}
		cell("name", model.AskField{Label: say("Reference")})
	}
	return fields
}

func cellID(name string, row int) string { return name + "." + strconv.Itoa(row) }

// lastMass is the mass weighed in last on the meter, or what its first chart asks for.
func (m round) lastMass() string {
	for i := len(m.log.Checks) - 1; i >= 0; i-- {
		if c := m.log.Checks[i]; quantity.Recorded(c.Mass) {
			return session.Bare(c.Mass)
		}
	}
	charts := m.charts()
	if len(charts) == 0 {
		return ""
	}
	at := slices.IndexFunc(charts, func(c *chart.Chart) bool { return c.Crop == m.lastCrop() })
	return session.Bare(charts[max(at, 0)].Mass)
}

// charts are the charts for the chosen meter.
func (m round) charts() []*chart.Chart {
	return slices.DeleteFunc(m.session.Desk.Charts().All(), func(c *chart.Chart) bool {
		return c.Meter != m.checked.Model || c.Calibration != m.checked.Calibration
	})
}

// testWeightUnit is the unit of the test weight where a chart of the meter goes by it as well.
func (m round) testWeightUnit() (quantity.Unit, bool) {
	for _, c := range m.charts() {
		if unit, needs := c.NeedsTestWeight(); needs {
			return unit, true
		}
	}
	return quantity.Plain, false
}

// lastCrop is the grain checked last on the meter.
func (m round) lastCrop() string {
	if n := len(m.log.Checks); n > 0 {
		return m.log.Checks[n-1].Crop
	}
	return ""
}

// degrees is the unit of the elevator's thermometers.
func (m *Meters) degrees() quantity.Unit {
	if usesCelsius(m.session.Desk.Profile()) {
		return quantity.Celsius
	}
	return quantity.Fahrenheit
}

// read parses the lines of a round that hold anything, and returns the errors by field.
func (m round) read(values map[string]string) ([]meter.Check, map[string]string) {
	wrong := map[string]string{}
	var checks []meter.Check
	for row := 1; row <= roundRows; row++ {
		if m.isEmptyLine(values, row) {
			continue
		}
		checks = append(checks, m.readLine(values, row, wrong))
	}
	if len(checks) == 0 {
		wrong[cellID("oven", 1)] = m.session.Say("Write at least one reference down.")
	}
	return checks, wrong
}

func (m round) isEmptyLine(values map[string]string, row int) bool {
	return strings.TrimSpace(values[cellID("oven", row)]+values[cellID("meter", row)]) == ""
}

// readLine parses one reference.
func (m round) readLine(values map[string]string, row int, wrong map[string]string) meter.Check {
	c := meter.Check{Meter: m.checked.ID, Calibration: m.checked.Calibration, Crop: values["crop"], Name: strings.TrimSpace(values[cellID("name", row)])}
	read := func(id, label string, field quantity.Field) (a quantity.Amount) {
		if strings.TrimSpace(values[id]) == "" {
			return a
		}
		return readFigure(m.session.Language, field, id, label, values, wrong)
	}
	needed := func(id, label string, field quantity.Field) quantity.Amount {
		if strings.TrimSpace(values[id]) == "" {
			wrong[id] = m.session.Say("Needed with the other figure of its line.")
		}
		return read(id, label, field)
	}
	c.Reference = needed(cellID("oven", row), m.session.Say("Oven says"), moisture.MoistureField)
	c.Sample = read(cellID("temperature", row), m.session.Say("Sample at"), m.temperatureField())
	if m.checked.Method != meter.ByDial {
		c.Reading = needed(cellID("meter", row), m.session.Say("Meter reads"), moisture.MoistureField)
		return c
	}
	c.Mass = read("mass", m.session.Say("Mass"), moisture.MassField)
	c.Dial = needed(cellID("meter", row), m.session.Say("Dial"), moisture.DialField)
	if unit, needs := m.testWeightUnit(); needs {
		c.TestWeight = read(cellID("weight", row), m.session.Say("Test weight"), quantity.Field{Unit: unit, Places: 1, Min: quantity.Int(10, unit), Max: quantity.Int(120, unit)})
	}
	return c
}

func (m round) temperatureField() quantity.Field {
	if m.degrees() == quantity.Celsius {
		return moisture.CelsiusField
	}
	return moisture.FahrenheitField
}

func (m round) save(checks []meter.Check) {
	if err := instruments.CheckMeter(context.Background(), m.session.Desk, checks...); err != nil {
		m.session.Fail(err)
		return
	}
	m.Refresh()
	status := m.status[m.checked.ID]
	last := m.log.Checks[len(m.log.Checks)-1]
	said := m.session.Say("the check is saved: %s off. %s", withSign(last.Error(), last.Error().String()), m.session.Text(status.Sentence))
	if len(checks) > 1 {
		said = m.session.Say("%d references are saved. %s", len(checks), m.session.Text(status.Sentence))
	}
	state := instrumentStatus(m.session.Language, status.State).State
	if state == model.Stop { // it is saved; what it shows is the warning
		state = model.Warn
	}
	m.session.Notify(state, said)
	m.session.Changed()
}

// CanWithdraw reports whether a check of the chosen meter stands.
func (m *Meters) CanWithdraw() bool { return len(m.log.Checks) > 0 }

// AskWithdraw asks a manager why a check is taken back, which of them, and takes it back.
func (m *Meters) AskWithdraw() {
	checked, there := m.current()
	if !there || !m.CanWithdraw() {
		return
	}
	last := m.log.Checks[len(m.log.Checks)-1]
	m.session.Put(model.Ask{
		Title: m.session.Say("Withdraw a check of meter %s?", checked.ID),
		Text:  m.session.Say("For a figure that was typed wrong. The check stays in the book, with your reason, and counts nowhere."),
		State: model.Warn,
		Fields: append([]model.AskField{
			{ID: "check", Label: m.session.Say("Check"), Options: withdrawal{m}.checkOptions(), Value: strconv.Itoa(last.Seq), Chars: 30, Required: true},
		}, ask.ManagerFields(m.session)...),
		Yes: m.session.Say("Withdraw the check"), Danger: true,
		Then: func(values map[string]string) { withdrawal{m}.withdraw(checked.ID, values) },
	})
}

// withdrawal takes a check of a meter back.
type withdrawal struct{ *Meters }

// checkOptions are the checks that stand, the newest first.
func (m withdrawal) checkOptions() []model.Option {
	var out []model.Option
	for i := len(m.log.Checks) - 1; i >= 0; i-- {
		c := m.log.Checks[i]
		out = append(out, model.Option{
			Code: strconv.Itoa(c.Seq), Name: session.Join(" ", m.session.Date(c.Day), m.session.GrainName(c.Crop), c.Name),
			Detail: withSign(c.Error(), c.Error().String()),
		})
	}
	return out
}

func (m withdrawal) withdraw(meterID string, values map[string]string) {
	seq, err := strconv.Atoi(values["check"])
	if err == nil {
		err = m.session.As(values["who"], func() error {
			return instruments.WithdrawCheck(context.Background(), m.session.Desk, meterID, seq, values["reason"])
		})
	}
	if err != nil {
		m.session.Fail(err)
		return
	}
	m.Refresh()
	m.session.Notify(model.OK, m.session.Say("check %d is withdrawn: %s", seq, values["reason"]))
	m.session.Changed()
}
