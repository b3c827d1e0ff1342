package transfer

import (
	"context"
	"iter"
	"maps"
	"slices"

	"tenthpoint/internal/headoffice"
)

// The usual size of a batch: about a second on a slow line, a few milliseconds in the server.
const (
	usualFacts = 500
	usualBytes = 256 << 10
)

// batch gathers lines and sends them when there are enough.
type batch struct {
	s     *sending
	lines []byte
	facts int
	lost  bool // the office turned out to be elsewhere
}

func (s *sending) batch() *batch { return &batch{s: s} }

func (b *batch) add(line headoffice.Line) (err error) {
	if b.lines, err = line.Append(b.lines); err != nil {
		return err
	}
	b.facts++
	if b.facts < orUsual(b.s.o.MostFacts, usualFacts) && len(b.lines) < orUsual(b.s.o.MostBytes, usualBytes) {
		return nil
	}
	_, err = b.send()
	return err
}

func orUsual(asked, usual int) int {
	if asked > 0 {
		return asked
	}
	return usual
}

// send sends what was gathered.
func (b *batch) send() (lost bool, err error) {
	if len(b.lines) == 0 || b.lost {
		return b.lost, nil
	}
	r, err := b.s.office.Receive(b.s.ctx, b.s.letters, b.lines)
	if err != nil {
		return false, err
	}
	b.lost, err = b.s.answered(r)
	b.lines, b.facts = b.lines[:0], 0
	return b.lost, err
}

// textLines are the texts that a book keeps, except those known.
func textLines(ctx context.Context, b Book, known map[string]bool) iter.Seq2[headoffice.Line, error] {
	return func(yield func(headoffice.Line, error) bool) {
		hashes, err := b.EditionHashes(ctx)
		if err != nil {
			yield(headoffice.Line{}, err)
			return
		}
		for _, id := range slices.Sorted(maps.Keys(hashes)) {
			for _, hash := range slices.Sorted(slices.Values(hashes[id])) {
				if known[hash] {
					continue
				}
				own, text, err := b.Edition(ctx, hash)
				if !yield(headoffice.Line{Text: &headoffice.Text{ID: own, SHA256: hash, Text: text}}, err) || err != nil {
					return
				}
			}
		}
	}
}
