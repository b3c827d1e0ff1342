package simulation

import (
	"testing"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
)

// check holds the book against what was acknowledged, and verifies it.
func (w *world) check() {
	if len(w.desks) == 0 {
		return // it does not open, which was found
	}
	w.out.Checks++
	w.holdsWhatWasAcknowledged()
	w.timesFollow()
	w.weighsWhatWasTyped()
	d := w.desks[0]
	sound, err := audit.Verify(ctx, d.Desk, d.kept, nil)
	if err != nil {
		w.found("the book cannot be verified: %v", err)
	}
	for _, problem := range sound.Problems {
		w.found("not sound: %s", problem)
	}
}

func (w *world) journal() (all []journal.Fact) {
	if len(w.desks) == 0 {
		return nil
	}
	for f, err := range w.desks[0].kept.Facts(ctx, book.FactFilter{}) {
		if err != nil {
			w.found("the journal cannot be read: %v", err)
			return all
		}
		all = append(all, f)
	}
	return all
}

// holdsWhatWasAcknowledged wants every fact that a desk was told is in the book, and no other: an
// act that was refused has written nothing.
func (w *world) holdsWhatWasAcknowledged() {
	all := w.journal()
	for i, f := range w.acknowledged {
		switch {
		case i >= len(all):
			w.found("fact %d (%s of %s) was acknowledged and is gone", f.Seq, f.Kind, f.Subject)
			return
		case all[i].Hash != f.Hash:
			w.found("fact %d (%s of %s) was acknowledged and another is in its place", f.Seq, f.Kind, f.Subject)
			return
		}
	}
	if len(all) > len(w.acknowledged) {
		w.found("fact %d is in the book, and the act was refused", len(w.acknowledged)+1)
	}
}

// timesFollow wants no time to go back but where somebody answered for the clock.
func (w *world) timesFollow() {
	for i, f := range w.acknowledged {
		if i > 0 && f.At < w.acknowledged[i-1].At && f.Kind != (journal.ClockAnswered{}).Kind() {
			w.found("fact %d is of %s, before the one it follows of %s", f.Seq, f.At, w.acknowledged[i-1].At)
			return
		}
	}
}

// weighsWhatWasTyped wants each ticket to have the net that follows from the weights as typed.
func (w *world) weighsWhatWasTyped() {
	for number, pounds := range w.nets {
		l, err := office.Ticket(ctx, w.desks[0], number)
		if err != nil {
			w.found("ticket %d: %v", number, err)
			return
		}
		if net, known := l.Net(); !known || !net.Equal(quantity.Int(pounds, quantity.Lb)) {
			w.found("ticket %d weighs %s net, and %d lb were typed", number, net, pounds)
		}
	}
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}
