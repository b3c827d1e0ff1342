package lab

import (
	"slices"
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/working"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// work reads what is typed for the next test, and says beside each field how it
// was understood and what is doubtful about it.
func (s *SampleTest) work() {
	s.next = next{readings: map[string]string{}, remarks: map[string]model.Remark{}}
	r := moisture.Reading{
		Seq: s.seq(), Method: s.method(), Crop: s.crop(),
		Day: s.bench.session.Desk.Today(), Tester: s.bench.session.Desk.Who().Name,
	}
	if m, ok := s.meter(); ok && r.Method.UsesMeter() {
		r.Meter, r.Calibration = m.ID, m.Calibration
	}
	s.readFigures(&r)
	s.chooseChart(&r)
	s.readTestWeight(&r)
	s.next.reading = r
	s.sayGrain()
	s.sayMeter()
	s.doubt()
	s.convert()
}

// sayGrain asks for the commodity where it is not known.
func (s *SampleTest) sayGrain() {
	if s.load != nil {
		s.next.readings["load"] = whose(s.load)
	}
	if s.crop() != "" {
		return
	}
	if s.load != nil {
		s.remark("load", model.Stop, session.Say("Nobody has said what grain it is. Type the commodity on the load's form first."))
		return
	}
	s.remark("grain", model.Missing, session.Say("Which grain is it?"))
}

func (s *SampleTest) remark(field string, state model.State, text string) {
	if old, taken := s.next.remarks[field]; taken && (old.State == model.Stop || state != model.Stop) {
		return
	}
	s.next.remarks[field] = model.Remark{State: state, Text: text}
}

// figure is one typed figure of a test.
type figure struct {
	id    string
	field quantity.Field
	into  func(*moisture.Reading) *quantity.Amount
}

// figures are the figures of a method.
func (s *SampleTest) figures() []figure {
	dish := func(id string, into func(*moisture.Reading) *quantity.Amount) figure {
		return figure{id, moisture.DishField, into}
	}
	percent := figure{"percent", moisture.MoistureField, func(r *moisture.Reading) *quantity.Amount { return &r.Percent }}
	mass := figure{"mass", moisture.MassField, func(r *moisture.Reading) *quantity.Amount { return &r.Mass }}
	switch s.method() {
	case meter.ByDial:
		return []figure{mass, {"dial", moisture.DialField, func(r *moisture.Reading) *quantity.Amount { return &r.Dial }}}
	case meter.Direct:
		return []figure{mass, percent}
	case meter.ByOven:
		return []figure{
			dish("wet", func(r *moisture.Reading) *quantity.Amount { return &r.Dish.Wet }),
			dish("tare", func(r *moisture.Reading) *quantity.Amount { return &r.Dish.Tare }),
			dish("dry", func(r *moisture.Reading) *quantity.Amount { return &r.Dish.Dry }),
		}
	}
	return []figure{percent}
}

func (s *SampleTest) readFigures(r *moisture.Reading) {
	for _, f := range s.figures() {
		f.field.Name = session.Say(f.field.Name)
		*f.into(r) = s.parse(f.id, f.field)
	}
	if !r.Method.UsesMeter() {
		r.Reason = strings.TrimSpace(s.typed["reason"])
		return
	}
	r.Sample, r.Room = s.degrees("temperature"), s.degrees("room")
	r.FromDryer = s.typed["dryer"] == model.TickOn
}

// parse reads a figure; an empty one is not recorded.
func (s *SampleTest) parse(id string, field quantity.Field) quantity.Amount {
	text := strings.TrimSpace(s.typed[id])
	if text == "" {
		return quantity.Amount{}
	}
	a, err := field.Parse(text)
	if err != nil {
		s.remark(id, model.Stop, session.Sentence(err))
	}
	return a
}

// degrees reads a temperature: in the scale of the bench, or in the one whose
// letter stands after it.
func (s *SampleTest) degrees(id string) quantity.Amount {
	scale := s.bench.temperatureUnit()
	text := strings.ToUpper(strings.TrimSpace(s.typed[id]))
	for letter, unit := range map[string]quantity.Unit{"F": quantity.Fahrenheit, "C": quantity.Celsius} {
		if bare, lettered := strings.CutSuffix(text, letter); lettered {
			scale, text = unit, strings.TrimSuffix(strings.TrimSpace(bare), "°")
		}
	}
	if text == "" {
		return quantity.Amount{}
	}
	field := map[quantity.Unit]quantity.Field{quantity.Fahrenheit: moisture.FahrenheitField, quantity.Celsius: moisture.CelsiusField}[scale]
	field.Name = session.Say(field.Name)
	a, err := field.Parse(text)
	if err != nil {
		s.remark(id, model.Stop, session.Sentence(err))
		return a
	}
	if scale != s.bench.temperatureUnit() {
		s.next.readings[id] = a.String()
	}
	return a
}

// readTestWeight takes the test weight of the load, for charts that go by it.
func (s *SampleTest) readTestWeight(r *moisture.Reading) {
	chart, err := s.bench.equipment.Charts.ByID(r.Chart)
	if err != nil || s.form == nil {
		return
	}
	unit, needed := chart.NeedsTestWeight()
	if !needed {
		return
	}
	for _, found := range s.form.Now.Load.Sample.Findings {
		if found.Factor != grain.TestWeight || found.Amount == nil {
			continue
		}
		if a, err := quantity.TestWeight(*found.Amount, unit); err == nil {
			r.TestWeight = a
		}
	}
}

// sayMeter says how the meter stands with its checks.
func (s *SampleTest) sayMeter() {
	if !s.method().UsesMeter() {
		return
	}
	m, ok := s.meter()
	if !ok {
		s.remark("meter", model.Missing, session.Say("Choose the meter, or add one under Meters, Ctrl+Shift+M."))
		return
	}
	if m.Method != s.method() {
		s.remark("meter", model.Stop, session.Say("%s is another kind of meter: %s.", m.ID, methodWord(m.Method)))
		return
	}
	s.next.readings["meter"] = session.Join(", ", m.Model, standingWord(s.bench.equipment.Statuses[m.ID].State).Text)
}

// beside is the field at which a doubt about a test is told.
var beside = map[moisture.Code]string{
	moisture.WrongMass: "mass", moisture.Cold: "temperature", moisture.MeterToGrain: "temperature", moisture.FromDryer: "dryer",
	moisture.RoomOutside: "room", moisture.MeterFailed: "meter", moisture.MeterOverdue: "meter", moisture.NeverChecked: "meter",
	moisture.InventedChart: "chart",
}

// doubt tells what is doubtful about a test before it is made, so that the
// sample can still be warmed or weighed again: a word beside the field, all of
// it at the right.
func (s *SampleTest) doubt() {
	r := s.next.reading
	if _, ok := s.meter(); !ok || !r.Method.UsesMeter() {
		return
	}
	for _, flag := range s.bench.setup.Trust.Flags(r, quantity.Zero(quantity.Percent), s.bench.equipment) {
		if field, told := beside[flag.Code]; told {
			s.next.flags = append(s.next.flags, flag)
			s.remark(field, flagState(flag), doubtWord(flag.Code))
		}
	}
}

// convert shows at once what moisture the figures come to, or why to none.
func (s *SampleTest) convert() {
	last := lastField(s.method())
	if s.typed[last] == "" || s.crop() == "" || s.isWrong() {
		return
	}
	if last == "reason" {
		last = "percent"
	}
	step, err := s.next.reading.Work(&working.Sheet{}, s.bench.equipment)
	if err != nil {
		s.remark(last, model.Stop, session.Sentence(err))
		return
	}
	if s.method() == meter.ByDial || s.method() == meter.ByOven {
		s.next.readings[last] = session.Say("makes %s", atAGlance.Apply(step.Value()))
	}
}

// isWrong reports whether a figure was typed that cannot stand.
func (s *SampleTest) isWrong() bool {
	return slices.ContainsFunc(s.testFields(), func(f model.Field) bool { return s.next.remarks[f.ID].State == model.Stop })
}

// flagState is how a doubt about a reading is shown.
func flagState(f moisture.Flag) model.State {
	switch {
	case f.Override != nil:
		return model.OK
	case f.Stops():
		return model.Stop
	}
	return model.Warn
}
