package lab

import (
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Fields are the fields of the sample in hand: what a test is made of at the
// left, the load's other results and the sample itself at the right.
func (b *Bench) Fields() []model.Field { return b.hand.fields() }

func (s *SampleTest) fields() []model.Field {
	out := s.whatFields()
	out = append(out, s.testFields()...)
	out = append(out, s.otherFields()...)
	for i := range out {
		s.fill(&out[i])
	}
	return out
}

// whatFields say which grain is tested, and how.
func (s *SampleTest) whatFields() []model.Field {
	out := []model.Field{{ID: "load", Label: session.Say("Load"), Kind: model.FindField, Chars: 24, Options: s.bench.loadOptions()}}
	if s.load == nil {
		out = append(out, model.Field{ID: "grain", Label: session.Say("Commodity"), Kind: model.FindField, Chars: 24, Options: s.bench.session.Known().CommodityOptions})
	}
	out = append(out, model.Field{ID: "method", Label: session.Say("Method"), Kind: model.FindField, Chars: 20, Options: methodOptions()})
	if s.method().UsesMeter() {
		out = append(out, model.Field{ID: "meter", Label: session.Say("Meter"), Kind: model.FindField, Chars: 20, Options: s.meterOptions()})
	}
	if s.method() == meter.ByDial {
		out = append(out, model.Field{ID: "chart", Label: session.Say("Chart"), Kind: model.FindField, Chars: 20, Options: s.chartOptions()})
	}
	return out
}

// testFields are the figures of one test, the one that ends it last.
func (s *SampleTest) testFields() []model.Field {
	degrees := s.bench.temperatureUnit().String()
	figure := func(id, label, unit string) model.Field {
		return model.Field{ID: id, Label: label, Unit: unit, Kind: model.FigureField, Part: model.WeightPart, Chars: 7}
	}
	warmth := func(id, label string) model.Field {
		return model.Field{ID: id, Label: label, Unit: degrees, Kind: model.WordsField, Part: model.WeightPart, Chars: 7}
	}
	var out []model.Field
	if s.method().UsesMeter() {
		out = append(out,
			figure("mass", session.Say("Sample mass"), "g"),
			warmth("temperature", session.Say("Grain is at")), warmth("room", session.Say("Room is at")),
			model.Field{ID: "dryer", Label: session.Say("Dryer-hot"), Kind: model.TickField, Part: model.WeightPart})
	}
	switch s.method() {
	case meter.ByDial:
		return append(out, figure("dial", session.Say("Dial"), session.Say("div.")))
	case meter.Direct:
		return append(out, figure("percent", session.Say("Meter reads"), "%"))
	case meter.ByOven:
		return append(out, figure("wet", session.Say("Dish, wet"), "g"), figure("tare", session.Say("Dish, empty"), "g"), figure("dry", session.Say("Dish, dried"), "g"))
	}
	return append(out, figure("percent", session.Say("Moisture"), "%"), model.Field{ID: "reason", Label: session.Say("Reason"), Part: model.WeightPart, Chars: 24})
}

// lastField is the field whose Enter makes the test.
func lastField(m meter.Method) string {
	return map[meter.Method]string{meter.ByDial: "dial", meter.Direct: "percent", meter.ByOven: "dry", meter.Typed: "reason"}[m]
}

// otherFields are the load's other results, then what is kept of the sample.
func (s *SampleTest) otherFields() []model.Field {
	if s.load == nil {
		return nil
	}
	var out []model.Field
	for _, f := range s.form.Fields() {
		if f.Part == model.SamplePart && f.ID != "moisture" {
			out = append(out, f)
		}
	}
	return append(out,
		model.Field{ID: "number", Label: session.Say("Sample number"), Part: model.ClosePart, Chars: 12},
		model.Field{ID: "probes", Label: session.Say("Probed"), Part: model.ClosePart, Chars: 24},
		model.Field{ID: "place", Label: session.Say("Kept at"), Part: model.ClosePart, Chars: 24})
}

// isOther reports whether a field is one of the load's other results.
func (s *SampleTest) isOther(id string) bool {
	if s.form == nil || id == "moisture" {
		return false
	}
	l, known := s.form.Line(id)
	return known && l.Part == model.SamplePart
}

// fill puts value and sentence into a field.
func (s *SampleTest) fill(f *model.Field) {
	if s.isOther(f.ID) {
		return
	}
	f.Value = s.text(f.ID)
	if reading := s.next.readings[f.ID]; reading != "" {
		f.Reading = reading
	}
	if r := s.next.remarks[f.ID]; r.Text != "" {
		f.State, f.Note = r.State, r.Text
	}
}

// text is what stands in a field.
func (s *SampleTest) text(id string) string {
	if text, typed := s.typed[id]; typed {
		return text
	}
	return s.untyped(id)
}

// untyped is what stands in a field where nothing is typed.
func (s *SampleTest) untyped(id string) string {
	if s.load == nil {
		return map[string]string{"load": withoutLoad}[id]
	}
	switch id {
	case "load":
		return s.load.ID
	case "number":
		return s.load.Sample.Number
	case "probes":
		return s.load.Sample.Probes
	case "place":
		return s.load.Sample.Kept
	}
	return ""
}

func methodOptions() []model.Option {
	var out []model.Option
	for _, m := range meter.Methods() {
		out = append(out, model.Option{Code: string(m), Name: methodWord(m), ByName: true})
	}
	return out
}

// methodWord is what a method is called.
func methodWord(m meter.Method) string { return session.Say(m.String()) }

// meterOptions are the meters of the method, with how each stands.
func (s *SampleTest) meterOptions() []model.Option {
	out := []model.Option{}
	for _, m := range s.bench.equipment.Meters {
		if m.Method == s.method() {
			out = append(out, model.Option{Code: m.ID, Detail: session.Join(", ", m.Model, standingWord(s.bench.equipment.Statuses[m.ID].State).Text)})
		}
	}
	return out
}

// atAGlance shows a figure with as many decimals as a person can check at a
// glance; the exact one is in the working.
var atAGlance = quantity.To("0.01", quantity.HalfUp)

// charts are the charts in force for the crop on the meter, the one for the
// driest grain first.
func (s *SampleTest) charts() []*chart.Chart {
	m, ok := s.meter()
	if !ok || s.crop() == "" {
		return nil
	}
	return s.bench.equipment.Charts.For(s.crop(), m.Model, m.Calibration, s.bench.session.Desk.Today())
}

func (s *SampleTest) chartOptions() []model.Option {
	out := []model.Option{}
	for _, c := range s.charts() {
		o := model.Option{Code: c.ID, Name: session.Say("%s of grain, %s", c.Mass, c.Moisture)}
		if c.Example {
			o.Detail = session.Say("example - not for trade")
		}
		out = append(out, o)
	}
	return out
}

// chooseChart takes the chart that was asked for, or else the one that goes
// with the sample mass. A mass that no chart is for takes the first one, and the
// mass is then in doubt.
func (s *SampleTest) chooseChart(r *moisture.Reading) {
	if s.method() != meter.ByDial {
		return
	}
	charts := s.charts()
	if _, offered := session.Find(charts, func(c *chart.Chart) bool { return c.ID == s.typed["chart"] }); offered {
		r.Chart = s.typed["chart"]
	} else if len(charts) > 0 {
		r.Chart = forMass(charts, r.Mass).ID
	}
	s.sayChart(r, charts)
}

// forMass is the chart for the mass, or the first.
func forMass(charts []*chart.Chart, mass quantity.Amount) *chart.Chart {
	if c, ok := session.Find(charts, func(c *chart.Chart) bool { return c.Mass.Equal(mass) }); ok {
		return c
	}
	return charts[0]
}

// sayChart says which chart is read, what mass it asks for, and how wet it
// goes.
func (s *SampleTest) sayChart(r *moisture.Reading, charts []*chart.Chart) {
	m, _ := s.meter()
	c, ok := session.Find(charts, func(c *chart.Chart) bool { return c.ID == r.Chart })
	switch {
	case ok:
		s.next.readings["chart"] = session.Say("%s, %s", c.ID, c.Moisture)
		s.next.readings["mass"] = session.Say("the chart asks for %s", c.Mass)
		dials := c.Dials()
		s.next.readings["dial"] = session.Say("from %s to %s", dials[0].In(quantity.Plain), dials[len(dials)-1].In(quantity.Plain))
	case s.crop() != "" && m.ID != "":
		s.remark("chart", model.Stop, session.Say("There is no chart for %s on %s with calibration %s. Load the maker's chart, or test by oven.", session.GrainName(s.crop()), m.Model, m.Calibration))
	}
}
