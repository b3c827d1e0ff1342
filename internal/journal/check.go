package journal

import (
	"iter"
	"tenthpoint/internal/message"
)

// Check walks facts in order of their number and returns every break in the chain, naming the fact,
// and the number of facts read. The error is not about the chain: it says the facts could not be
// read to the end.
func Check(facts iter.Seq2[Fact, error]) (problems []message.Text, count int64, err error) {
	var last *Fact
	for f, err := range facts {
		if err != nil {
			return problems, count, err
		}
		count++
		problems = append(problems, breaks(last, f)...)
		last = &f
	}
	return problems, count, nil
}

// CheckSince walks facts from a head's own on, as Check does from the first. What came
// before the head is vouched for by its hash.
func CheckSince(head Head, facts iter.Seq2[Fact, error]) (problems []message.Text, count int64, err error) {
	var last *Fact
	for f, err := range facts {
		if err != nil {
			return problems, count, err
		}
		count++
		if last == nil && !head.Holds(f) {
			return []message.Text{message.New("The book no longer holds fact %d as it was.", head.Seq)}, count, nil
		}
		if last == nil {
			last = &Fact{Seq: f.Seq - 1, Hash: f.Prev}
		}
		problems = append(problems, breaks(last, f)...)
		last = &f
	}
	if last == nil {
		problems = append(problems, message.New("The book no longer holds fact %d.", head.Seq))
	}
	return problems, count, nil
}

// breaks returns what is wrong with one fact, given the one before it.
func breaks(last *Fact, f Fact) []message.Text {
	var found []message.Text
	if gap := gapBefore(last, f); !gap.IsZero() {
		found = append(found, gap)
	} else if broken := brokenLink(last, f); !broken.IsZero() {
		found = append(found, broken)
	}
	if want := f.sum(); f.Hash != want {
		found = append(found, message.New(
			"Fact %d (%q of %q) was changed after it was entered: it carries hash %q, what it says now gives %v.",
			f.Seq, f.Kind, f.Subject, f.Hash, short(want)))
	}
	return found
}

// gapBefore returns the numbers missing before the fact. The link to the fact before cannot be
// judged across a gap.
func gapBefore(last *Fact, f Fact) message.Text {
	due := int64(1)
	if last != nil {
		due = last.Seq + 1
	}
	switch {
	case f.Seq == due:
		return message.Text{}
	case f.Seq < due:
		return message.New("Fact %d stands where fact %d is due.", f.Seq, due)
	case f.Seq == due+1:
		return message.New("Fact %d is missing: the next one in the book is fact %d.", due, f.Seq)
	}
	return message.New("Facts %d to %d are missing: the next one in the book is fact %d.", due, f.Seq-1, f.Seq)
}

// brokenLink reports a fact that names another predecessor than it has.
func brokenLink(last *Fact, f Fact) message.Text {
	if last == nil {
		if f.Prev == Genesis {
			return message.Text{}
		}
		return message.New("Fact %d is the first but does not start the chain: it follows hash %q, not %v.",
			f.Seq, f.Prev, short(Genesis))
	}
	if f.Prev == last.Hash {
		return message.Text{}
	}
	return message.New("Fact %d does not follow fact %d: it follows hash %q, but fact %d carries %q.",
		f.Seq, last.Seq, f.Prev, last.Seq, last.Hash)
}

// short shows enough of a hash to compare by eye.
func short(hash string) string {
	if len(hash) <= 12 {
		return hash
	}
	return hash[:12] + "..."
}
