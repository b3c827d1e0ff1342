package numbering

import (
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Pad is a pad of printed emergency tickets, numbered before anything is written on them. When the power
// is out trucks are written down on them, and each is entered afterwards under a ticket of the book,
// which names its number and the hour. Every number of a pad is accounted for: entered, spoiled, or not
// used yet.
type Pad struct {
	First int64  `json:"first,string"`
	Last  int64  `json:"last,string"`
	Where string `json:"where,omitempty"` // where the pad lies
}

// mostOnPad is the most tickets on a pad: more was mistyped.
const mostOnPad = 10_000

// Kind names the fact in the journal.
func (Pad) Kind() string { return "emergency.pad" }

// ID is the id of its record.
func (p Pad) ID() string { return fmt.Sprintf("%012d", p.First) }

// Holds reports whether a number is on the pad.
func (p Pad) Holds(number int64) bool { return p.First <= number && number <= p.Last }

// Check returns what is wrong with it, or nil.
func (p Pad) Check() error {
	if p.First < 1 || p.Last < p.First || p.Last-p.First >= mostOnPad {
		return message.Invalid.Errorf("a pad has the numbers of its first and last ticket, %d at most; got %d to %d", mostOnPad, p.First, p.Last)
	}
	return nil
}

// Emergency is an emergency ticket in the book: entered as a ticket, or spoiled.
type Emergency struct {
	Number int64         `json:"number,string"`
	Ticket int64         `json:"ticket,string,omitempty"`
	Why    string        `json:"why,omitempty"` // it was spoiled
	Day    quantity.Date `json:"day"`
}

// Kind names the fact in the journal.
func (Emergency) Kind() string { return "emergency.ticket" }

// ID is the id of its record.
func (e Emergency) ID() string { return fmt.Sprintf("%012d", e.Number) }

// Check returns what is wrong with it, or nil.
func (e Emergency) Check() error {
	if (e.Ticket == 0) == (strings.TrimSpace(e.Why) == "") || e.Number < 1 {
		return message.Incomplete.Errorf("an emergency ticket is entered under a ticket, or it is spoiled and somebody says why")
	}
	return nil
}

// MayEnter returns why an emergency ticket cannot be entered for a ticket that takes the place of another,
// or of none; nil where it can.
func MayEnter(pads []Pad, used []Emergency, number, inPlaceOf int64) error {
	if !slices.ContainsFunc(pads, func(p Pad) bool { return p.Holds(number) }) {
		return message.NotFound.Errorf("emergency ticket %d is of no pad that is written down. Look at the number again, or write the pad down: \"tenth emergency pad\"", number)
	}
	at := slices.IndexFunc(used, func(e Emergency) bool { return e.Number == number })
	switch {
	case at < 0:
		return nil
	case used[at].Ticket == 0:
		return message.Refused.Errorf("emergency ticket %d was declared spoiled: %v. Look at the number again", number, used[at].Why)
	case used[at].Ticket != inPlaceOf:
		return message.Refused.Errorf("emergency ticket %d was entered already, as ticket %d. Look at the number again", number, used[at].Ticket)
	}
	return nil
}

// Skipped are the numbers of pads before the highest one used of each, that nobody accounted for.
func Skipped(pads []Pad, used []Emergency) []int64 {
	known := map[int64]bool{}
	for _, e := range used {
		known[e.Number] = true
	}
	var out []int64
	for _, p := range pads {
		highest := int64(0)
		for _, e := range used {
			if p.Holds(e.Number) {
				highest = max(highest, e.Number)
			}
		}
		for n := p.First; n < highest; n++ {
			if !known[n] {
				out = append(out, n)
			}
		}
	}
	return out
}
