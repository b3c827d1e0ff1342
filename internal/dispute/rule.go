package dispute

import (
	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// Rule is the time limit of a dispute, by a rule set.
type Rule struct {
	Name         string // as elevator.Profile.Rules has it
	Days         int    // last day to ask for another test, counted from the ticket
	BusinessDays bool   // Saturdays and Sundays do not count
	Source       string
}

// KindDisputes is the kind of file with these rules.
const KindDisputes = "disputes"

// ReadRule reads a file of that kind. The error names every mistake in it.
func ReadRule(f *law.File) (Rule, error) {
	r := Rule{Name: f.Jurisdiction}
	err := f.Read(func(body *tomlfile.Table) {
		t, _ := body.Table("dispute", true)
		r.Days, r.BusinessDays, r.Source = law.Days(t, "days"), t.Bool("business_days"), t.Text("words")
	})
	return r, err
}

// House is the name of the rule of a house's own posted policy.
const House = "house"

// HouseRule is a house's posted policy: so many days from delivery.
func HouseRule(days int) Rule {
	return Rule{Name: House, Days: days, Source: "the house's posted policy"}
}

// Stated is the wording of the rule's days; what a published rule gives is to be confirmed.
func (r Rule) Stated(said message.Text) message.Text {
	if r.Name == House {
		return said
	}
	return law.ToConfirm(said)
}

// Until is the last day to ask for another test under the rule, of grain delivered
// on one day whose ticket was issued on another: an official inspection's days run
// from its certificate, all others from delivery.
func (r Rule) Until(delivered, issued quantity.Date) quantity.Date {
	if r.BusinessDays {
		return r.Due(issued)
	}
	return r.Due(delivered)
}

// RuleFor finds the rule of a rule set in a law.
func RuleFor(l law.Law, name string) (Rule, error) {
	if f, ok := l.Find(name, KindDisputes, ""); ok {
		return ReadRule(f)
	}
	return Rule{}, message.WrongPhase.Errorf("%q is not a rule set for disputes; choose \"us\" or \"canada\" in the set-up", name)
}

// Due is the last day to ask for another test of a ticket issued on a day.
func (r Rule) Due(issued quantity.Date) quantity.Date {
	if !r.BusinessDays {
		return issued.AddDays(r.Days)
	}
	due := issued
	for left := r.Days; left > 0; {
		due = due.AddDays(1)
		if !isWeekend(due) {
			left--
		}
	}
	return due
}

// aSaturday is a day known to be a Saturday, to count weeks from.
var aSaturday = quantity.MustDate("2000-01-01")

func isWeekend(d quantity.Date) bool {
	n := aSaturday.DaysUntil(d) % 7
	return n == 0 || n == 1 || n == -6
}
