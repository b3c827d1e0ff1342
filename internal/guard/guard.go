package guard

import (
	"slices"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Finding is one thing about a load that is improbable.
type Finding struct {
	// ID identifies the finding on this load, in answers and at the terminal: the guard, or where
	// one guard may have several findings its subject ("bcfm").
	ID string
	// Guard is the guard that found it.
	Guard ID
	// Field is the field of the load's form the finding is shown at.
	Field string
	// About are the figures compared, by which an answer is known to be about them.
	About string
	Act   elevator.GuardAct
	Said  message.Text
	// Reasons are the answers to choose from.
	Reasons []string
}

// IsQuestion reports whether the ticket waits for an answer.
func (f Finding) IsQuestion() bool {
	return f.Act == elevator.GuardQuestion || f.Act == elevator.GuardManager
}

// Reason finds a reason of the finding's list, ignoring case; the error names the list.
func (f Finding) Reason(text string) (string, error) {
	for _, r := range f.Reasons {
		if strings.EqualFold(strings.TrimSpace(text), r) {
			return r, nil
		}
	}
	return "", message.Invalid.Errorf("%q is no reason for it here. Choose one of: %s", text, message.Names("; ", f.Reasons))
}

// Setting is the context of a load: the elevator, the day, and the book's data on its truck, its
// bin and the price of its grain.
type Setting struct {
	House elevator.Profile
	Today quantity.Date
	// Past marks a load from before the book, which yard, bins and day do not apply to.
	Past bool

	Bin       elevator.Bin      // that the grain leaves, or comes to by the usual path of its pit; zero where it is on no list
	InBin     []Stock           // its stock
	Lot       string            // of what was put there last, of this grain
	Prices    []quantity.Amount // of the last tickets of this grain, the newest first
	Posted    *load.Posted      // the price of the day; nil where none is posted
	Truck     elevator.Truck    // as it is recorded; zero where it is on no list
	Contracts []Contract        // that the load is delivered on
	Others    []Passage         // other loads of the same truck
}

// Stock is grain in a bin, in lb or kg.
type Stock struct {
	Commodity, Name string
	Weight          quantity.Amount
}

// Passage is another load of the same truck. Minutes is the time between the two openings.
type Passage struct {
	Load    string
	Ticket  int64 // zero while it is on the yard
	Gross   quantity.Amount
	Minutes int
}

// Check is everything improbable about a load, in the order of [Rules].
func Check(l *load.Load, around Setting) []Finding {
	var out []Finding
	for _, r := range rules {
		if around.Past && !r.past {
			continue
		}
		c := check{Load: l, Setting: around, rule: r}
		r.find(&c)
		out = append(out, c.found...)
	}
	return out
}

// Unanswered returns the unanswered questions among findings.
func Unanswered(l *load.Load, found []Finding) Asked {
	var out Asked
	for _, f := range found {
		if f.IsQuestion() && !IsAnswered(l, f) {
			out = append(out, f)
		}
	}
	return out
}

// IsAnswered reports whether a finding has been answered with these figures.
func IsAnswered(l *load.Load, f Finding) bool {
	return slices.ContainsFunc(l.Answers, func(a load.Answer) bool { return a.Guard == f.ID && a.About == f.About })
}

// Answer is the fact that a finding was answered.
func (f Finding) Answer(reason string) load.Answered {
	return load.Answered{Guard: f.ID, About: f.About, Asked: message.Kept{Text: f.Said}, Reason: reason}
}

// Asked are questions that keep a ticket back, as an error.
type Asked []Finding

// Message lists every question.
func (a Asked) Message() message.Text {
	said := make([]message.Text, len(a))
	for i, f := range a {
		said[i] = f.Said
	}
	return message.Texts("\n", said)
}

// Error lists every question in English.
func (a Asked) Error() string { return a.Message().String() }

// Unwrap makes it a refusal.
func (a Asked) Unwrap() error { return message.Refused }

// Find is the question with an id.
func (a Asked) Find(id string) (Finding, bool) {
	if i := slices.IndexFunc(a, func(f Finding) bool { return f.ID == id }); i >= 0 {
		return a[i], true
	}
	return Finding{}, false
}

// check is one guard at work on a load.
type check struct {
	*load.Load
	Setting
	rule  Rule
	found []Finding
}

// limits returns the elevator's limits for a factor.
func (c *check) limits(factor string) elevator.GuardRule {
	return c.rule.At(c.House, c.Details.Commodity, factor)
}

// At is a guard's setting at a house, for a grain and a factor.
func (r Rule) At(house elevator.Profile, commodity, factor string) elevator.GuardRule {
	by := house.Guards.For(string(r.ID), commodity, factor)
	if by.Act == "" {
		by.Act = r.Act
	}
	if len(by.Reasons) == 0 {
		by.Reasons = r.Reasons
	}
	return by
}

// say adds a finding, unless the elevator has turned the guard off.
func (c *check) say(f Finding, by elevator.GuardRule) {
	if by.Act == elevator.GuardOff {
		return
	}
	f.Guard, f.Act, f.Reasons = c.rule.ID, by.Act, by.Reasons
	if f.ID == "" {
		f.ID = string(c.rule.ID)
	}
	c.found = append(c.found, f)
}

// outside reports whether an amount is outside limits in its own unit. Limits in another unit do
// not apply.
func outside(a quantity.Amount, from, to *quantity.Amount) bool {
	return from != nil && from.Unit() == a.Unit() && a.Less(*from) || to != nil && to.Unit() == a.Unit() && a.More(*to)
}

// about joins the figures an answer depends on.
func about(figures ...string) string { return strings.Join(figures, " | ") }
