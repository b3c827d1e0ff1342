package yard

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/session"
)

// moistureReading says to what a typed moisture is recorded, and what of the bench
// it takes the place of.
func (f *LoadForm) moistureReading(_ string, l *load.Load) string {
	m := l.Sample.Moisture
	field, known := f.Line("moisture")
	if m == nil || !known {
		return ""
	}
	reading := recordedAs(field.field.Factor, m.Percent)
	if was := f.inBook().Sample.Moisture; was != nil && was.Bench != nil {
		reading = session.Join(", ", reading, session.Say("in place of %s from the bench", was.Percent))
	}
	return reading
}

// moistureHint says how the moisture was come by, when the bench worked it.
func (f *LoadForm) moistureHint(l *load.Load) string {
	m := l.Sample.Moisture
	switch {
	case m == nil:
		return ""
	case m.Meter != "":
		return session.Say("meter %s", m.Meter)
	}
	return session.Say(m.Method)
}

// resultReading says how another typed result was understood.
func resultReading(factor grain.Factor, l *load.Load) string {
	found, tested := session.Find(l.Sample.Findings, func(one load.Finding) bool { return one.Factor == factor.ID })
	switch {
	case !tested:
		return ""
	case factor.YesNo:
		return presence(found.Present)
	case found.Amount == nil || found.Amount.Unit() != factor.Unit:
		return ""
	}
	return recordedAs(factor, *found.Amount)
}

func presence(present bool) string {
	if present {
		return session.Say("present")
	}
	return session.Say("not present")
}

// recordedAs says to what a figure will be recorded, when that is another
// figure.
func recordedAs(factor grain.Factor, measured quantity.Amount) string {
	recorded := factor.Recorded(measured)
	if recorded.Equal(measured) {
		return ""
	}
	return session.Say("recorded as %s", recorded.FixedString(factor.Record.Places()))
}
