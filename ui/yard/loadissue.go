package yard

import (
	"context"
	"errors"

	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Stand says in a word how far the load is, with its state.
func (f *LoadForm) Stand() model.Remark { return standOf(f.Now.Load, f.Now.settlement != nil) }

// CanIssue reports whether the load is whole and settles, and nothing stands in
// a field that cannot be read.
func (f *LoadForm) CanIssue() bool { return f.Now.settlement != nil && len(f.unread()) == 0 }

// WhyNotIssue is what still stands in the way of the ticket, in sentences.
func (f *LoadForm) WhyNotIssue() string {
	for _, m := range f.Now.Load.Missing() {
		return session.Say(m.Sentence)
	}
	for _, l := range f.Lines {
		if f.Now.missing[l.ID] {
			return session.Say("%s is still to come.", l.label)
		}
		if r := f.Now.remarks[l.ID]; r.State == model.Stop {
			return r.Text
		}
	}
	for _, sentence := range f.Now.sentences() {
		return sentence
	}
	return ""
}

// Issue writes down what is typed, settles the load, gives it its number and
// prints it. It reports the ticket's number; nought when it was not issued.
func (f *LoadForm) Issue() (number int64, err error) {
	if !f.CanIssue() {
		return 0, errors.New(f.WhyNotIssue())
	}
	if err := f.Commit(); err != nil {
		return 0, err
	}
	number, err = scalehouse.Issue(context.Background(), f.session.Desk, f.id)
	if err != nil {
		return 0, err
	}
	s := f.Now.settlement
	said := session.Say("ticket %d is issued, net %s.", number, s.Net.Printed())
	if s.Quantity != nil {
		said = session.Say("ticket %d is issued, net %s, %s.", number, s.Net.Printed(), s.Quantity.Printed())
	}
	f.session.Say(model.OK, said)
	session.PrintTicket(f.session, number)
	f.session.Changed()
	return number, nil
}

// unread are the fields whose text cannot stand.
func (f *LoadForm) unread() []string {
	var out []string
	for _, l := range f.Lines {
		if _, typed := f.Typed[l.ID]; typed && f.Now.remarks[l.ID].State == model.Stop {
			out = append(out, l.ID)
		}
	}
	return out
}
