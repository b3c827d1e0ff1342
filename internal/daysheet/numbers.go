package daysheet

import (
	"fmt"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Numbers is the account of a day's ticket numbers: each of them is in force,
// void or corrected, and none is missing.
type Numbers struct {
	Issued                     int
	First, Last                int64 // zero when none was issued
	InForce, Voided, Corrected int
	// Missing are numbers between the last one before the day and the last one
	// of the day that are not of the day. They are a sign that somebody altered
	// the book, or that the computer's clock was set back.
	Missing []Range
}

// Range is numbers in a row, both ends included.
type Range struct{ First, Last int64 }

// Message is the range in figures: "17", "17 to 19".
func (r Range) Message() message.Text {
	if r.First == r.Last {
		return message.Words(fmt.Sprint(r.First))
	}
	return message.New("%s to %s", fmt.Sprint(r.First), fmt.Sprint(r.Last))
}

func (r Range) String() string { return r.Message().String() }

// account checks the numbers of the tickets issued on a day, sorted by number, for gaps; before is
// the last number issued before it.
func account(day quantity.Date, before int64, tickets []Ticket) Numbers {
	n := Numbers{}
	for _, t := range tickets {
		if t.Number == 0 || t.Day != day {
			continue
		}
		if t.Number > before+1 {
			n.Missing = append(n.Missing, Range{before + 1, t.Number - 1})
		}
		before = t.Number
		n.count(t)
	}
	return n
}

func (n *Numbers) count(t Ticket) {
	if n.Issued == 0 {
		n.First = t.Number
	}
	n.Issued, n.Last = n.Issued+1, t.Number
	switch {
	case t.Ended.IsZero():
		n.InForce++
	case t.EndedBy > 0:
		n.Corrected++
	default:
		n.Voided++
	}
}

// Message describes the account in a sentence.
func (n Numbers) Message() message.Text {
	if n.Issued == 0 {
		return message.New("no ticket was issued")
	}
	counts := message.New("%s, %d in all: %d in force, %d void, %d corrected", Range{n.First, n.Last}, n.Issued, n.InForce, n.Voided, n.Corrected)
	if len(n.Missing) == 0 {
		return message.List("; ", counts, message.New("no number is missing"))
	}
	return message.List("; ", counts, message.New("NOT OF THIS DAY: %s", message.Texts(", ", n.Missing)))
}

func (n Numbers) String() string { return n.Message().String() }
