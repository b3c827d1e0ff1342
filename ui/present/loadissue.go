package present

import (
	"context"
	"errors"
	"fmt"

	"tenthpoint/internal/load"
	"tenthpoint/internal/slip"
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
	f.frame.Print(number)
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

// Print prints a ticket: the original first, then reprints by number.
func (f *Frame) Print(number int64) {
	name, pdf, err := f.paper(number)
	if err != nil {
		f.Fail(err)
		return
	}
	if f.Printer == nil {
		f.Say(model.Warn, Say("ticket %d is issued; no printer is set up. Choose one under Gear.", number))
		return
	}
	where := ""
	f.Run(model.Job{
		Topic: "print " + name,
		Title: Say("Printing ticket %d", number),
		Do: func(ctx context.Context, _ func(int, int)) (err error) {
			where, err = f.Printer.Print(ctx, name, pdf)
			return err
		},
		Done: func(err error) {
			if err != nil {
				f.Say(model.Warn, Say("ticket %d is issued and was not printed: %s Print it again from the tickets.", number, sentence(err)))
				return
			}
			f.Say(model.OK, Say("ticket %d is printed: %s", number, where))
		},
	})
}

// paper writes down that a copy is being printed, and makes it.
func (f *Frame) paper(number int64) (name string, pdf []byte, err error) {
	ctx := context.Background()
	copyNo, err := f.Desk.Printed(ctx, number)
	if err != nil {
		return "", nil, err
	}
	l, err := f.Desk.Ticket(ctx, number)
	if err != nil {
		return "", nil, err
	}
	t, err := f.issued(ctx, l, copyNo)
	if err != nil {
		return "", nil, err
	}
	pdf, err = pdfOf(slip.Compose(t))
	name = fmt.Sprintf("ticket-%d", number)
	if copyNo > 0 {
		name += fmt.Sprintf("-reprint-%d", copyNo)
	}
	return name, pdf, err
}

// issued gathers what the slip of an issued ticket is made from: the
// settlement is worked again under the edition kept in the book.
func (f *Frame) issued(ctx context.Context, l *load.Load, copyNo int64) (slip.Ticket, error) {
	s, err := f.Desk.Resettle(ctx, l)
	if err != nil {
		return slip.Ticket{}, err
	}
	t := f.ticket(l, s, copyNo, nil)
	t.Code, err = f.Desk.Code(ctx, l)
	return t, err
}
