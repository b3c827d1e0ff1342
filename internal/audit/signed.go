package audit

import (
	"fmt"
	"strings"

	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/keyring"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/signing"
)

// vouching is the state of the walk: keys and signatures seen so far.
type vouching struct {
	keys     signing.Register
	open     []issue // tickets since the last signature
	unsigned []int64 // numbers of tickets that no signature covers
}

type issue struct{ seq, number int64 }

// vouch follows the keys of the house and checks every signature by the keys in force at its place
// in the journal.
func vouch(v *walk, f journal.Fact) {
	switch {
	case f.Subject == signing.Subject:
		if err := v.vouching.keys.Take(f); err != nil {
			v.found(message.New("Fact %d: %s.", f.Seq, err))
		}
	case f.Subject == signing.SignatureSubject:
		vouchSigned(v, f)
	case f.Kind == load.Issued{}.Kind() && !v.vouching.keys.IsEmpty():
		if issued, err := journal.ReadBody[load.Issued](f.Body); err == nil { // else its load says so
			v.vouching.open = append(v.vouching.open, issue{f.Seq, issued.Number})
		}
	}
}

func vouchSigned(v *walk, f journal.Fact) {
	s, err := journal.ReadBody[signing.Signed](f.Body)
	if err == nil {
		_, err = v.vouching.keys.Verify(s, journal.Head{Seq: f.Seq - 1, Hash: f.Prev})
	}
	if err != nil {
		v.found(message.New("Fact %d: %s.", f.Seq, err))
		return
	}
	v.out.Signatures++
	for _, one := range v.vouching.open {
		if one.seq < s.First {
			v.vouching.unsigned = append(v.vouching.unsigned, one.number)
		}
	}
	v.vouching.open = nil
}

// vouchedBefore takes the keys of a book up to a head.
func vouchedBefore(v *walk, head journal.Head) error {
	facts, err := v.book.FactsOf(v.ctx, signing.Subject)
	if err != nil {
		return err
	}
	for _, f := range facts {
		if f.Seq <= head.Seq {
			vouch(v, f)
		}
	}
	return nil
}

// vouched says which tickets nobody signed, and which signatures are in doubt.
func vouched(v *walk) error {
	for _, one := range v.vouching.open {
		v.vouching.unsigned = append(v.vouching.unsigned, one.number)
	}
	if unsigned := v.vouching.unsigned; len(unsigned) > 0 {
		v.addRemark("%d tickets are unsigned, since no certified key was at hand: %v.", len(unsigned), ranges(unsigned))
	}
	keys, err := keyring.Read(v.ctx, v.book)
	if err != nil {
		return nil // the walk has named the fact
	}
	for _, c := range keys.Computers() {
		if c.Ended == nil || c.Ended.Since == "" {
			continue
		}
		n, err := inDoubt(v, c)
		if err != nil {
			return err
		}
		v.addRemark("%d signatures of the computer %v (%v) since %s prove nothing: %s.", n, c.Computer, c.Key.ID(), v.desk.Local(c.Ended.Since), c.Ended.Cause)
	}
	return nil
}

// inDoubt counts the signatures of a key while it was in strange hands.
func inDoubt(v *walk, c signing.Computer) (n int, err error) {
	for f, err := range v.book.Facts(v.ctx, book.FactFilter{Kind: signing.Signed{}.Kind()}) {
		if err != nil {
			return n, err
		}
		s, err := journal.ReadBody[signing.Signed](f.Body)
		if err == nil && s.By == c.Key.ID() && c.InDoubt(f.At) {
			n++
		}
	}
	return n, nil
}

// mostRanges is the number of ranges that are written out.
const mostRanges = 20

// ranges are numbers as people write them: "12-14, 20".
func ranges(numbers []int64) string {
	var parts []string
	for i := 0; i < len(numbers); {
		last := i
		for last+1 < len(numbers) && numbers[last+1] == numbers[last]+1 {
			last++
		}
		part := fmt.Sprint(numbers[i])
		if last > i {
			part = fmt.Sprintf("%d-%d", numbers[i], numbers[last])
		}
		if parts = append(parts, part); len(parts) == mostRanges && last+1 < len(numbers) {
			return strings.Join(append(parts, "..."), ", ")
		}
		i = last + 1
	}
	return strings.Join(parts, ", ")
}
