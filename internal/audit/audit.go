// Package audit verifies a whole book: it walks the journal from its first fact, recalculates every
// ticket and compares all read models with their facts. It shares no cache with the desk it is
// started from.
package audit

import (
	"context"
	"iter"
	"maps"
	"slices"
	"sync"

	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/law"
	"tenthpoint/internal/levy"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/office"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/tariff"
)

// Book is the book to verify: everything that queries read, and the checks that only the engine can
// do.
type Book interface {
	office.Book
	LoadIDs(context.Context) ([]string, error)
	// FactsBySubject are the facts of all subjects with a prefix, subject by subject,
	// and EachLoad the rows of all loads with their owners by id, both in the order of
	// their bytes.
	FactsBySubject(ctx context.Context, prefix string) iter.Seq2[journal.Fact, error]
	EachLoad(context.Context) iter.Seq2[book.LoadRow, error]
	Owners(ctx context.Context, load string) ([]string, error)
	Ownerships(context.Context) ([]string, error)
	AllRecords(context.Context) ([]book.Record, error)
	LastNumber(ctx context.Context, series string) (int64, error)
	Series(context.Context) ([]string, error)
	// VerifyFile checks the engine's schema and triggers, VerifyEditions the texts against their
	// hashes, VerifyStock the position against the loads.
	VerifyFile(context.Context) ([]message.Text, error)
	VerifyEditions(context.Context) (problems []message.Text, count int64, err error)
	VerifyStock(context.Context) ([]message.Text, error)
}

// Soundness is the result of verifying the whole book.
type Soundness struct {
	Facts, Loads, Tickets, Settlements, Editions int64
	// Signatures are those by certified keys.
	Signatures int64
	// Problems are sentences, each naming the fact, load or ticket. None means
	// the book is sound.
	Problems []message.Text
	// Remarks are notes for an examiner about a book that is still sound: wrong clocks, late
	// acts that a manager explained.
	Remarks []message.Text
}

// Verify walks the whole book: the file and its guards, the chain of facts, every edition kept,
// every load replayed and its settlement recalculated under the edition kept with it, every row the
// desk reads compared with the facts it was made from, every closed day's sheet made again, every
// number accounted for. Progress is told after each load and may be nil; ending the context stops
// the walk.
//
// The book may be in use meanwhile: what is entered after the walk began is
// left to the next one.
func Verify(ctx context.Context, d office.Desk, b Book, progress func(done int64)) (Soundness, error) {
	v := newWalk(ctx, d, b, progress)
	for _, walk := range []func() error{v.file, v.keptEditions, v.firstNumbers, v.journal, v.loads, v.strayRows, v.closedDays, func() error { return openings(v) }, func() error { return sheets(v) }, func() error { return payments(v) }, func() error { return receipts(v) }, v.standingRows, v.stock, v.lastNumbers, v.successions, func() error { return vouched(v) }} {
		if err := walk(); err != nil {
			return v.out, err
		}
	}
	return v.out, nil
}

func newWalk(ctx context.Context, d office.Desk, b Book, progress func(done int64)) *walk {
	return &walk{
		desk: d, book: b, ctx: ctx, progress: progress,
		editions: map[string]*rates.Edition{}, tickets: map[int64]string{},
		inPlace: map[int64]int64{}, superseded: map[int64]int64{},
		seen: map[string]bool{}, ended: map[int64]bool{}, samples: map[int64]bool{}, records: map[string]journal.Fact{},
	}
}

// walk is the state of one verification.
type walk struct {
	desk     office.Desk
	book     Book
	ctx      context.Context
	progress func(int64)
	out      Soundness

	reading     sync.Mutex                // of editions
	editions    map[string]*rates.Edition // read again from the book, by hash
	seen        map[string]bool           // loads opened before the walk came to the end of the journal
	records     map[string]journal.Fact   // last fact of every other subject
	lastSeq     int64                     // the end of the chain as walked
	lastAt      string                    // the time of that fact
	tickets     map[int64]string          // number -> load
	inPlace     map[int64]int64           // number -> the ticket it replaced
	ended       map[int64]bool            // tickets void or corrected
	superseded  map[int64]int64           // number -> the ticket that took its place
	loadNo      int64                     // highest load id
	lastDispute int64
	passed      passed // numbers that were given out where the book did not see it
	// lastMovement is the highest number of a movement of grain.
	lastMovement int64
	lastPayment  int64
	lastReceipt  int64
	lastLot      int64            // of opening balances, counted from 1
	lastSheet    int64            // highest number of a settlement sheet
	samples      map[int64]bool   // numbers of samples issued by the book
	begun        map[string]int64 // series as they were before the walk
	vouching     vouching
}

func (v *walk) found(problems ...message.Text) {
	v.out.Problems = append(v.out.Problems, problems...)
}

func (v *walk) addRemark(format string, args ...any) {
	v.out.Remarks = append(v.out.Remarks, message.New(format, args...))
}

// ordered reports times that go back. Since the program asks about its clock only an answer about
// it does so; books of earlier versions have more, which is not their keeper's fault.
func (v *walk) ordered(f journal.Fact) {
	if f.Kind == (journal.ClockAnswered{}).Kind() {
		answer, err := journal.ReadBody[journal.ClockAnswered](f.Body)
		if err != nil {
			v.found(message.New("Fact %d: %s.", f.Seq, err))
			return
		}
		v.addRemark("Fact %d: the clock stood at %s after a fact of %s. %v answered for it: %v", f.Seq, v.desk.Local(f.At), v.desk.Local(answer.Last), f.Who, answer.Reason)
		return
	}
	if f.At < v.lastAt {
		v.addRemark("Fact %d is of %s, before fact %d of %s: the clock was set back, and nobody answered for it.", f.Seq, v.desk.Local(f.At), v.lastSeq, v.desk.Local(v.lastAt))
	}
}

func (v *walk) file() error {
	problems, err := v.book.VerifyFile(v.ctx)
	v.found(problems...)
	return err
}

func (v *walk) stock() error {
	problems, err := v.book.VerifyStock(v.ctx)
	v.found(problems...)
	return err
}

func (v *walk) keptEditions() error {
	problems, count, err := v.book.VerifyEditions(v.ctx)
	v.out.Editions = count
	v.found(problems...)
	if err != nil {
		return err
	}
	kept, err := v.book.EditionHashes(v.ctx)
	for _, id := range slices.Sorted(maps.Keys(kept)) {
		for _, hash := range kept[id] {
			v.named(id, hash)
		}
	}
	return err
}

// named checks that a stored text is an edition, a chart or a rule of law of the name it is stored
// under.
func (v *walk) named(id, hash string) {
	_, text, err := v.book.Edition(v.ctx, hash)
	if err != nil {
		v.found(message.New("The text kept as %q with the hash %.12s cannot be read: %s.", id, hash, err))
		return
	}
	if own := v.ownName(text); own != id {
		v.found(message.New("The text kept as %q with the hash %.12s is no edition, chart or law of that name; it calls itself %q.", id, hash, own))
	}
}

// ownName returns the id inside a text that the book keeps; empty if it is not a known kind of
// text.
func (v *walk) ownName(text string) string {
	if e, err := rates.Read("", []byte(text)); err == nil {
		return e.ID
	}
	if c, err := chart.Read("", []byte(text)); err == nil {
		return c.ID
	}
	if f, err := law.Open("", []byte(text)); err == nil {
		return f.ID
	}
	if e, err := tariff.Read("", []byte(text)); err == nil {
		return e.ID
	}
	if l, err := levy.Read("", []byte(text)); err == nil {
		return l.ID
	}
	kept, err := law.Resolve(text, func(hash string) (string, error) {
		_, text, err := v.book.Edition(v.ctx, hash)
		return text, err
	})
	if err == nil && len(kept.Files()) > 0 {
		return law.ManifestID
	}
	return ""
}

// journal checks the chain and collects its facts by kind.
func (v *walk) journal() error {
	problems, count, err := journal.Check(v.noting(v.book.Facts(v.ctx, book.FactFilter{}), 1))
	v.out.Facts = count
	v.found(problems...)
	return err
}

// noting notes facts from a number on, as they are read.
func (v *walk) noting(facts iter.Seq2[journal.Fact, error], from int64) iter.Seq2[journal.Fact, error] {
	return func(yield func(journal.Fact, error) bool) {
		for f, err := range facts {
			if err == nil && f.Seq >= from {
				v.note(f)
			}
			if !yield(f, err) {
				return
			}
		}
	}
}

func (v *walk) note(f journal.Fact) {
	v.ordered(f)
	v.lastSeq, v.lastAt = f.Seq, f.At
	vouch(v, f)
	if f.Kind == (load.Sampled{}).Kind() {
		noteSample(v, f.Body)
	}
	id, isLoad := office.LoadOfSubject(f.Subject)
	switch {
	case !isLoad:
		v.records[f.Subject] = f
		noteDispute(v, f.Subject)
		noteMovement(v, f)
		v.passed.note(v, f)
	case !v.seen[id]:
		v.seen[id] = true
		v.loadNo = max(v.loadNo, int64(office.LoadNumber(id)))
	}
}
