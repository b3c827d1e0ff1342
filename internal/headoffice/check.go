package headoffice

import (
	"iter"

	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/signing"
)

// Checked is the result of checking the chain of a site.
type Checked struct {
	Facts    int64
	Problems []message.Text
	// Signed is the last head that a computer of the house signed; zero where none did.
	Signed journal.Head
}

// Check walks a chain from its first fact: it must be unbroken, end where the office says, and hold
// what every signature in it vouches for. Said is the head that the site last said its book has.
func Check(facts iter.Seq2[journal.Fact, error], ends, said journal.Head) (c Checked, err error) {
	var keys signing.Register
	var last journal.Fact
	walk := func(yield func(journal.Fact, error) bool) {
		for f, err := range facts {
			if err == nil {
				c.signature(&keys, f, journal.HeadOf(last))
				if f.Seq == said.Seq && !said.Holds(f) {
					c.Problems = append(c.Problems, message.New("The site said that fact %d of its book begins with %.12s; here it is another.", said.Seq, said.Hash))
				}
				last = f
			}
			if !yield(f, err) {
				return
			}
		}
	}
	problems, count, err := journal.Check(walk)
	c.Facts, c.Problems = count, append(problems, c.Problems...)
	if err == nil && !ends.Holds(last) {
		c.Problems = append(c.Problems, message.New("The chain ends with fact %d, and the office has fact %d as its head.", last.Seq, ends.Seq))
	}
	return c, err
}

// signature takes what a fact says of keys, and verifies the head that it signs.
func (c *Checked) signature(keys *signing.Register, f journal.Fact, before journal.Head) {
	if f.Subject != signing.Subject {
		return
	}
	err := keys.Take(f)
	if f.Kind == (signing.Signed{}).Kind() {
		var signed signing.Signed
		if signed, err = journal.ReadBody[signing.Signed](f.Body); err == nil {
			_, err = keys.Verify(signed, before)
		}
		if err == nil {
			c.Signed = before
		}
	}
	if err != nil {
		c.Problems = append(c.Problems, message.New("Fact %d: %v.", f.Seq, message.Of(err)))
	}
}
