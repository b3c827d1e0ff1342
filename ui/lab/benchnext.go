package lab

import (
	"maps"
	"slices"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/worksheet"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// work reads what is typed for the next test, and says beside each field how it
// was understood and what is doubtful about it.
func (s *SampleTest) work() {
	s.next = next{readings: map[string]string{}, remarks: session.Remarks{}}
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
	s.next.remarks.Say(field, state, text)
}

// readFigures reads what is typed for the next test.
func (s *SampleTest) readFigures(r *moisture.Reading) {
	read, faults := entry.Test{Begun: *r, Degrees: s.bench.temperatureUnit(), Signs: entry.Signs(s.bench.session.Desk.Profile())}.Read(s.figures())
	*r = read
	for _, f := range faults {
		s.remark(f.Field, model.Stop, session.Sentence(f.Err))
	}
	for id, a := range map[string]quantity.Amount{"temperature": r.Sample, "room": r.Room} {
		if isDegrees := a.Unit() != quantity.Plain; isDegrees && a.Unit() != s.bench.temperatureUnit() && s.next.remarks[id].State != model.Stop {
			s.next.readings[id] = a.String()
		}
	}
}

// figures are the texts of the next test. Its test weight is the load's own.
func (s *SampleTest) figures() map[string]string {
	out := maps.Clone(s.typed)
	delete(out, "test-weight")
	out["dryer"] = ""
	if s.typed["dryer"] == model.TickOn {
		out["dryer"] = entry.TickedText
	}
	return out
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
	step, err := s.next.reading.Work(&worksheet.Sheet{}, s.bench.equipment)
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
