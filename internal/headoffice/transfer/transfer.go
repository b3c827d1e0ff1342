// Package transfer carries a site's chain to its head office: over a line, or as a file on a stick.
//
// Sending needs no memory of its own. The office says what it has, the book is asked whether it is
// the same, and what follows is sent in batches, each kept whole or not at all. The checkpoint that a
// site keeps is for one thing only: to notice an office that has lost what it once acknowledged.
package transfer

import (
	"context"
	"iter"

	"tenthpoint/internal/book"
	"tenthpoint/internal/headoffice"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

// Book is the book of a site.
type Book interface {
	Facts(context.Context, book.FactFilter) iter.Seq2[journal.Fact, error]
	Head(context.Context) (last journal.Fact, some bool, err error)
	EditionHashes(context.Context) (map[string][]string, error)
	Edition(ctx context.Context, hash string) (id, text string, err error)
}

// Office is the head office.
type Office interface {
	Chains(ctx context.Context, letters string) ([]headoffice.Chain, error)
	Holds(ctx context.Context, letters string, head journal.Head) (bool, error)
	TextHashes(ctx context.Context, letters string) (map[string]bool, error)
	Greet(ctx context.Context, letters string, head journal.Head) error
	NoteBehind(ctx context.Context, letters string, head journal.Head) error
	Receive(ctx context.Context, letters string, lines []byte) (headoffice.Receipt, error)
}

// Options are the options of a sending.
type Options struct {
	// Acknowledged is the head that the office acknowledged last, by the site's own checkpoint.
	Acknowledged journal.Head
	// Progress is told the number of the last fact kept and that of the last in the book; may be nil.
	Progress func(at, of int64)
	// Keep keeps a new checkpoint; may be nil.
	Keep func(journal.Head) error
	// Batch limits; zero takes the usual ones.
	MostFacts, MostBytes int
}

// Sent is the outcome of a sending.
type Sent struct {
	From, To journal.Head // the office's head before and after
	Branch   int          // of the site's chains, the one that the book is
	Forked   bool         // this sending began it
	Letters  string       // under which the office says that the chain goes on; empty while nobody said
	// Lost is the number of facts the office had acknowledged once and no longer has: it was restored from
	// an older copy, or a standby took over. They were sent again.
	Lost int64
}

// Behind is a book that is an older copy of what the office has.
type Behind struct {
	Letters string
	Book    journal.Head
	Office  journal.Head
}

// Error is the fault as a sentence.
func (b Behind) Error() string { return b.Said().String() }

// Said is the fault as a sentence.
func (b Behind) Said() message.Text {
	return message.New("This book is an older copy: it ends with fact %d, and the head office has facts of %v up to %d. "+
		"Issue nothing in it. Take the book as the office has it with \"tenth office rebuild\", or look for the newer file.", b.Book.Seq, b.Letters, b.Office.Seq)
}

// sending is one sending under way.
type sending struct {
	ctx     context.Context
	book    Book
	office  Office
	letters string
	o       Options
	head    journal.Head
	out     Sent
}

// mostStarts is the number of times a sending finds its place anew, where the office changed meanwhile.
const mostStarts = 3

// Send sends all that the office lacks of a book. It may be interrupted anywhere and called again.
func Send(ctx context.Context, b Book, office Office, letters string, o Options) (Sent, error) {
	s := &sending{ctx: ctx, book: b, office: office, letters: letters, o: o}
	last, some, err := b.Head(ctx)
	if err != nil || !some {
		return s.out, err
	}
	s.head = journal.HeadOf(last)
	if err := office.Greet(ctx, letters, s.head); err != nil {
		return s.out, err
	}
	if err := s.texts(); err != nil {
		return s.out, err
	}
	for range mostStarts {
		done, err := s.facts()
		if err != nil || done {
			return s.out, err
		}
	}
	return s.out, message.Storage.Errorf("the head office changed while facts were sent. Send again")
}

// facts sends facts from where the office is. It is not done where the office turned out to be
// elsewhere.
func (s *sending) facts() (done bool, err error) {
	from, err := s.start()
	if err != nil {
		return false, err
	}
	s.out.From, s.out.To = from, from
	if err := s.compareCheckpoint(from); err != nil {
		return false, err
	}
	return s.batches(from.Seq + 1)
}

// compareCheckpoint notes how much of what the office acknowledged it no longer has.
func (s *sending) compareCheckpoint(from journal.Head) error {
	if s.o.Acknowledged.Seq <= from.Seq {
		return nil
	}
	ours, err := s.factAt(s.o.Acknowledged.Seq)
	if err == nil && s.o.Acknowledged.Holds(ours) {
		s.out.Lost = max(s.out.Lost, s.o.Acknowledged.Seq-from.Seq)
	}
	return err
}

// factAt is a fact of the book by number; an empty one where the book has none.
func (s *sending) factAt(seq int64) (journal.Fact, error) {
	for f, err := range s.book.Facts(s.ctx, book.FactFilter{FromSeq: seq, ToSeq: seq}) {
		return f, err
	}
	return journal.Fact{}, nil
}

// texts sends the editions, charts and rules that the office lacks.
func (s *sending) texts() error {
	kept, err := s.office.TextHashes(s.ctx, s.letters)
	if err != nil {
		return err
	}
	batch := s.batch()
	for line, err := range textLines(s.ctx, s.book, kept) {
		if err != nil {
			return err
		}
		if err := batch.add(line); err != nil {
			return err
		}
	}
	_, err = batch.send()
	return err
}

// batches sends facts from a number on.
func (s *sending) batches(from int64) (done bool, err error) {
	batch := s.batch()
	for f, err := range s.book.Facts(s.ctx, book.FactFilter{FromSeq: from}) {
		if err != nil {
			return false, err
		}
		if err := batch.add(headoffice.Line{Fact: &f}); err != nil || batch.lost {
			return false, err
		}
	}
	lost, err := batch.send()
	return !lost && err == nil, err
}

// answered takes an answer of the office to a batch. It is lost where the office is elsewhere.
func (s *sending) answered(r headoffice.Receipt) (lost bool, err error) {
	switch r.Outcome {
	case headoffice.Kept, headoffice.Fork:
	case headoffice.Gap, headoffice.Apart:
		return true, nil
	case headoffice.Broken:
		return false, message.Storage.Errorf("fact %d of this book is not what its hash says, and the head office did not take it. Check the book with \"tenth verify\"", r.Head.Seq)
	default:
		return false, message.Refused.Errorf("the head office does not take facts of %v from this role. Check the letters, and the role you sign in as", s.letters)
	}
	s.out.Forked = s.out.Forked || r.Outcome == headoffice.Fork
	s.out.To, s.out.Branch = r.Head, r.Branch
	if s.o.Progress != nil {
		s.o.Progress(r.Head.Seq, s.head.Seq)
	}
	if s.o.Keep != nil && r.Head.Seq > 0 {
		return false, s.o.Keep(r.Head)
	}
	return false, nil
}
