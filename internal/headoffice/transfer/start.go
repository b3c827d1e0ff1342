package transfer

import (
	"cmp"
	"slices"

	"tenthpoint/internal/headoffice"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

// start finds the last fact that book and office share and from which the book goes on.
//
// Where a branch of the office ends inside the book, that is the place. Where the office has the
// book's head and more behind it, the book is an older copy, which is an error. Else the two have
// parted, and the place is searched by halves: what follows it becomes another branch.
func (s *sending) start() (journal.Head, error) {
	chains, err := s.office.Chains(s.ctx, s.letters)
	if err != nil {
		return journal.Head{}, err
	}
	if len(chains) == 0 {
		return journal.Head{}, message.NotFound.Errorf("the head office has no site %v. Check the letters, or have the site added with \"tenth office add\"", s.letters)
	}
	slices.SortFunc(chains, func(a, b headoffice.Chain) int { return cmp.Compare(b.Head.Seq, a.Head.Seq) })
	for _, c := range chains {
		inside, err := s.isOurs(c.Head)
		if err != nil || inside {
			s.out.Branch, s.out.Letters = c.Branch, c.Letters
			return c.Head, err
		}
	}
	older, err := s.office.Holds(s.ctx, s.letters, s.head)
	if err != nil {
		return journal.Head{}, err
	}
	if older {
		behind := Behind{Letters: s.letters, Book: s.head, Office: chains[0].Head}
		if err := s.office.NoteBehind(s.ctx, s.letters, s.head); err != nil {
			return journal.Head{}, err
		}
		return journal.Head{}, behind
	}
	return s.lastShared(min(s.head.Seq, chains[0].Head.Seq))
}

// isOurs reports whether a head of the office is a fact of the book, or the beginning of every book.
func (s *sending) isOurs(head journal.Head) (bool, error) {
	if head.Seq == 0 || head.Seq > s.head.Seq {
		return head.Seq == 0, nil
	}
	ours, err := s.factAt(head.Seq)
	return err == nil && head.Holds(ours), err
}

// lastShared searches the last fact of the book, up to a number, that the office has.
func (s *sending) lastShared(most int64) (shared journal.Head, err error) {
	low, high := int64(0), most
	for low < high {
		middle := low + (high-low+1)/2
		ours, err := s.factAt(middle)
		if err != nil {
			return shared, err
		}
		head := journal.HeadOf(ours)
		holds, err := s.office.Holds(s.ctx, s.letters, head)
		if err != nil {
			return shared, err
		}
		if holds {
			low, shared = middle, head
		} else {
			high = middle - 1
		}
	}
	return shared, nil
}
