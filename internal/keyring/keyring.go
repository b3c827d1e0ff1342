// Package keyring reads what a book says of the keys of its house, and who signed what is in it.
package keyring

import (
	"context"
	"iter"

	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/signing"
)

// Journal is the facts of a book.
type Journal interface {
	Facts(context.Context, book.FactFilter) iter.Seq2[journal.Fact, error]
	FactsOf(ctx context.Context, subject string) ([]journal.Fact, error)
}

// Read is the register of all keys as the book now has it.
func Read(ctx context.Context, b Journal) (*signing.Register, error) {
	facts, err := b.FactsOf(ctx, signing.Subject)
	if err != nil {
		return nil, err
	}
	return Of(facts)
}

// Of is the register by facts about keys, in their order.
func Of(facts []journal.Fact) (*signing.Register, error) {
	r := new(signing.Register)
	for _, f := range facts {
		if err := r.Take(f); err != nil {
			return nil, message.Errorf("fact %d: %w", f.Seq, err)
		}
	}
	return r, nil
}

// Vouched is the signer of a fact. The zero Vouched is that of a house without keys.
type Vouched struct {
	HasKeys  bool // of the house, when the fact was entered
	Computer string
	// Note is the head that was signed when the act of the fact ended; nil where nobody signed.
	Note *signing.Note
}

// Message says who vouches; nothing in a house without keys.
func (v Vouched) Message() message.Text {
	switch {
	case v.Note != nil:
		return message.New("Signed by the computer %v, key %v.", v.Computer, v.Note.By)
	case v.HasKeys:
		return message.New("Unsigned: no certified key was at hand.")
	}
	return message.Text{}
}

// WithNote says the same with the signature itself, for a paper that is kept.
func (v Vouched) WithNote() message.Text {
	if v.Note == nil {
		return v.Message()
	}
	return message.List(" ", v.Message(), message.Name(v.Note.String()))
}

// Over is the signer of a fact: from the signature that its act left behind, if it is a good one.
func Over(ctx context.Context, b Journal, seq int64) (v Vouched, err error) {
	facts, err := b.FactsOf(ctx, signing.Subject)
	if err != nil || len(facts) == 0 || facts[0].Seq > seq {
		return v, err
	}
	v.HasKeys = true
	f, s, found, err := nextSignature(ctx, b, seq)
	if err != nil || !found || s.First > seq {
		return v, err
	}
	var known signing.Register
	for _, one := range facts {
		if one.Seq < f.Seq {
			if err := known.Take(one); err != nil {
				return v, nil // the check of the book says what is wrong with its keys
			}
		}
	}
	head := journal.Head{Seq: f.Seq - 1, Hash: f.Prev}
	if c, err := known.Verify(s, head); err == nil {
		v.Computer, v.Note = c.Computer, &signing.Note{Head: head, By: s.By, Signature: s.Signature}
	}
	return v, nil
}

// nextSignature is the first signature after a fact.
func nextSignature(ctx context.Context, b Journal, seq int64) (f journal.Fact, s signing.Signed, found bool, err error) {
	for f, err := range b.Facts(ctx, book.FactFilter{Kind: s.Kind(), FromSeq: seq + 1}) {
		if err != nil {
			return f, s, false, err
		}
		s, err = journal.ReadBody[signing.Signed](f.Body)
		return f, s, err == nil, err
	}
	return f, s, false, nil
}
