package lab

import (
	"strconv"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/worksheet"

	"tenthpoint/internal/dryness"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// BigFigures are the moisture, the spread of the tests, and how many of them
// are made of those that are asked for.
func (b *Bench) BigFigures() []model.Figure {
	s := b.hand
	shown := model.Figure{Caption: session.Say("Moisture"), Value: session.NotYet, Unit: "%"}
	spread := model.Figure{Caption: session.Say("Spread"), Value: session.NotYet, Unit: "pt"}
	made := model.Figure{Caption: session.Say("Tests"), Value: strconv.Itoa(s.kept())}
	if !s.isTested() {
		return []model.Figure{shown, spread, made}
	}
	r := s.found.testing.Result
	shown.Value = session.FigureOf(r.Moisture)
	if r.Stopped() {
		shown.State = model.Stop
	}
	if r.Spread.Kind() != worksheet.NotApplied {
		spread.Value = moisture.PolicyFor(b.setup.Policies, s.crop()).ShownSpread(r.Spread.Value()).Figure()
	}
	if r.More > 0 {
		made.Value, made.State = session.Say("%d of %d", s.kept(), s.kept()+r.More), model.Warn
	}
	return []model.Figure{shown, spread, made}
}

// kept is how many tests count.
func (s *SampleTest) kept() int { return len(s.tests.Readings) - len(s.tests.Exclusions) }

// Rows are all tests made, those left out among them.
func (b *Bench) Rows() []model.Row {
	s := b.hand
	var out []model.Row
	for _, r := range s.tests.Readings {
		row := model.Row{Key: strconv.Itoa(r.Seq), State: model.OK}
		stands := session.Say("counts")
		if s.isDropped(r.Seq) {
			row.Struck, row.State, stands = true, model.Locked, session.Say("left out")
		}
		row.Cells = []string{row.Key, s.figureOf(r), howRead(r), stands}
		out = append(out, row)
	}
	return out
}

func (s *SampleTest) isDropped(seq int) bool {
	_, dropped := session.Find(s.tests.Exclusions, func(d moisture.Exclusion) bool { return d.Test == seq })
	return dropped
}

// figureOf is what one test came to.
func (s *SampleTest) figureOf(r moisture.Reading) string {
	step, err := r.Work(&worksheet.Sheet{}, s.bench.equipment)
	if err != nil {
		return session.NotYet
	}
	return atAGlance.Apply(step.Value()).String()
}

// howRead is a test in a few figures.
func howRead(r moisture.Reading) string {
	var what string
	switch r.Method {
	case meter.ByDial:
		what = session.Say("dial %s, %s", r.Dial.In(quantity.Plain), r.Mass)
	case meter.Direct:
		what = session.Say("meter %s", r.Meter)
	case meter.ByOven:
		what = session.Say("oven")
	default:
		return session.Say("typed: %s", r.Reason)
	}
	if r.Sample.Unit() == quantity.Plain {
		return what
	}
	return session.Join(", ", what, r.Sample.String())
}

// Ruler is the moisture ruler of the sample in hand: the limits, the reading,
// and how far it may be off.
func (b *Bench) Ruler() model.Ruler {
	f := b.hand.found
	r := session.RulerOf(f.ruler)
	state := model.OK
	switch {
	case b.hand.isTested() && f.testing.Result.Stopped():
		state = model.Stop
	case f.judged && !allDry(f.advice):
		state = model.Warn
	}
	session.MarkReading(&r, state)
	return r
}

func allDry(a dryness.Advice) bool {
	for _, v := range a.Verdicts {
		if !v.Dry {
			return false
		}
	}
	return true
}

// Working is every step from the dial to the moisture.
func (b *Bench) Working() []scaleticket.PaperLine {
	s := b.hand
	lines := []scaleticket.PaperLine{{Kind: scaleticket.PaperTitle, Left: session.Say("Working of the moisture")}}
	if !s.isTested() {
		return append(lines, scaleticket.PaperLine{Kind: scaleticket.PaperText, Left: session.Say("No test has been made.")})
	}
	return append(append(lines, session.StepLines(s.found.testing.Sheet.Steps(), "")...), s.grade().Lines()...)
}

// grade is what the sample would grade by the tests made and the other results as
// they are typed.
func (s *SampleTest) grade() session.GradeAdvice {
	l := entry.CopyOf(s.found.would)
	if s.form != nil {
		l.Sample.Findings = s.form.Now.Load.Sample.Findings
	}
	return session.AdviseGrade(s.bench.session, l)
}

// worthLines say what a tenth of a point is worth on the load, and what the
// meter's tolerance is.
func worthLines(w *office.Worth) []string {
	out := []string{session.Say("A tenth of a point drier: %s. A tenth wetter: %s.", changeText(w.Here, w.Drier), changeText(w.Here, w.Wetter))}
	if t := w.Tolerance; t != nil {
		out = append(out, session.Say("The meter may be off by %s. At %s: %s. At %s: %s.", t.Step,
			w.Band.Low.FixedString(1), changeText(t.Here, t.Drier), w.Band.High.FixedString(1), changeText(t.Here, t.Wetter)))
	}
	return out
}
