// Package deadline reads what the laws of places give a day to once grain is under a ticket: the
// signature of a contract that leaves its price or its payment open, and the payment itself. Each
// rule says from which day it counts and what becomes of it when the day passes, as it was read.
package deadline

import (
	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// Of is the obligation that a rule gives a last day for.
type Of string

// A contract on credit is signed by both parties; grain that is sold is paid.
const (
	Signature Of = "signature"
	Payment   Of = "payment"
)

// From is the day that is day 0.
type From string

// Contracts count from their first or last delivery, payments also from the settlement.
const (
	FirstDelivery From = "first-delivery"
	LastDelivery  From = "last-delivery"
	Settlement    From = "settlement"
)

// Rule is one such day.
type Rule struct {
	Of       Of
	From     From
	Days     int
	IfPassed string // what becomes of it, as it was read
	// AtMarket says that the grain is priced at the market price of the last day.
	AtMarket bool
	Place    string
	Citation string
}

// ReadRules reads a file of the kind [law.Deadlines]. The error names every mistake in it.
func ReadRules(f *law.File) ([]Rule, error) {
	var rules []Rule
	err := f.Read(func(body *tomlfile.Table) {
		for _, t := range body.Tables("deadline") {
			r := Rule{Place: f.Jurisdiction, Citation: f.Citation}
			r.Of = Of(t.Choice("of", string(Signature), string(Payment)))
			r.From = From(t.Choice("from", string(FirstDelivery), string(LastDelivery), string(Settlement)))
			r.Days, r.IfPassed = law.Days(t, "days"), t.Text("if_passed")
			r.AtMarket = t.Has("at_market_price") && t.Bool("at_market_price")
			if r.Of == Signature && r.From == Settlement {
				t.AddProblem("from", message.New("a contract is signed before it is settled"), message.New("Count from first-delivery or last-delivery."))
			}
			rules = append(rules, r)
		}
	})
	return rules, err
}

// RulesIn are the rules of the place that a law is of; none where nobody read them.
func RulesIn(l law.Law) ([]Rule, error) {
	for _, f := range l.OfKind(law.Deadlines) {
		return ReadRules(f)
	}
	return nil, nil
}

// Counted are the days that rules count from; one that has not come is zero.
type Counted struct{ First, Last, Settled quantity.Date }

// With counts a delivery among them.
func (c Counted) With(delivered quantity.Date) Counted {
	if c.First.IsZero() || delivered.Before(c.First) {
		c.First = delivered
	}
	if delivered.After(c.Last) {
		c.Last = delivered
	}
	return c
}

// Due is the last day by the rule; the zero day where its day 0 has not come.
func (r Rule) Due(c Counted) quantity.Date {
	from := map[From]quantity.Date{FirstDelivery: c.First, LastDelivery: c.Last, Settlement: c.Settled}[r.From]
	if from.IsZero() {
		return from
	}
	return from.AddDays(r.Days)
}

// Earliest is the first of the days that rules give to one thing, with the rule; false where none of
// them has a day.
func Earliest(rules []Rule, of Of, c Counted) (first quantity.Date, by Rule, found bool) {
	for _, r := range rules {
		due := r.Due(c)
		if r.Of != of || due.IsZero() || found && !due.Before(first) {
			continue
		}
		first, by, found = due, r, true
	}
	return first, by, found
}

// Said tells the consequence of a missed day, with the citation of the rule.
func (r Rule) Said() message.Text {
	return law.ToConfirm(message.New("%s (%v).", message.Words(r.IfPassed), r.Citation))
}
