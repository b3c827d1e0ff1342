package scalehouse

import (
	"cmp"
	"context"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/law"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
)

// Laws are the published rules in use, by the rule set of the elevator and its place.
func (d *Desk) Laws() *law.Set { return d.laws.For(cmp.Or(d.profile.Rules, "us")).In(d.profile.Place) }

// UseLaws replaces the published rules for loads without a ticket.
func (d *Desk) UseLaws(laws *law.Set) { d.laws = laws }

// TablesOn are the published rules in force on a day.
func (d *Desk) TablesOn(day quantity.Date) (*grain.Tables, error) {
	l := d.Laws().On(day)
	return d.remembered(hashOf(l), func() (*grain.Tables, error) { return grain.TablesOf(l) })
}

// TablesKept are the published rules that the book keeps under a hash; an empty
// one is the first law's.
func (d *Desk) TablesKept(ctx context.Context, hash string) (*grain.Tables, error) {
	return d.remembered(hash, func() (*grain.Tables, error) { return office.KeptTables(ctx, d.book, hash) })
}

func (d *Desk) remembered(hash string, read func() (*grain.Tables, error)) (*grain.Tables, error) {
	if hash == "" {
		return grain.First(), nil
	}
	d.reading.Lock()
	defer d.reading.Unlock()
	if t, ok := d.tables[hash]; ok {
		return t, nil
	}
	t, err := read()
	if err == nil {
		d.tables[hash] = t
	}
	return t, err
}

// hashOf is the hash of a law as tickets keep it: none for the first.
func hashOf(l law.Law) string {
	if l.Hash() == law.First().Hash() {
		return ""
	}
	return l.Hash()
}

// keepLaw stores the texts of the rules in force for a load in the book, and returns the hash that
// its ticket keeps.
func keepLaw(w *Batch, day quantity.Date) (hash string, err error) {
	l := w.desk.Laws().On(day)
	if hash = hashOf(l); hash == "" {
		return "", nil
	}
	for _, f := range l.OfTickets() {
		if err := w.tx.KeepEdition(f.ID, f.Hash, string(f.Text)); err != nil {
			return "", err
		}
	}
	return hash, w.tx.KeepEdition(law.ManifestID, hash, l.Manifest())
}
