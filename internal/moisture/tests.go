package moisture

import (
	"errors"
	"slices"

	"tenthpoint/internal/fault"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// Tests are all the readings of one sample, with people's decisions about them.
type Tests struct {
	Readings   []Reading   `json:"readings"`
	Exclusions []Exclusion `json:"drops,omitempty"`
	Overrides  []Override  `json:"overrides,omitempty"`
}

// Procedure is the elevator's way of testing: its policy for the crop, the limits the load may be
// near, what it trusts, and the rounding of moisture in its rates; the default is
// [MoistureRounding].
type Procedure struct {
	Policy   Policy
	Limits   []Limit
	Trust    Trust
	Rounding quantity.Rounding
}

// Outcome is one test with its exact moisture.
type Outcome struct {
	Reading Reading
	Step    *worksheet.Step
	// Exclusion is set when the test was excluded from the mean.
	Exclusion *Exclusion
}

// Result is the moisture of a sample.
type Result struct {
	// Moisture is the step "moisture": the mean of the tests kept, rounded once.
	Moisture *worksheet.Step
	// Spread is the highest less the lowest test kept, in points.
	Spread *worksheet.Step
	// Outcomes are all tests in order, dropped ones too.
	Outcomes []Outcome
	// Near are the limits the mean is close to.
	Near []Limit
	// More is the number of further tests the policy requires.
	More int
	// Flags are the reasons to doubt the figure, overrides set.
	Flags []Flag
}

// Stopped reports whether a flag still stops the ticket.
func (r Result) Stopped() bool { return Stopped(r.Flags) }

// Determine calculates the sample's moisture on the sheet, ending in the step "moisture". The error
// has every fault that prevents a figure; what only makes it doubtful is in the flags.
func (t Tests) Determine(s *worksheet.Sheet, e Equipment, h Procedure) (Result, error) {
	if err := t.check(); err != nil {
		return Result{}, err
	}
	outcomes, err := t.workEach(s, e)
	if err != nil {
		return Result{}, err
	}
	if err := errors.Join(h.Policy.checkExclusions(t.Exclusions, figures(outcomes))...); err != nil {
		return Result{}, err
	}
	r := Result{Outcomes: outcomes}
	s.Section(message.Words("Moisture"))
	r.mean(s, h.rounding())
	r.judge(e, h)
	overridden, faults := ApplyOverrides(r.Flags, t.Overrides)
	r.Flags = overridden
	return r, errors.Join(faults...)
}

func (h Procedure) rounding() quantity.Rounding {
	if h.Rounding.IsExact() {
		return MoistureRounding
	}
	return h.Rounding
}

// check looks at the readings as a set.
func (t Tests) check() error {
	var faults fault.List
	faults.Unless(len(t.Readings) > 0, "there is no test; test the sample first")
	seen := map[int]bool{}
	for _, r := range t.Readings {
		faults.Unless(!seen[r.Seq], "two tests are numbered %d; number them on", r.Seq)
		seen[r.Seq] = true
		first := t.Readings[0]
		faults.Unless(r.Crop == first.Crop, "test %d is of %s and test %d of %s; tests of one sample are of one crop", r.Seq, r.Crop, first.Seq, first.Crop)
	}
	kept := slices.DeleteFunc(slices.Clone(t.Readings), t.isExcluded)
	for _, r := range kept {
		faults.Unless(r.Method == kept[0].Method && r.Meter == kept[0].Meter,
			"test %d is by %s and test %d by %s; a mean is taken of one method on one meter. Leave the others out", r.Seq, r.instrument(), kept[0].Seq, kept[0].instrument())
	}
	return errors.Join(faults...)
}

func (r Reading) instrument() message.Text {
	if r.Meter == "" {
		return r.Method.Message()
	}
	return message.New("%s on meter %v", r.Method, r.Meter)
}

func (t Tests) isExcluded(r Reading) bool { return t.exclusionOf(r.Seq) != nil }

func (t Tests) exclusionOf(test int) *Exclusion {
	for _, d := range t.Exclusions {
		if d.Test == test {
			return &d
		}
	}
	return nil
}

// workEach works every test, dropped ones too: they stay on paper.
func (t Tests) workEach(s *worksheet.Sheet, e Equipment) ([]Outcome, error) {
	var out []Outcome
	var faults []error
	for _, r := range t.Readings {
		step, err := r.Work(s, e)
		if err != nil {
			faults = append(faults, err)
			continue
		}
		drop := t.exclusionOf(r.Seq)
		if drop != nil {
			s.Skip(r.id()+".left-out", message.New("%s left out", r.label()), quantity.Percent, quantity.Unrounded,
				message.List(", ", step.Value(), drop.words()), message.New("house rule: %v", string(drop.Rule)))
		}
		out = append(out, Outcome{Reading: r, Step: step, Exclusion: drop})
	}
	return out, errors.Join(faults...)
}

func figures(outcomes []Outcome) map[int]quantity.Amount {
	out := map[int]quantity.Amount{}
	for _, o := range outcomes {
		out[o.Reading.Seq] = o.Step.Value()
	}
	return out
}

// kept are the tests the mean is taken of.
func (r *Result) kept() []Outcome {
	return slices.DeleteFunc(slices.Clone(r.Outcomes), func(o Outcome) bool { return o.Exclusion != nil })
}

// mean takes the spread and the mean of the tests kept. The mean is rounded
// here and nowhere before: 14.44 and 14.48 make 14.5, not the mean of 14.4 and
// 14.5.
func (r *Result) mean(s *worksheet.Sheet, rounding quantity.Rounding) {
	kept := r.kept()
	low, high := kept[0].Step, kept[0].Step
	rest := make([]worksheet.Operand, 0, len(kept))
	for _, o := range kept[1:] {
		if o.Step.Value().Less(low.Value()) {
			low = o.Step
		}
		if o.Step.Value().More(high.Value()) {
			high = o.Step
		}
		rest = append(rest, o.Step)
	}
	if len(rest) == 0 {
		r.Spread = s.Skip("moisture.spread", message.Words("Spread of the tests"), quantity.Point, quantity.Unrounded, message.Words("one test has no spread"), worksheet.Unsourced)
		r.Moisture = s.Work("moisture", message.Words("Moisture"), worksheet.Same(low), rounding, roundingSource(rounding))
		return
	}
	r.Spread = s.Work("moisture.spread", message.Words("Spread of the tests"), worksheet.Points(high, low), quantity.Unrounded, message.Words("highest less lowest"))
	count := worksheet.Const(quantity.Int(int64(len(kept)), quantity.Plain))
	r.Moisture = s.Work("moisture", message.Words("Moisture"), worksheet.Over(worksheet.Sum(kept[0].Step, rest...), count), rounding, roundingSource(rounding))
}

func roundingSource(r quantity.Rounding) message.Text {
	if r.String() == MoistureRounding.String() {
		return moistureRoundingSource
	}
	return message.New("moisture to %s: house", r)
}
