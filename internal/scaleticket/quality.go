package scaleticket

import (
	"slices"
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
)

// quality is what the bench found, with what, by whom, and where the rest of
// the sample is.
func (c *composer) quality() {
	c.open("quality", c.w.Quality, Facts)
	c.moisture()
	for _, id := range c.factors() {
		c.factor(id)
	}
	c.fact(c.w.Grade, c.l.Sample.Grade, c.w.NotGraded)
	c.instruments()
	c.doubts()
}

// moisture is as the settlement recorded it, else as the grain's own rule
// records it.
func (c *composer) moisture() {
	m := c.l.Sample.Moisture
	line := Line{Field: string(grain.Moisture), Label: c.w.Moisture, Emphasis: true}
	if m == nil {
		line.Value, line.Missing = c.w.NotTested, !c.isWeighedOnly()
		c.put(line)
		return
	}
	line.Value = c.moistureFigure()
	line.Notes = some(c.named(c.w.say(m.Method), c.w.say(m.Reason)))
	c.put(line)
}

func (c *composer) moistureFigure() string {
	if c.s != nil {
		return c.s.Moisture.Printed()
	}
	measured := c.l.Sample.Moisture.Percent
	if known, ok := c.grain(); ok {
		if f, ok := known.Factor(grain.Moisture); ok {
			return f.Recorded(measured).FixedString(f.Record.Places())
		}
	}
	return measured.Written()
}

// factors are the factors to list, in the order the grain's sample is worked
// through: what was found, what the rates cannot do without, and what every
// ticket of the grain states.
func (c *composer) factors() []grain.FactorID {
	known, _ := c.grain()
	var ids []grain.FactorID
	for _, f := range known.Factors {
		stated := f.ID == grain.TestWeight || f.ID == grain.Dockage
		if f.ID != grain.Moisture && (stated || c.found(f.ID) != nil || c.mustTest(f.ID)) {
			ids = append(ids, f.ID)
		}
	}
	for _, found := range c.l.Sample.Findings {
		if found.Factor != grain.Moisture && !slices.Contains(ids, found.Factor) {
			ids = append(ids, found.Factor)
		}
	}
	return ids
}

func (c *composer) found(id grain.FactorID) *load.Finding {
	for i, f := range c.l.Sample.Findings {
		if f.Factor == id {
			return &c.l.Sample.Findings[i]
		}
	}
	return nil
}

// mustTest reports whether the rates settle no load without the factor.
func (c *composer) mustTest(id grain.FactorID) bool {
	if id == grain.Dockage {
		return c.Edition != nil && c.Edition.Dockage.MustTest
	}
	return c.Edition != nil && slices.ContainsFunc(c.Edition.Discounts, func(d rates.Discount) bool {
		return d.Factor.ID == id && d.MustTest
	})
}

func (c *composer) factor(id grain.FactorID) {
	known, _ := c.grain()
	f, ok := known.Factor(id)
	if !ok {
		f = grain.Factor{ID: id, Name: string(id)}
	}
	line := Line{Field: string(id), Label: c.w.say(f.Name), Value: c.w.NotTested, Missing: c.mustTest(id)}
	if found := c.found(id); found != nil {
		line.Value, line.Missing = c.result(f, *found), false
	}
	c.put(line)
}

func (c *composer) result(f grain.Factor, found load.Finding) string {
	switch {
	case f.YesNo && found.Present:
		return c.w.Present
	case f.YesNo:
		return c.w.NotPresent
	case found.Amount == nil:
		return c.w.NotTested
	}
	if c.s != nil {
		if step, ok := c.s.Sheet.Step(settle.FactorLine(f.ID)); ok {
			return step.Printed()
		}
	}
	if found.Amount.Unit() != f.Unit {
		return found.Amount.Written()
	}
	return f.Recorded(*found.Amount).FixedString(f.Record.Places())
}

// instruments is with what, by whom and when the sample was tested, and where
// the rest of it is.
func (c *composer) instruments() {
	s := c.l.Sample
	if m := s.Moisture; m != nil {
		calibration := ""
		if m.Calibration != "" {
			calibration = c.w.Calibration + " " + m.Calibration
		}
		c.fact(c.w.Meter, Joined(", ", m.Meter, calibration), c.w.NoMeter)
	}
	c.fact(c.w.Tester, s.Tester, c.w.NotNamed)
	if c.l.Sampled.At != "" {
		c.given(c.w.TestedAt, c.hour(c.l.Sampled.At))
	}
	c.given(c.w.Probes, s.Probes)
	c.fact(c.w.Sample, s.Number, c.w.NotNumbered)
	c.fact(c.w.Retained, c.kept(), c.w.NotKept)
}

func (c *composer) kept() string {
	until := ""
	if s := c.l.Sample; !s.Until.IsZero() {
		until = c.w.RetainedUntil + " " + c.date(s.Until)
	}
	return Joined(", ", c.l.Sample.Kept, until)
}

// doubts are what makes a result less than certain, and the limits somebody
// has set aside.
func (c *composer) doubts() {
	c.warn(c.w.say(c.MeterNote))
	for _, flag := range c.l.Sample.Flags {
		c.warn(c.named(c.w.Flag, c.w.say(flagSentence(flag))))
	}
	for _, a := range c.l.Accepted {
		c.warn(c.named(c.named(c.w.LimitAccepted, c.limitName(a.Limit)), Joined(", ", a.Accepted.Reason, a.Who)))
	}
}

// flagSentence is a flag without its code: "too-cold: …" is for the program.
func flagSentence(flag string) string {
	code, sentence, ok := strings.Cut(flag, ": ")
	if ok && !strings.Contains(code, " ") {
		return sentence
	}
	return flag
}

// limitName is the label of the rule whose limit was set aside.
func (c *composer) limitName(id string) string {
	if c.Edition != nil {
		for _, d := range c.Edition.Discounts {
			if d.ID == id {
				return c.w.say(d.Label)
			}
		}
	}
	return id
}
