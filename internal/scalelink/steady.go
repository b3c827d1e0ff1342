package scalelink

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Steady is the rule for a weight at rest: the last Readings readings are all of one unit and are
// within Divisions scale divisions of each other. The zero Steady trusts the indicator.
//
// It is for indicators that do not report motion, and may be added for those that do; then both
// must agree.
type Steady struct {
	Divisions int
	Readings  int
}

func (s Steady) check() error {
	if s == (Steady{}) || s.Divisions >= 0 && s.Readings >= 2 && s.Readings <= 100 {
		return nil
	}
	return message.Device.Errorf("A weight is called at rest after 2 to 100 readings within 0 or more divisions. Change the scale's set-up.")
}

// rest remembers the last readings and judges a new one: by the rule, and by the frame
// before. A weight is at rest only when two frames, one directly after the other, say
// the same weight, unit and mode and both say it stands still, or both say nothing of
// that. A frame damaged on the wire is then no weight, however well it reads, since
// the whole ones around it say another; only a fault that does the same twice running
// is not told, for which frames need a check field.
type rest struct {
	rule   Steady
	within quantity.Amount
	last   []quantity.Amount

	before Reading // as the frame before said it
	heard  bool    // there is one
}

func newRest(rule Steady, division quantity.Amount) *rest {
	return &rest{rule: rule, within: division.Mul(quantity.Int(int64(rule.Divisions), quantity.Plain))}
}

// judge sets the state of the reading by the rule. States worse than motion are kept, and restart
// the count.
func (r *rest) judge(reading Reading) Reading {
	said := reading
	reading = r.byRule(reading)
	if reading.State == Stable && !(r.heard && r.before.says(said)) {
		reading.State = Motion
	}
	r.before, r.heard = said, true
	return reading
}

// says reports whether two frames say the same.
func (r Reading) says(o Reading) bool {
	return r.State == o.State && r.Mode == o.Mode && r.Weight.Equal(o.Weight)
}

// byRule gives the reading the state the rule finds.
func (r *rest) byRule(reading Reading) Reading {
	if r.rule == (Steady{}) {
		return reading
	}
	if !reading.hasWeight() || reading.Weight.Unit() != r.within.Unit() {
		r.last = r.last[:0]
		return reading
	}
	if len(r.last) == r.rule.Readings {
		r.last = append(r.last[:0], r.last[1:]...)
	}
	r.last = append(r.last, reading.Weight)
	found := Motion
	if len(r.last) == r.rule.Readings && r.spread().Cmp(r.within) <= 0 {
		found = Stable
	}
	reading.State = max(reading.State, found)
	return reading
}

// forget starts the count again, as after a lost line.
func (r *rest) forget() { r.last, r.heard = r.last[:0], false }

func (r *rest) spread() quantity.Amount {
	least, most := r.last[0], r.last[0]
	for _, w := range r.last {
		least, most = quantity.Min(least, w), quantity.Max(most, w)
	}
	return most.Sub(least)
}
