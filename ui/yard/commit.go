package yard

import (
	"context"
	"errors"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Commit records the typed texts that are valid. The rest stay in their fields, with the error
// beside them.
func (f *LoadForm) Commit() error {
	defer func() { f.draft.sync(f.id, f.typed.draft(f.Book)) }()
	facts := f.Now.form.Facts()
	good, unexplained := holdBack(&facts, f.Now.form.Read())
	if len(unexplained) > 0 {
		defer manualWeights{f}.askWhy(unexplained)
	}
	if len(good) == 0 || facts.IsEmpty() {
		return nil
	}
	opened := f.id == ""
	if err := f.write(facts, good...); err != nil {
		return err
	}
	f.typed.forget(good...)
	if err := f.Reload(); err != nil {
		return err
	}
	if opened {
		f.session.Notify(model.OK, f.session.Say("Load %s is on the yard.", f.id))
	}
	f.session.Window.Redraw()
	return nil
}

// write records facts as one act, and in the same act removes from the draft the texts of their
// fields.
func (f *LoadForm) write(facts entry.Facts, entered ...string) error {
	stays := f.typed.draft(f.Book)
	delete(stays, leavesText)
	for _, field := range entered {
		delete(stays, fieldText+field)
		delete(stays, reasonText+field)
	}
	var moved map[session.DraftAt]map[string]string
	id, ctx := "", context.Background()
	err := f.session.Desk.Batch(ctx, func(w *scalehouse.Batch) (err error) {
		if id, err = scalehouse.Enter(ctx, w, f.id, facts); err == nil {
			moved, err = f.draft.move(ctx, w, f.id, id, stays)
		}
		return err
	})
	if err != nil {
		return err
	}
	f.draft.took(moved)
	f.id = id
	return nil
}

// writeDown records texts together with what is typed on the form.
func (f *LoadForm) writeDown(texts map[string]string) error {
	form := f.entering(texts)
	if _, err := form.FirstRefused(); err != nil {
		return err
	}
	facts := form.Facts()
	if facts.IsEmpty() {
		return nil
	}
	if err := f.write(facts); err != nil {
		return err
	}
	return f.Reload()
}

// Reload reads the load from the book again.
func (f *LoadForm) Reload() error {
	if f.id == "" {
		return nil
	}
	l, err := office.Load(context.Background(), f.session.Desk, f.id)
	if err != nil {
		return err
	}
	f.Book = l
	f.read()
	return nil
}

// Issue records what is typed, settles the load, issues the ticket and prints it. The number is 0
// when it was not issued.
func (f *LoadForm) Issue() (number int64, err error) {
	if !f.Now.CanIssue() {
		return 0, errors.New(f.Now.WhyNotIssue())
	}
	if err := f.Commit(); err != nil {
		return 0, err
	}
	number, err = scalehouse.Issue(context.Background(), f.session.Desk, f.id)
	if err != nil {
		return 0, err
	}
	s := f.Now.settlement
	said := f.session.Say("ticket %d is issued, net %s.", number, s.Net.Printed())
	if s.Quantity != nil {
		said = f.session.Say("ticket %d is issued, net %s, %s.", number, s.Net.Printed(), s.Quantity.Printed())
	}
	f.session.Notify(model.OK, said)
	session.PrintTicket(f.session, number)
	f.session.Changed()
	return number, nil
}
