package lab

import (
	"context"
	"slices"
	"strconv"

	"tenthpoint/internal/dryness"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/worksheet"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// outcome is the result of a sample's tests: its moisture with the flags, and the consequences for
// the load.
type outcome struct {
	language session.Language
	tests    replicates
	testing  scalehouse.Testing
	fault    error      // why they give no moisture
	would    *load.Load // the load as it would be with them
	advice   dryness.Advice
	judged   bool // there is advice
	worth    *office.Worth
	ruler    moisture.Ruler
}

// workOut works out the result of a load's tests: moisture, flags, verdict, value. A sample without
// a load has only its grain, and no value.
func workOut(f *session.Session, l *load.Load, tests replicates) outcome {
	o := outcome{language: f.Language, tests: tests, would: entry.CopyOf(l)}
	ctx := context.Background()
	if len(tests.Readings) > 0 {
		o.testing, o.fault = scalehouse.TestSample(ctx, f.Desk, l, tests.Tests)
		if o.fault == nil {
			o.would.Sample = o.testing.Sample(o.would.Sample)
			o.would.UseCharts(f.Desk.Charts())
		}
	}
	if o.fault == nil && o.would.Sample.Moisture != nil {
		o.judge(ctx, f, l.ID != "")
	}
	edition, _ := office.EditionFor(f.Desk, o.would) // the ruler is bare while there are no rates, or no moisture
	o.ruler, _ = office.Ruler(ctx, f.Desk, o.would, edition)
	return o
}

// judge determines whether the grain is dry enough, and the value of a tenth of a point of a load.
func (o *outcome) judge(ctx context.Context, f *session.Session, isLoad bool) {
	var err error
	if o.advice, o.judged, err = office.DryEnough(ctx, f.Desk, o.would); err != nil {
		f.Fail(err)
	}
	if !isLoad {
		return
	}
	if worth, err := office.WorthOf(ctx, f.Desk, o.would, office.Tenth); err == nil {
		o.worth = &worth // a load that is not whole has no worth yet
	}
}

// isTested reports whether the tests give a moisture, isComplete whether there are as many as the
// elevator requires.
func (o outcome) isTested() bool   { return len(o.tests.Readings) > 0 && o.fault == nil }
func (o outcome) isComplete() bool { return o.isTested() && o.testing.Result.More == 0 }

// isSettled reports whether no further test is called for: they are as many as the
// house asks for, and agree.
func (o outcome) isSettled() bool {
	return o.isComplete() && !slices.ContainsFunc(o.testing.Result.Flags, func(f moisture.Flag) bool {
		return f.Override == nil && (f.Code == moisture.WideSpread || f.Code == moisture.TooFewTests || f.Code == moisture.NearLimit)
	})
}

// status is the result for the status line.
func (o outcome) status() (model.State, string) {
	if o.fault != nil {
		return model.Stop, o.language.Sentence(o.fault)
	}
	r := o.testing.Result
	text := o.language.Say("Test %d is made; the moisture is %s.", len(o.tests.Readings), r.Moisture.Printed())
	if r.More > 0 {
		return model.Warn, text + " " + o.language.Say("%d more to make.", r.More)
	}
	return model.OK, text
}

// stopping are the flags that stop the ticket and that a manager may accept.
func (o outcome) stopping() []moisture.Flag {
	var out []moisture.Flag
	for _, f := range o.testing.Result.Flags {
		if f.Stops() && !f.Final {
			out = append(out, f)
		}
	}
	return out
}

// figures are the moisture, the spread of the tests, and how many of the required tests are made.
func (o outcome) figures(p moisture.Policy) []model.Figure {
	shown := model.Figure{Caption: o.language.Say("Moisture"), Value: session.NotYet, Unit: "%"}
	spread := model.Figure{Caption: o.language.Say("Spread"), Value: session.NotYet, Unit: "pt"}
	counting := o.tests.counting()
	made := model.Figure{Caption: o.language.Say("Tests"), Value: strconv.Itoa(counting)}
	if !o.isTested() {
		return []model.Figure{shown, spread, made}
	}
	r := o.testing.Result
	shown.Value = session.FigureOf(r.Moisture)
	if r.Stopped() {
		shown.State = model.Stop
	}
	if r.Spread.Kind() != worksheet.NotApplied {
		spread.Value = p.ShownSpread(r.Spread.Value()).Figure()
	}
	if r.More > 0 {
		made.Value, made.State = o.language.Say("%d of %d", counting, counting+r.More), model.Warn
	}
	return []model.Figure{shown, spread, made}
}

// rows are all tests made, those left out among them.
func (o outcome) rows(equipment moisture.Equipment) []model.Row {
	var out []model.Row
	for _, r := range o.tests.Readings {
		row := model.Row{Key: strconv.Itoa(r.Seq), State: model.OK}
		counts := o.language.Say("counts")
		if o.tests.isExcluded(r.Seq) {
			row.Struck, row.State, counts = true, model.Locked, o.language.Say("left out")
		}
		figure := session.NotYet
		if step, err := r.Work(&worksheet.Sheet{}, equipment); err == nil {
			figure = atAGlance.Apply(step.Value()).String()
		}
		row.Cells = []string{row.Key, figure, howRead(o.language, r), counts}
		out = append(out, row)
	}
	return out
}

// howRead is a test in a few figures.
func howRead(in session.Language, r moisture.Reading) string {
	var what string
	switch r.Method {
	case meter.ByDial:
		what = in.Say("dial %s, %s", r.Dial.In(quantity.Plain), r.Mass)
	case meter.Direct:
		what = in.Say("meter %s", r.Meter)
	case meter.ByOven:
		what = in.Say("oven")
	default:
		return in.Say("typed: %s", r.Reason)
	}
	if r.Sample.Unit() == quantity.Plain {
		return what
	}
	return session.Join(", ", what, r.Sample.String())
}

// marked is the moisture ruler: the limits, the reading, and how far it may be off.
func (o outcome) marked(in session.Language) model.Ruler {
	r := session.RulerOf(in, o.ruler)
	state := model.OK
	switch {
	case o.isTested() && o.testing.Result.Stopped():
		state = model.Stop
	case o.judged && !allDry(o.advice):
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
