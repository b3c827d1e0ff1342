package truckscale

import (
	"slices"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Log is a scale and the entries of its log, oldest first.
type Log struct {
	Scale   elevator.Scale
	Rules   string // rule set of the elevator
	Laws    *law.Set
	Entries []Fact
}

// State is the condition of a scale.
type State string

// The states, best first. A scale without entries is not yet logged.
const (
	Unlogged State = "no log"
	Good     State = "in service"
	Due      State = "due"     // not at zero, not looked at, or its certificate ends soon
	Expired  State = "expired" // its certificate has ended
	Outside  State = "outside" // its last check weighing was outside the tolerance
	Out      State = "out of service"
)

// Status is the state of a scale on a day, with its messages.
type Status struct {
	State State
	Said  []message.Text
}

// warnDays is the number of days before its end from which a certificate is due.
const warnDays = 30

// UpTo returns the log as of the evening of a day.
func (l Log) UpTo(day quantity.Date) Log {
	l.Entries = slices.DeleteFunc(slices.Clone(l.Entries), func(f Fact) bool { return f.On().After(day) })
	return l
}

// Status returns the status of the scale on a day.
func (l Log) Status(day quantity.Date) Status {
	l = l.UpTo(day)
	s := Status{State: Unlogged}
	if len(l.Entries) == 0 {
		s.say(Unlogged, message.New("Scale %v has no log: no zero check, no check weighing, no certificate is written down.", l.Scale.ID))
		return s
	}
	s.State = Good
	l.service(&s)
	l.certificate(&s, day)
	l.weighing(&s)
	l.zero(&s, day)
	l.comparison(&s)
	return s
}

// order ranks the states.
var order = []State{Unlogged, Good, Due, Expired, Outside, Out}

func (s *Status) say(state State, text message.Text) {
	if slices.Index(order, state) > slices.Index(order, s.State) {
		s.State = state
	}
	s.Said = append(s.Said, text)
}

// last is the newest entry of a kind.
func last[F Fact](l Log) (F, bool) {
	for i := len(l.Entries) - 1; i >= 0; i-- {
		if f, is := l.Entries[i].(F); is {
			return f, true
		}
	}
	var none F
	return none, false
}

func (l Log) service(s *Status) {
	if f, there := last[Service](l); there && f.Out {
		s.say(Out, message.New("Scale %v is out of service since %s: %v. No weight is taken from it.", l.Scale.ID, f.Day, f.Reason))
	}
}

func (l Log) certificate(s *Status, day quantity.Date) {
	f, there := last[Certificate](l)
	switch {
	case !there:
		s.say(Due, message.New("No certificate of scale %v is written down.", l.Scale.ID))
	case day.After(f.Until):
		s.say(Expired, message.New("Certificate %v of scale %v ended on %s. Have the scale inspected.", f.Number, l.Scale.ID, f.Until))
	case !day.Before(f.Until.AddDays(-warnDays)):
		s.say(Due, message.New("Certificate %v of scale %v ends on %s.", f.Number, l.Scale.ID, f.Until))
	default:
		s.say(Good, message.New("Certificate %v of scale %v holds through %s.", f.Number, l.Scale.ID, f.Until))
	}
	if there && f.Seals != "" {
		s.say(Good, message.New("Seals: %v.", f.Seals))
	}
}

func (l Log) weighing(s *Status) {
	f, there := last[Weighed](l)
	if !there {
		s.say(Due, message.New("No check weighing of scale %v is written down.", l.Scale.ID))
		return
	}
	t, known := l.Allowed(f.Day, f.Known)
	state := Good
	if known && t.Confirmed && size(f.Off()).More(t.At) {
		state = Outside
	}
	if !known {
		s.say(state, message.New("On %s scale %v showed %s for %s.", f.Day, l.Scale.ID, f.Shown, f.Known))
		return
	}
	s.say(state, message.New("On %s scale %v showed %s for %s: off by %s, and %s allows %s.", f.Day, l.Scale.ID, f.Shown, f.Known, f.Off(), message.Words(t.Source), t.At))
}

func (l Log) zero(s *Status, day quantity.Date) {
	f, there := last[Zeroed](l)
	switch {
	case !there:
		s.say(Due, message.New("No zero check of scale %v is written down.", l.Scale.ID))
	case f.Day.Before(day):
		s.say(Due, message.New("The zero of scale %v was last looked at on %s.", l.Scale.ID, f.Day))
	case f.Shown.Sign() != 0:
		s.say(Due, message.New("The empty deck of scale %v showed %s. Clean under it and set it to zero.", l.Scale.ID, f.Shown))
	default:
		s.say(Good, message.New("The empty deck of scale %v showed %s on %s.", l.Scale.ID, f.Shown, f.Day))
	}
}

func (l Log) comparison(s *Status) {
	f, there := last[Compared](l)
	if !there {
		return
	}
	state := Good
	// Two scales may each be off by their tolerance, in opposite ways.
	if t, known := l.Allowed(f.Day, quantity.Max(f.Shown, f.OtherShown)); known && size(f.Apart()).More(t.At.Add(t.At)) {
		state = Due
		if t.Confirmed {
			state = Outside
		}
	}
	s.say(state, message.New("On %s scale %v showed %s and scale %v %s for %v: %s apart.", f.Day, l.Scale.ID, f.Shown, f.Other, f.OtherShown, orTruck(f.What), f.Apart()))
}

func orTruck(what string) any {
	if what == "" {
		return message.New("one truck")
	}
	return what
}

// size is an amount without its sign.
func size(a quantity.Amount) quantity.Amount { return quantity.Max(a, a.Neg()) }

// InOrder sorts entries by day; those of a day stay in the order written.
func InOrder(entries []Fact) []Fact {
	out := slices.Clone(entries)
	slices.SortStableFunc(out, func(a, b Fact) int { return a.On().Cmp(b.On()) })
	return out
}
