package scalehouse

import (
	"context"
	"slices"

	"tenthpoint/internal/journal"
	"tenthpoint/internal/keyring"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/published"
	"tenthpoint/internal/receipt"
	"tenthpoint/internal/signing"
)

// signed are the facts after which paper leaves the house. An act with one of them leaves a signature
// behind, which covers the whole book up to it; the signatures of a list of past loads are one.
var signed = []string{
	load.Issued{}.Kind(), load.Voided{}.Kind(), office.DayClosed{}.Kind(), paysheet.Sheet{}.Kind(), paysheet.Payment{}.Kind(), paysheet.Handover{}.Kind(), receipt.Receipt{}.Kind(), published.Publication{}.Kind(),
}

// enterFact appends a fact after checking its texts. Facts of earlier versions are read whatever they
// hold.
func enterFact(w *Batch, d journal.Entry) (journal.Fact, error) {
	if err := checkTexts(d.Body); err != nil {
		return journal.Fact{}, err
	}
	f, err := w.tx.Append(d)
	if err != nil {
		return f, err
	}
	if w.first == 0 {
		w.first = f.Seq
	}
	w.head = journal.HeadOf(f)
	w.leavesPaper = w.leavesPaper || slices.Contains(signed, f.Kind)
	return f, nil
}

// sign signs what the batch leaves behind, where this computer has a certified key. Without one
// nothing stops: the tickets are unsigned, and say so.
func sign(w *Batch) error {
	if !w.leavesPaper || w.desk.key.IsZero() {
		return nil
	}
	facts, err := w.tx.FactsOf(signing.Subject)
	if err != nil || len(facts) == 0 {
		return err
	}
	if w.desk.ring.of != len(facts) {
		keys, err := keyring.Of(facts)
		if err != nil {
			return nil // the check of the book says what is wrong with its keys
		}
		w.desk.ring = ring{len(facts), keys.Counts(w.desk.key.Public())}
	}
	if !w.desk.ring.counts {
		return nil
	}
	s, err := w.desk.key.SignAct(w.first, w.head)
	if err != nil {
		return err
	}
	return AppendIn(w, s.Kind(), signing.SignatureSubject, s)
}

// ring is whether the desk's key counts, by so many facts about keys.
type ring struct {
	of     int
	counts bool
}

// RecordKey records a fact about keys: a key of the house, the certificate of a computer, the end of
// a key.
func RecordKey(ctx context.Context, at Actor, f journal.Kinded) error {
	return at.do(ctx, func(w *Batch) error {
		if err := w.desk.MayManage("Changing the keys of the house"); err != nil {
			return err
		}
		facts, err := w.tx.FactsOf(signing.Subject)
		if err != nil {
			return err
		}
		keys, err := keyring.Of(facts)
		if err != nil {
			return err
		}
		body, err := journal.Canonical(f)
		if err != nil {
			return err
		}
		entry := w.entry(f.Kind(), signing.Subject, body)
		if err := keys.Take(journal.Fact{At: entry.At, Kind: entry.Kind, Body: entry.Body}); err != nil {
			return err
		}
		_, err = enterFact(w, entry)
		return err
	})
}

// KeyOf is the key of the desk's computer; zero where it has none.
func KeyOf(d *Desk) signing.Key { return d.key }

// TicketKey is the key that signs the squares of slips printed here: that of the desk's computer, where
// the house has certified it, else none. House is the key of the house.
func TicketKey(ctx context.Context, d *Desk) (key signing.Key, house signing.Public) {
	keys, err := keyring.Read(ctx, d.book)
	if err != nil {
		return key, house // the check of the book says what is wrong with its keys
	}
	if !d.key.IsZero() && keys.Counts(d.key.Public()) {
		key = d.key
	}
	return key, keys.House()
}

// UseKey gives the desk the key of its computer.
func UseKey(d *Desk, k signing.Key) { d.key, d.ring = k, ring{} }

// HeadText is a head as it is noted outside the book, signed where this computer has a certified key.
func (d *Desk) HeadText(h journal.Head) string {
	keys, err := keyring.Read(context.Background(), d.book)
	if err != nil || d.key.IsZero() || !keys.Counts(d.key.Public()) {
		return h.String()
	}
	n, err := d.key.NoteHead(h)
	if err != nil {
		return h.String()
	}
	return n.String()
}
