package scalehouse

import (
	"context"
	"maps"
	"reflect"
	"slices"

	"tenthpoint/internal/book"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/office"
	"tenthpoint/internal/opening"
	"tenthpoint/internal/quantity"
)

// Actor runs acts: a desk, where it is a transaction of its own, or in a batch, where
// it is part of the current one.
type Actor interface {
	do(ctx context.Context, act func(*Batch) error) error
}

// result does an act that answers with something.
func result[T any](ctx context.Context, at Actor, act func(*Batch) (T, error)) (out T, err error) {
	err = at.do(ctx, func(w *Batch) error {
		out, err = act(w)
		return err
	})
	return out, err
}

// Batch is a group of acts in one transaction. The loads touched stay replayed until it ends, and
// their rows are updated once, at the end.
type Batch struct {
	desk    *Desk
	tx      book.Tx
	loads   map[string]*load.Load
	tickets map[int64]string        // number -> load, of tickets issued in this work
	touched map[string]bool         // loads whose rows may need an update
	rows    map[string]book.LoadRow // rows as the lists have them
	// doubted caches the flags of meters by meter and day.
	doubted map[string][]moisture.Flag
	// pits caches the pits and bins, which every ticket asks for its path.
	pits map[string]elevator.Bin
	// recorded says whether master data were written, which the desk then reloads.
	recorded bool
	at       string // the time of its latest fact
	lastAt   string // the time of the last fact before this work

	first       int64        // the number of its first fact
	head        journal.Head // of the book, after its latest fact
	leavesPaper bool
}

// Batch does several acts in one transaction, as an import does.
func (d *Desk) Batch(ctx context.Context, acts func(*Batch) error) error { return d.do(ctx, acts) }

// do does acts in a transaction of their own. What they change of the set-up and
// the people is in force after it.
func (d *Desk) do(ctx context.Context, acts func(*Batch) error) error {
	recorded := false
	err := d.book.Write(ctx, func(tx book.Tx) error {
		w := &Batch{
			desk: d, tx: tx, loads: map[string]*load.Load{}, tickets: map[int64]string{},
			touched: map[string]bool{}, rows: map[string]book.LoadRow{},
		}
		if err := takeTime(w); err != nil {
			return err
		}
		pins, err := RecordsIn[elevator.PIN](w) // another desk may have given one
		if err != nil {
			return err
		}
		d.proofs.usePINs(pins)
		if err := acts(w); err != nil {
			return err
		}
		recorded = w.recorded
		if err := w.renewRows(""); err != nil {
			return err
		}
		return sign(w)
	})
	if err != nil || !recorded {
		return err
	}
	return d.reload(ctx)
}

// do does acts as part of the batch.
func (w *Batch) do(_ context.Context, acts func(*Batch) error) error { return acts(w) }

// Do does acts where the actor is: in a transaction of their own, or as part of a batch.
func Do(ctx context.Context, at Actor, acts func(*Batch) error) error { return at.do(ctx, acts) }

// Desk is the desk that a batch works at.
func (w *Batch) Desk() *Desk { return w.desk }

// renewRows updates the rows of all loads touched, except one where it is named.
func (w *Batch) renewRows(except string) error {
	for _, id := range slices.Sorted(maps.Keys(w.touched)) {
		if id == except {
			continue
		}
		if err := renewRow(w, id); err != nil {
			return err
		}
		delete(w.touched, id)
	}
	return nil
}

// renewRow updates the row of a load. A weight alone changes nothing in a row, and a driver is
// waiting: such a row is skipped.
func renewRow(w *Batch, id string) error {
	is := office.RowOf(w.loads[id])
	was, known := w.rows[id]
	if known && reflect.DeepEqual(was, is) {
		return nil
	}
	if known && isHere(was) && !isHere(is) {
		if err := w.tx.DropDrafts(id); err != nil {
			return err
		}
	}
	w.rows[id] = is
	return w.tx.PutLoad(is)
}

// isHere reports whether the load of a row is on the yard.
func isHere(r book.LoadRow) bool {
	return r.Phase == string(load.OnYard) || r.Phase == string(load.Ready)
}

// entry returns a fact of this batch, at the time of its own act and never before the previous
// fact.
func (w *Batch) entry(kind, subject string, body []byte) journal.Entry {
	w.at = max(w.at, w.desk.Now())
	return journal.Entry{
		At: w.at, Who: w.desk.Signature(), Desk: w.desk.name,
		Kind: kind, Subject: subject, Body: body,
	}
}

// load replays a load inside the transaction.
func (w *Batch) load(id string) (*load.Load, error) {
	if l, ok := w.loads[id]; ok {
		return l, nil
	}
	facts, err := w.tx.FactsOf(office.LoadSubject(id))
	if err != nil {
		return nil, err
	}
	l, err := office.Replay(id, facts)
	if err != nil {
		return nil, err
	}
	w.loads[id], w.rows[id] = l, office.RowOf(l)
	return l, office.AttachCharts(context.Background(), w.desk, l)
}

// ticket finds a load by its ticket number inside the transaction.
func (w *Batch) ticket(number int64) (*load.Load, error) {
	if id, ok := w.tickets[number]; ok {
		return w.load(id)
	}
	rows, err := w.tx.Loads(book.LoadFilter{Ticket: number})
	if err != nil {
		return nil, err
	}
	if len(rows) == 0 {
		return nil, office.NoTicket(number)
	}
	return w.load(rows[0].ID)
}

// append applies a fact to a load and appends it to the journal; the load's row
// is due.
func (w *Batch) append(l *load.Load, f load.Fact) (journal.Fact, error) {
	body, err := journal.Canonical(f)
	if err != nil {
		return journal.Fact{}, err
	}
	entry := w.entry(f.Kind(), office.LoadSubject(l.ID), body)
	stamp := load.Stamp{At: entry.At, Who: entry.Who, Desk: entry.Desk}
	if err := l.Apply(load.Stamped{Fact: f, Stamp: stamp}); err != nil {
		return journal.Fact{}, err
	}
	w.touched[l.ID] = true
	return enterFact(w, entry)
}

// appendFact appends a fact about anything but a load.
func (w *Batch) appendFact(kind, subject string, f any) (journal.Fact, error) {
	body, err := journal.Canonical(f)
	if err != nil {
		return journal.Fact{}, err
	}
	return enterFact(w, w.entry(kind, subject, body))
}

// act lets a fact happen to a load, if the person may.
func (w *Batch) act(id string, f load.Fact, may error) error {
	if may != nil {
		return may
	}
	l, err := w.load(id)
	if err != nil {
		return err
	}
	_, err = w.append(l, f)
	return err
}

// BusinessDay is the day an act counts in: today, or the first open day.
func (w *Batch) BusinessDay() (quantity.Date, error) { return w.openDay(w.desk.Today()) }

// openDay returns a day, or the first one after the last closed day where that is later. The sheet
// of a closed day has the position and the ticket number it began with, so nothing may count before
// it: not after a clock was set back, nor on an earlier day that was never closed.
func (w *Batch) openDay(day quantity.Date) (quantity.Date, error) {
	text, err := w.tx.LastRecord(office.DayClosed{}.Kind())
	if err != nil || text == "" {
		return day, err
	}
	closed, err := office.ListedDay(text)
	if err == nil && !day.After(closed) {
		day = closed.AddDays(1)
	}
	return day, err
}

// HasRecord reports whether a record of the master data, or a day's closing, is recorded under an
// id.
func (w *Batch) HasRecord(kind, id string) (bool, error) { return w.tx.HasRecord(kind, id) }

// RecordsIn are the records of a kind as a batch has left them so far.
func RecordsIn[T journal.Kinded](w *Batch) ([]T, error) { return book.RecordsIn[T](w.tx) }

// TicketIn finds a load by its ticket number inside a batch; one that is being corrected is
// refused. A number of an opening balance finds its lot.
func TicketIn(w *Batch, number int64) (*load.Load, error) {
	if opening.IsLot(number) {
		return lotIn(w, number)
	}
	l, err := w.ticket(number)
	if err != nil {
		return nil, err
	}
	return l, w.notUnderCorrection(number)
}

// lotIn is a lot of an opening balance, as the load that came under it.
func lotIn(w *Batch, number int64) (*load.Load, error) {
	all, err := RecordsIn[opening.Opening](w)
	if err != nil {
		return nil, err
	}
	if l := opening.LoadNumbered(all, number); l != nil {
		return l, nil
	}
	return nil, office.NoTicket(number)
}

// IssuedIn finds a load by its ticket number inside a batch, whatever became of the ticket since.
func IssuedIn(w *Batch, number int64) (*load.Load, error) { return w.ticket(number) }

// AbsentIn is [office.AbsentTickets] as a batch has left it so far.
func AbsentIn(w *Batch) (missing, gone []int64, err error) {
	if err := w.renewRows(""); err != nil {
		return nil, nil, err
	}
	return office.AbsentTickets(w.tx)
}

// FactsIn are the facts of a subject as a batch has left them so far.
func FactsIn(w *Batch, subject string) ([]journal.Fact, error) { return w.tx.FactsOf(subject) }

// AppendIn appends a fact about anything but a load.
func AppendIn(w *Batch, kind, subject string, f any) error {
	_, err := w.appendFact(kind, subject, f)
	return err
}

// OpenDay is a day as far as anything may still count in it; a closed one is refused.
func OpenDay(w *Batch, day quantity.Date) error {
	first, err := w.openDay(day)
	if err == nil && first != day {
		err = message.Refused.Errorf("%s is closed, and nothing counts in it any more. The first open day is %s", day, first)
	}
	return err
}

// NextIn issues the next number of a series inside a batch.
func NextIn(w *Batch, series string) (int64, error) { return w.tx.NextNumber(series) }

// KeepIn keeps the text of a dated file by its SHA-256 inside a batch.
func KeepIn(w *Batch, id, sha string, text []byte) error {
	return w.tx.KeepEdition(id, sha, string(text))
}

// onYardWith returns the load on the yard that is to replace a ticket, by the filter; empty when
// there is none.
func (w *Batch) onYardWith(f book.LoadFilter) (id string, err error) {
	if err := w.renewRows(""); err != nil {
		return "", err
	}
	f.Phases = []string{string(load.OnYard), string(load.Ready)}
	rows, err := w.tx.Loads(f)
	if err != nil || len(rows) == 0 {
		return "", err
	}
	return rows[len(rows)-1].ID, nil
}
