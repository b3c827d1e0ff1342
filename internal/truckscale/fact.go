package truckscale

import (
	"strings"

	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Fact is one entry of a scale's log.
type Fact interface {
	// Kind names the fact in the journal.
	Kind() string
	// Check returns what is wrong with the entry, or nil.
	Check() error
	// On is the business day of the entry.
	On() quantity.Date
	// Person returns who made it.
	Person() string
}

// Made is the day of an entry and who made it.
type Made struct {
	Day quantity.Date `json:"day"`
	By  string        `json:"by"`
}

// On is the business day of the entry.
func (m Made) On() quantity.Date { return m.Day }

// Person returns who made it.
func (m Made) Person() string { return m.By }

func (m Made) check() error {
	switch {
	case m.Day.IsZero():
		return message.Invalid.Errorf("the entry has no day")
	case m.By == "":
		return message.Invalid.Errorf("the entry has no person; write who looked at the scale")
	}
	return nil
}

// Zeroed is a look at the empty deck.
type Zeroed struct {
	Made
	// Shown is the weight the indicator showed, usually zero; it may be negative.
	Shown quantity.Amount `json:"shown"`
}

// Weighed is a check weighing: a known weight on the deck.
type Weighed struct {
	Made
	Known quantity.Amount `json:"known"`
	Shown quantity.Amount `json:"shown"`
	// Weights names the load: test weights and their certificate, or a truck weighed elsewhere.
	Weights string `json:"weights"`
}

// Off returns the error: the weight shown less the known one.
func (w Weighed) Off() quantity.Amount { return w.Shown.Sub(w.Known) }

// Compared is one truck on two scales of the elevator.
type Compared struct {
	Made
	Other      string          `json:"other"` // the other scale
	Shown      quantity.Amount `json:"shown"`
	OtherShown quantity.Amount `json:"other_shown"`
	What       string          `json:"what"` // the truck
}

// Apart returns the weight this scale showed less the other's.
func (c Compared) Apart() quantity.Amount { return c.Shown.Sub(c.OtherShown) }

// Certificate is the last inspection of a scale, whole: its paper, how long that
// holds, and the seals the inspector left.
type Certificate struct {
	Made
	Scale     string        `json:"scale"`
	Number    string        `json:"number"`
	Inspector string        `json:"inspector"`
	Until     quantity.Date `json:"until"` // the last day it holds
	Seals     string        `json:"seals"`
}

// Service records whether a scale is in service. While it is out of service no weight is taken from
// it.
type Service struct {
	Made
	Scale  string `json:"scale"`
	Out    bool   `json:"out,omitempty"`
	Reason string `json:"reason"`
}

// Kind names the fact in the journal.
func (Zeroed) Kind() string { return "scale.zero" }

// Kind names the fact in the journal.
func (Weighed) Kind() string { return "scale.check" }

// Kind names the fact in the journal.
func (Compared) Kind() string { return "scale.compared" }

// Kind names the fact in the journal.
func (Certificate) Kind() string { return "scale.certificate" }

// Kind names the fact in the journal.
func (Service) Kind() string { return "scale.service" }

// Check returns what is wrong with the entry, or nil.
func (z Zeroed) Check() error {
	if !isWeight(z.Shown) {
		return message.Invalid.Errorf("the empty deck showed %s; write a weight in lb or kg, such as 0 lb", z.Shown)
	}
	return z.check()
}

// Check returns what is wrong with the entry, or nil.
func (w Weighed) Check() error {
	if !isWeight(w.Known) || w.Known.Sign() <= 0 || w.Shown.Unit() != w.Known.Unit() || w.Shown.Sign() < 0 {
		return message.Invalid.Errorf("%s was on the deck and %s was shown; write both in the unit of the scale", w.Known, w.Shown)
	}
	if strings.TrimSpace(w.Weights) == "" {
		return message.Invalid.Errorf("it is not said what was weighed; name the test weights, or where the truck was weighed before")
	}
	return w.check()
}

// Check returns what is wrong with the entry, or nil.
func (c Compared) Check() error {
	switch {
	case c.Other == "":
		return message.Invalid.Errorf("the other scale is not named")
	case !isWeight(c.Shown) || c.OtherShown.Unit() != c.Shown.Unit() || c.Shown.Sign() <= 0 || c.OtherShown.Sign() <= 0:
		return message.Invalid.Errorf("the scales showed %s and %s; write both above zero, in one unit", c.Shown, c.OtherShown)
	}
	return c.check()
}

// Check returns what is wrong with the entry, or nil.
func (c Certificate) Check() error {
	switch {
	case strings.TrimSpace(c.Number) == "":
		return message.Invalid.Errorf("the certificate has no number")
	case c.Until.IsZero() || c.Until.Before(c.Day):
		return message.Invalid.Errorf("the certificate of %s ends on %q; write its last day", c.Day, c.Until.String())
	}
	return c.check()
}

// Check returns what is wrong with the entry, or nil.
func (s Service) Check() error {
	if strings.TrimSpace(s.Reason) == "" {
		return message.Invalid.Errorf("a scale is taken out of service, or put back, for a reason; write it")
	}
	return s.check()
}

// UnitOf is the unit of the weights of an entry; false where it has none.
func UnitOf(f Fact) (quantity.Unit, bool) {
	switch f := f.(type) {
	case Zeroed:
		return f.Shown.Unit(), true
	case Weighed:
		return f.Known.Unit(), true
	case Compared:
		return f.Shown.Unit(), true
	}
	return quantity.Plain, false
}

func isWeight(a quantity.Amount) bool {
	return a.Unit() == quantity.Lb || a.Unit() == quantity.Kg
}

// Signed is an entry with its person, and with its day where it has none.
func Signed(f Fact, day quantity.Date, by string) Fact {
	m := Made{Day: f.On(), By: by}
	if m.Day.IsZero() {
		m.Day = day
	}
	switch f := f.(type) {
	case Zeroed:
		f.Made = m
		return f
	case Weighed:
		f.Made = m
		return f
	case Compared:
		f.Made = m
		return f
	case Certificate:
		f.Made = m
		return f
	case Service:
		f.Made = m
		return f
	}
	return f
}

// Subject returns the journal subject of a scale's log.
func Subject(scale string) string { return "scale " + scale }

// Subjects returns the journal subjects of a scale's log: the scale, and its two records, of which
// the last one is in force.
func Subjects(scale string) []string {
	return []string{Certificate{}.Kind() + " " + scale, Service{}.Kind() + " " + scale, Subject(scale)}
}

var readers = map[string]func([]byte) (Fact, error){
	Zeroed{}.Kind():      read[Zeroed],
	Weighed{}.Kind():     read[Weighed],
	Compared{}.Kind():    read[Compared],
	Certificate{}.Kind(): read[Certificate],
	Service{}.Kind():     read[Service],
}

func read[F Fact](body []byte) (Fact, error) { return journal.ReadBody[F](body) }

// Read makes a fact from its kind and body as the journal keeps them.
func Read(kind string, body []byte) (Fact, error) {
	r, ok := readers[kind]
	if !ok {
		return nil, message.NotFound.Errorf("%q is not a kind of entry in the log of a scale", kind)
	}
	return r(body)
}
