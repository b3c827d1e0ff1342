package present

import (
	"tenthpoint/internal/entry"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
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
	out := []model.Field{{ID: "load", Label: Say("Load"), Kind: model.FindField, Chars: 24, Options: s.bench.loadOptions()}}
	if s.load == nil {
		out = append(out, model.Field{ID: "grain", Label: Say("Commodity"), Kind: model.FindField, Chars: 24, Options: s.bench.frame.known().commodityOptions})
	}
	out = append(out, model.Field{ID: "method", Label: Say("Method"), Kind: model.FindField, Chars: 20, Options: methodOptions()})
	if s.method().UsesMeter() {
		out = append(out, model.Field{ID: "meter", Label: Say("Meter"), Kind: model.FindField, Chars: 20, Options: s.meterOptions()})
	}
	if s.method() == meter.ByDial {
		out = append(out, model.Field{ID: "chart", Label: Say("Chart"), Kind: model.FindField, Chars: 20, Options: s.chartOptions()})
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
			figure("mass", Say("Sample mass"), "g"),
			warmth("temperature", Say("Grain is at")), warmth("room", Say("Room is at")),
			model.Field{ID: "dryer", Label: Say("Dryer-hot"), Kind: model.TickField, Part: model.WeightPart})
	}
	switch s.method() {
	case meter.ByDial:
		return append(out, figure("dial", Say("Dial"), Say("div.")))
	case meter.Direct:
		return append(out, figure("percent", Say("Meter reads"), "%"))
	case meter.ByOven:
		return append(out, figure("wet", Say("Dish, wet"), "g"), figure("tare", Say("Dish, empty"), "g"), figure("dry", Say("Dish, dried"), "g"))
	}
	return append(out, figure("percent", Say("Moisture"), "%"), model.Field{ID: "reason", Label: Say("Reason"), Part: model.WeightPart, Chars: 24})
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
		model.Field{ID: "number", Label: Say("Sample number"), Part: model.ClosePart, Chars: 12},
		model.Field{ID: "probes", Label: Say("Probed"), Part: model.ClosePart, Chars: 24},
		model.Field{ID: "place", Label: Say("Kept at"), Part: model.ClosePart, Chars: 24})
}

// isOther reports whether a field is one of the load's other results.
func (s *SampleTest) isOther(id string) bool {
	if s.form == nil || id == "moisture" {
		return false
	}
	l, known := s.form.line(id)
	return known && l.Field.Part == entry.SamplePart
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
func methodWord(m meter.Method) string { return Say(m.String()) }

// meterOptions are the meters of the method, with how each stands.
func (s *SampleTest) meterOptions() []model.Option {
	out := []model.Option{}
	for _, m := range s.bench.equipment.Meters {
		if m.Method == s.method() {
			out = append(out, model.Option{Code: m.ID, Detail: join(", ", m.Model, standingWord(s.bench.equipment.Statuses[m.ID].State).Text)})
		}
	}
	return out
}

// atAGlance shows a figure with as many decimals as a person can check at a
// glance; the exact one is in the working.
var atAGlance = quantity.To("0.01", quantity.HalfUp)
