package bin

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Check returns what is wrong with a movement by itself, whatever lies in the bins, or nil.
func (m Movement) Check() error {
	r, known := ruleOf(m.What)
	if !known {
		return message.Invalid.Errorf("%q is no movement of grain", string(m.What))
	}
	if m.Day.IsZero() || m.By == "" {
		return message.Invalid.Errorf("a movement has a day and a person; one of them is missing")
	}
	if m.Commodity == "" {
		return message.Invalid.Errorf("it is not said which grain was moved")
	}
	for _, check := range []func(rule) error{m.checkBins, m.checkWeights, m.checkKind, m.checkReason} {
		if err := check(r); err != nil {
			return err
		}
	}
	return nil
}

// checkBins asks for as many bins as the kind has, no bin twice.
func (m Movement) checkBins(r rule) error {
	switch {
	case len(m.From) < r.leastFrom && r.leastFrom == 2:
		return message.Invalid.Errorf("a blend draws from two bins or more; name them")
	case len(m.From) < r.leastFrom:
		return message.Invalid.Errorf("it is not said which bin the grain is taken from")
	case len(m.From) > r.mostFrom:
		return message.Invalid.Errorf("%s draws from at most %d bins; %d are named", r.name, r.mostFrom, len(m.From))
	}
	for i, w := range m.From {
		for _, other := range m.From[:i] {
			if other.Bin == w.Bin {
				return message.Invalid.Errorf("bin %v is named twice; give its whole weight once", w.Bin)
			}
		}
	}
	switch {
	case m.What == Undo || m.Count != nil:
		return nil
	case r.into == nowhere && len(m.Into) > 0:
		return message.Invalid.Errorf("%s puts grain into no bin; leave %v out", r.name, m.Into[0].Bin)
	case r.into != nowhere && len(m.Into) != 1:
		return message.Invalid.Errorf("it is not said which bin the grain goes into")
	case r.into == back && m.Into[0].Bin != m.From[0].Bin:
		return message.Invalid.Errorf("turning moves a bin onto itself: %v and %v are two; write a transfer", m.From[0].Bin, m.Into[0].Bin)
	case r.into == elsewhere && m.draws(m.Into[0].Bin):
		return message.Invalid.Errorf("the grain is in %v already; a bin moved onto itself is turned", m.Into[0].Bin)
	}
	return nil
}

func (m Movement) draws(bin string) bool {
	for _, w := range m.From {
		if w.Bin == bin {
			return true
		}
	}
	return false
}

// checkWeights asks for weights above zero in one unit, and that no grain comes out of nothing.
func (m Movement) checkWeights(r rule) error {
	unit := m.Unit()
	weightless := m.What == Aerate || m.What == Temperatures
	for _, w := range append(append([]Weighed(nil), m.From...), m.Into...) {
		switch {
		case w.Bin == "":
			return message.Invalid.Errorf("%s has no bin; name it by its short name", w.Weight)
		case w.Weight.Unit() != unit || !unit.IsMass():
			return message.Invalid.Errorf("%s of %v is not in the unit of the other weights", w.Weight, w.Bin)
		case !weightless && w.Weight.Sign() <= 0:
			return message.Invalid.Errorf("%s of %v is no weight; write one above zero", w.Weight, w.Bin)
		}
	}
	in, out := m.In(), m.Out()
	switch {
	case r.into == nowhere || m.What == Undo || m.What == Dry || m.What == Open:
		return nil
	case !r.loses && !in.Equal(out):
		return message.Invalid.Errorf("%s went out and %s came in: %s loses nothing on the way", in, out, r.name)
	case out.More(in):
		return message.Invalid.Errorf("%s went in and %s came out, %s more; grain does not grow. Weigh again", in, out, out.Sub(in))
	}
	return nil
}

// checkKind asks for what only one kind has.
func (m Movement) checkKind(rule) error {
	switch m.What {
	case Dry:
		return m.checkRun()
	case Clean:
		return m.checkCleaning()
	case Aerate:
		if m.Hours.Unit() != quantity.Hour || m.Hours.Sign() <= 0 {
			return message.Invalid.Errorf("it is not said how long the fans ran; write hours above zero, such as 12")
		}
	case WeighOver, MeasureUp:
		return m.checkCount()
	case Temperatures:
		return m.checkReadings()
	case Open:
		if m.Found == nil || m.Found.Weight.Unit() != m.Unit() || !m.Found.Weight.Equal(m.Out()) {
			return message.Invalid.Errorf("it is not said what grain lay there when the books were opened")
		}
	}
	return nil
}

func (m Movement) checkCleaning() error {
	if m.Screenings.Unit() != m.Unit() || m.Screenings.Sign() <= 0 {
		return message.Invalid.Errorf("the screenings are not weighed; write their weight")
	}
	if !m.In().Sub(m.Out()).Equal(m.Screenings) {
		return message.Invalid.Errorf("%s went into the cleaner and %s of screenings came out: %s are clean, not %s",
			m.In(), m.Screenings, m.In().Sub(m.Screenings), m.Out())
	}
	return nil
}

func (m Movement) checkReadings() error {
	if len(m.Readings) == 0 {
		return message.Invalid.Errorf("no temperature is written down")
	}
	for _, t := range m.Readings {
		if !quantity.IsTemperature(t) {
			return message.Invalid.Errorf("%s is no temperature; write °F or °C", t)
		}
		f := quantity.TemperatureIn(t, quantity.Fahrenheit)
		if f.Less(quantity.Int(-60, quantity.Fahrenheit)) || f.More(quantity.Int(250, quantity.Fahrenheit)) {
			return message.Invalid.Errorf("grain of %s cannot be; read the cable again", t)
		}
	}
	return nil
}

func (m Movement) checkCount() error {
	c := m.Count
	if c == nil || c.Bin == "" {
		return message.Invalid.Errorf("it is not said which bin was counted")
	}
	if c.Counted.Unit() != c.Book.Unit() || !c.Book.Unit().IsMass() || c.Counted.Sign() < 0 {
		return message.Invalid.Errorf("%s was counted in %v, where the book has %s; write a weight of zero or more in the same unit", c.Counted, c.Bin, c.Book)
	}
	if m.What == MeasureUp && (c.Measure == nil || c.Shape == nil) {
		return message.Invalid.Errorf("a measure-up has the measures it is worked out from")
	}
	moved := m.Out().Sub(m.In())
	want := quantity.Zero(c.Book.Unit())
	if c.Posted {
		want = c.Counted.Sub(c.Book)
	}
	if len(m.From)+len(m.Into) > 0 && !moved.Equal(want) || len(m.From)+len(m.Into) == 0 && !want.IsZero() {
		return message.Invalid.Errorf("the count changes %v by %s, and %s is posted", c.Bin, want, moved)
	}
	return nil
}

// checkReason asks why, where a balance is changed by more than what was weighed.
func (m Movement) checkReason(r rule) error {
	needs := r.manager || m.What == Undo || m.Count != nil && !m.Count.Counted.Equal(m.Count.Book)
	if needs && m.Reason == "" {
		return message.Invalid.Errorf("%s changes or explains what the book says; write the reason", r.name)
	}
	return nil
}

// NeedsManager reports whether only a manager may do it: whatever makes the book say another weight
// than was moved.
func (m Movement) NeedsManager() bool {
	kind := m.What
	if kind == Undo {
		kind = m.Was
	}
	r, _ := ruleOf(kind)
	return r.manager || m.Count != nil && m.Count.Posted || m.What == Undo && kind == MeasureUp
}

// Fits returns why the bins do not have what a movement takes out of them, or nil. House is what
// lies in them before it.
func (m Movement) Fits(house House) error {
	if m.What == Aerate || m.What == Temperatures {
		return nil
	}
	for _, w := range m.From {
		there := house.At(Place{w.Bin, m.Commodity, w.Weight.Unit()}).Balance()
		switch {
		case there.Sign() <= 0:
			return message.Refused.Errorf("nothing of this grain lies in %v, and %s is to be taken out of it. Name the bin it lies in; what the book does not know is put there by a weigh-over", w.Bin, w.Weight)
		case w.Weight.More(there):
			return message.Refused.Errorf("%s lie in %v and %s is to be taken out: %s more than there is. Take less, or have a manager post a weigh-over first", there, w.Bin, w.Weight, w.Weight.Sub(there))
		}
	}
	return nil
}
