package lab

import (
	"slices"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// nextTest is the test being typed: how its texts were parsed, and its warnings before it is made.
type nextTest struct {
	tools    *testTools
	texts    texts
	crop     string
	reading  moisture.Reading
	readings map[string]string // how each text was understood, by field
	messages session.FieldMessages
	flags    []moisture.Flag // warnings known before the test is made
}

// readNext reads the texts of test seq of a crop. The other results are the load's:
// some charts go by its test weight.
func readNext(tools *testTools, t texts, crop string, seq int, results []load.Finding) nextTest {
	n := nextTest{tools: tools, texts: t, crop: crop, readings: map[string]string{}, messages: session.FieldMessages{}}
	n.reading = moisture.Reading{
		Seq: seq, Method: t.method(), Crop: crop, Day: tools.session.Desk.Today(), Tester: tools.session.Desk.Who().Name,
	}
	if m, ok := n.meter(); ok && n.reading.Method.UsesMeter() {
		n.reading.Meter, n.reading.Calibration = m.ID, m.Calibration
	}
	n.readFigures()
	n.chooseChart()
	n.readTestWeight(results)
	n.sayMeter()
	n.doubt()
	n.convert()
	return n
}

func (n *nextTest) addMessage(field string, state model.State, text string) {
	n.messages.Say(field, state, text)
}

// meter is the meter chosen for the test.
func (n *nextTest) meter() (meter.Meter, bool) { return n.tools.meter(n.texts["meter"]) }

func (n *nextTest) charts() []*chart.Chart { return n.tools.charts(n.crop, n.texts["meter"]) }

// readFigures reads the figures typed for the test.
func (n *nextTest) readFigures() {
	degrees := n.tools.degrees()
	read, faults := entry.Test{Begun: n.reading, Degrees: degrees, Signs: n.tools.session.Signs()}.Read(n.texts.figures())
	n.reading = read
	for _, f := range faults {
		n.addMessage(f.Field, model.Stop, n.tools.session.Sentence(f.Err))
	}
	for id, a := range map[string]quantity.Amount{"temperature": read.Sample, "room": read.Room} {
		if isDegrees := a.Unit() != quantity.Plain; isDegrees && a.Unit() != degrees && n.messages[id].State != model.Stop {
			n.readings[id] = a.String()
		}
	}
}

// chooseChart takes the chart that was asked for, or else the one for the sample mass. For a mass
// without a chart it takes the first one, and flags the mass.
func (n *nextTest) chooseChart() {
	if n.texts.method() != meter.ByDial {
		return
	}
	charts := n.charts()
	if _, offered := session.Find(charts, func(c *chart.Chart) bool { return c.ID == n.texts["chart"] }); offered {
		n.reading.Chart = n.texts["chart"]
	} else if len(charts) > 0 {
		n.reading.Chart = forMass(charts, n.reading.Mass).ID
	}
	n.sayChart(charts)
}

// forMass is the chart for the mass, or the first.
func forMass(charts []*chart.Chart, mass quantity.Amount) *chart.Chart {
	if c, ok := session.Find(charts, func(c *chart.Chart) bool { return c.Mass.Equal(mass) }); ok {
		return c
	}
	return charts[0]
}

// sayChart shows which chart is used, its sample mass, and its highest moisture.
func (n *nextTest) sayChart(charts []*chart.Chart) {
	m, _ := n.meter()
	c, ok := session.Find(charts, func(c *chart.Chart) bool { return c.ID == n.reading.Chart })
	switch {
	case ok:
		n.readings["chart"] = n.tools.session.Say("%s, %s", c.ID, c.Moisture)
		n.readings["mass"] = n.tools.session.Say("the chart asks for %s", c.Mass)
		dials := c.Dials()
		n.readings["dial"] = n.tools.session.Say("from %s to %s", dials[0].In(quantity.Plain), dials[len(dials)-1].In(quantity.Plain))
	case n.crop != "" && m.ID != "":
		n.addMessage("chart", model.Stop, n.tools.session.Say("There is no chart for %s on %s with calibration %s. Load the maker's chart, or test by oven.", n.tools.session.GrainName(n.crop), m.Model, m.Calibration))
	}
}

// readTestWeight takes the test weight of the load, where the chart goes by it.
func (n *nextTest) readTestWeight(results []load.Finding) {
	chart, err := n.tools.equipment.Charts.ByID(n.reading.Chart)
	if err != nil {
		return
	}
	unit, needed := chart.NeedsTestWeight()
	if !needed {
		return
	}
	for _, found := range results {
		if found.Factor != grain.TestWeight || found.Amount == nil {
			continue
		}
		if a, err := quantity.TestWeight(*found.Amount, unit); err == nil {
			n.reading.TestWeight = a
		}
	}
}

// sayMeter shows the meter used, and the state of its checks.
func (n *nextTest) sayMeter() {
	method := n.texts.method()
	if !method.UsesMeter() {
		return
	}
	m, ok := n.meter()
	switch {
	case !ok:
		n.addMessage("meter", model.Missing, n.tools.session.Say("Choose the meter, or add one under Meters, Ctrl+Shift+M."))
	case m.Method != method:
		n.addMessage("meter", model.Stop, n.tools.session.Say("%s is another kind of meter: %s.", m.ID, methodWord(n.tools.session.Language, m.Method)))
	default:
		n.readings["meter"] = n.tools.describe(m)
	}
}

// beside maps a flag to the field it is shown at.
var beside = map[moisture.Code]string{
	moisture.WrongMass: "mass", moisture.Cold: "temperature", moisture.MeterToGrain: "temperature", moisture.FromDryer: "dryer",
	moisture.RoomOutside: "room", moisture.MeterFailed: "meter", moisture.MeterOverdue: "meter", moisture.NeverChecked: "meter",
	moisture.InventedChart: "chart",
}

// doubt shows the warnings about a test before it is made, so that the sample can still be warmed
// or weighed again: a word beside the field, and the whole among the remarks.
func (n *nextTest) doubt() {
	if _, ok := n.meter(); !ok || !n.reading.Method.UsesMeter() {
		return
	}
	for _, flag := range n.tools.setup.Trust.Flags(n.reading, quantity.Zero(quantity.Percent), n.tools.equipment) {
		if field, told := beside[flag.Code]; told {
			n.flags = append(n.flags, flag)
			n.addMessage(field, flagState(flag), doubtWord(n.tools.session.Language, flag.Code))
		}
	}
}

// convert shows at once which moisture the figures give, or why they give none.
func (n *nextTest) convert() {
	method := n.texts.method()
	last := lastField(method)
	if n.texts[last] == "" || n.crop == "" || n.isWrong() {
		return
	}
	if last == "reason" {
		last = "percent"
	}
	step, err := n.reading.Work(&worksheet.Sheet{}, n.tools.equipment)
	if err != nil {
		n.addMessage(last, model.Stop, n.tools.session.Sentence(err))
		return
	}
	if method == meter.ByDial || method == meter.ByOven {
		n.readings[last] = n.tools.session.Say("makes %s", atAGlance.Apply(step.Value()))
	}
}

// atAGlance shows a figure with as many decimals as a person can check at a
// glance; the exact one is in the working.
var atAGlance = quantity.To("0.01", quantity.HalfUp)

// isWrong reports whether a figure was typed that cannot be used.
func (n *nextTest) isWrong() bool {
	return slices.ContainsFunc(n.figureFields(), func(f model.Field) bool { return n.messages[f.ID].State == model.Stop })
}

// flagState returns the state in which a flag is shown.
func flagState(f moisture.Flag) model.State {
	switch {
	case f.Override != nil:
		return model.OK
	case f.Stops():
		return model.Stop
	}
	return model.Warn
}

// methodFields say how the sample is tested.
func (n *nextTest) methodFields() []model.Field {
	method := n.texts.method()
	out := []model.Field{{ID: "method", Label: n.tools.session.Say("Method"), Kind: model.FindField, Chars: 20, Options: methodOptions(n.tools.session.Language)}}
	if method.UsesMeter() {
		out = append(out, model.Field{ID: "meter", Label: n.tools.session.Say("Meter"), Kind: model.FindField, Chars: 20, Options: n.tools.metersFor(method)})
	}
	if method == meter.ByDial {
		out = append(out, model.Field{ID: "chart", Label: n.tools.session.Say("Chart"), Kind: model.FindField, Chars: 20, Options: chartOptions(n.tools.session.Language, n.charts())})
	}
	return out
}

func methodOptions(in session.Language) []model.Option {
	var out []model.Option
	for _, m := range meter.Methods() {
		out = append(out, model.Option{Code: string(m), Name: methodWord(in, m), ByName: true})
	}
	return out
}

func chartOptions(in session.Language, charts []*chart.Chart) []model.Option {
	out := []model.Option{}
	for _, c := range charts {
		o := model.Option{Code: c.ID, Name: in.Say("%s of grain, %s", c.Mass, c.Moisture)}
		if c.Example {
			o.Detail = in.Say("example - not for trade")
		}
		out = append(out, o)
	}
	return out
}

// figureFields are the figures of one test, the one that ends it last.
func (n *nextTest) figureFields() []model.Field {
	degrees := n.tools.degrees().String()
	figure := func(id, label, unit string) model.Field {
		return model.Field{ID: id, Label: label, Unit: unit, Kind: model.FigureField, Part: model.WeightPart, Chars: 7}
	}
	temperature := func(id, label string) model.Field {
		return model.Field{ID: id, Label: label, Unit: degrees, Kind: model.WordsField, Part: model.WeightPart, Chars: 7}
	}
	var out []model.Field
	method := n.texts.method()
	if method.UsesMeter() {
		out = append(out,
			figure("mass", n.tools.session.Say("Sample mass"), "g"),
			temperature("temperature", n.tools.session.Say("Grain is at")), temperature("room", n.tools.session.Say("Room is at")),
			model.Field{ID: "dryer", Label: n.tools.session.Say("Dryer-hot"), Kind: model.TickField, Part: model.WeightPart})
	}
	switch method {
	case meter.ByDial:
		return append(out, figure("dial", n.tools.session.Say("Dial"), n.tools.session.Say("div.")))
	case meter.Direct:
		return append(out, figure("percent", n.tools.session.Say("Meter reads"), "%"))
	case meter.ByOven:
		return append(out, figure("wet", n.tools.session.Say("Dish, wet"), "g"), figure("tare", n.tools.session.Say("Dish, empty"), "g"), figure("dry", n.tools.session.Say("Dish, dried"), "g"))
	}
	return append(out, figure("percent", n.tools.session.Say("Moisture"), "%"), model.Field{ID: "reason", Label: n.tools.session.Say("Reason"), Part: model.WeightPart, Chars: 24})
}
