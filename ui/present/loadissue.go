package present

import (
	"context"
	"errors"

	"tenthpoint/ui/model"
)

// Stand says in a word how far the load is, with its state.
func (f *LoadForm) Stand() model.Remark { return standOf(f.now.load, f.now.settlement != nil) }

// CanIssue reports whether the load is whole and settles, and nothing stands in
// a field that cannot be read.
func (f *LoadForm) CanIssue() bool { return f.now.settlement != nil && len(f.unread()) == 0 }

// WhyNotIssue is what still stands in the way of the ticket, in sentences.
func (f *LoadForm) WhyNotIssue() string {
	for _, m := range f.now.load.Missing() {
		return translate(m.Sentence)
	}
	for _, l := range f.lines {
		if f.now.missing[l.id] {
			return Say("%s is still to come.", l.label)
		}
		if r := f.now.remarks[l.id]; r.State == model.Stop {
			return r.Text
		}
	}
	for _, sentence := range f.now.sentences() {
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
	number, err = f.frame.Desk.Issue(context.Background(), f.id)
	if err != nil {
		return 0, err
	}
	s := f.now.settlement
	said := Say("ticket %d is issued, net %s.", number, s.Net.Printed())
	if s.Quantity != nil {
		said = Say("ticket %d is issued, net %s, %s.", number, s.Net.Printed(), s.Quantity.Printed())
	}
	f.frame.Say(model.OK, said)
	PrintTicket(f.frame, number)
	f.frame.Changed()
	return number, nil
}

// unread are the fields whose text cannot stand.
func (f *LoadForm) unread() []string {
	var out []string
	for _, l := range f.lines {
		if _, typed := f.typed[l.id]; typed && f.now.remarks[l.id].State == model.Stop {
			out = append(out, l.id)
		}
	}
	return out
}
