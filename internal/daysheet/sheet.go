package daysheet

import (
	"cmp"
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
)

// Facts are the input of a day sheet.
type Facts struct {
	Day quantity.Date
	// Tickets are the loads issued or refused on the day, and the tickets of
	// earlier days that were voided or corrected on it.
	Tickets []Ticket
	// Last is the highest ticket number given out before the day.
	Last int64
	// Before is the position at the end of the day before.
	Before Position
	// Notes are the things of the evening that leave no ticket.
	Notes  Notes
	Closed *Closing
	// Example marks a day some of whose rates are invented.
	Example bool
}

// Notes are sentences about open items in the evening. A closed day keeps them as they were, and
// can say them in any language.
type Notes struct {
	Yard     []message.Kept `json:"yard,omitempty"`     // trucks without a ticket
	Samples  []message.Kept `json:"samples,omitempty"`  // retained samples that are due
	Disputes []message.Kept `json:"disputes,omitempty"` // disputes not decided
	Meters   []message.Kept `json:"meters,omitempty"`   // meters overdue, failed, never checked
	Scales   []message.Kept `json:"scales,omitempty"`   // status of truck scales by their logs
	// Undecided is the grain of which it should be said by now what becomes of it.
	Undecided []message.Kept `json:"undecided,omitempty"`
	Due       []message.Kept `json:"due,omitempty"` // contracts and settlement sheets whose day is near
}

// Sentences are the notes in English, as facts of the first engine hold them.
func (n Notes) Sentences() Notes {
	for _, notes := range []*[]message.Kept{&n.Yard, &n.Samples, &n.Disputes, &n.Meters, &n.Scales, &n.Undecided, &n.Due} {
		*notes = slices.Clone(*notes)
		for i, note := range *notes {
			(*notes)[i] = message.Kept{Text: message.Words(note.String())}
		}
	}
	return n
}

// Closing says who closed the day and when; the time is local.
type Closing struct {
	By, At, Remark string
	Engine         settle.Engine // that closed the day
	// Head is the head of the book when the day was closed, number and hash; empty
	// on sheets that do not print it.
	Head string
	// Vouched says who signed that head; empty in a house without keys.
	Vouched message.Text
	// Metric says that the sheet has test weights in kg/hL; those closed by earlier versions have not.
	Metric bool
	// Differs says that the journal no longer reproduces the closed sheet.
	Differs bool
	// Late says that something entered after the closing counts on the day or before it, without an
	// explanation; Explained lists who explained. The sheet is the one that was closed.
	Late      bool
	Explained *Explanation
}

// Explanation is why something entered after a day was closed counts on it or
// before it; the time is local.
type Explanation struct {
	By, At, Reason string
}

// Sheet is a business day, added up.
type Sheet struct {
	Facts
	Parts         []Part           // inbound commodities, then outbound ones
	Hours         []Hour           // of the tickets that count
	Places        []Place          // where it went or came from
	ByDisposition []DispositionSum // sold, stored, contract
	Spread        []Spread
	Refused       []Ticket
	// Corrections are the tickets issued on this day that correct another, and
	// Reissues those in place of a void one.
	Corrections []Ticket
	Reissues    []Ticket
	// Later are tickets of earlier days ended on this day.
	Later    []Ticket
	Manual   []Ticket
	Accepted []Ticket
	Answered []Ticket
	Flagged  []Ticket
	Numbers  Numbers
	Moves    []Move
}

// Part is one commodity moved one way, in one pair of units.
type Part struct {
	Commodity, Name string
	Outbound        bool
	Tickets         []Ticket // counted on this day
	Struck          []Ticket // issued and ended on this day: they never counted
	Against         []Ticket // of earlier days, counted out on this day
	Sum             Sum      // of Tickets
	Back            Sum      // of Against
	units           units
}

// Make adds a day up.
func Make(f Facts) Sheet {
	s := Sheet{Facts: f}
	s.Tickets = make([]Ticket, len(f.Tickets))
	for i, t := range f.Tickets {
		s.Tickets[i] = t.asOf(f.Day)
	}
	slices.SortFunc(s.Tickets, func(a, b Ticket) int { return cmp.Or(cmp.Compare(a.Number, b.Number), cmp.Compare(a.Load, b.Load)) })
	for _, t := range s.Tickets {
		s.list(t)
	}
	for i := range s.Parts {
		p := &s.Parts[i]
		p.Sum, p.Back = newSum(p.units), newSum(p.units)
		for _, t := range p.Tickets {
			p.Sum.join(sumOfOne(t))
		}
		for _, t := range p.Against {
			p.Back.join(sumOfOne(t))
		}
	}
	slices.SortStableFunc(s.Parts, func(a, b Part) int { return cmp.Compare(a.order(), b.order()) })
	s.Hours, s.Places, s.ByDisposition, s.Spread = hours(s.Parts), places(s.Parts), byDisposition(s.Parts), spread(s.Parts)
	s.Numbers = account(s.Day, s.Last, s.Tickets)
	s.Moves = f.Before.moves(s.Parts)
	return s
}

// order puts what came in before what went out.
func (p Part) order() string {
	if p.Outbound {
		return "2" + p.Name
	}
	return "1" + p.Name
}

// list puts a ticket where it belongs.
func (s *Sheet) list(t Ticket) {
	if t.Refused {
		s.Refused = append(s.Refused, t)
		return
	}
	part := s.part(t)
	switch {
	case t.Day != s.Day:
		part.Against = append(part.Against, t)
		s.Later = append(s.Later, t)
		return
	case t.endedSameDay():
		part.Struck = append(part.Struck, t)
	default:
		part.Tickets = append(part.Tickets, t)
	}
	s.note(t)
}

// note adds the notes on a ticket issued on the day.
func (s *Sheet) note(t Ticket) {
	if t.Corrects > 0 {
		s.Corrections = append(s.Corrections, t)
	}
	if t.Reissues > 0 {
		s.Reissues = append(s.Reissues, t)
	}
	if len(t.Manual) > 0 {
		s.Manual = append(s.Manual, t)
	}
	if len(t.Accepted) > 0 {
		s.Accepted = append(s.Accepted, t)
	}
	if len(t.Answered) > 0 {
		s.Answered = append(s.Answered, t)
	}
	if len(t.Flags) > 0 {
		s.Flagged = append(s.Flagged, t)
	}
}

func (s *Sheet) part(t Ticket) *Part {
	u := t.units()
	for i := range s.Parts {
		p := &s.Parts[i]
		if p.Commodity == t.Commodity && p.Outbound == t.Outbound && p.units == u {
			return p
		}
	}
	s.Parts = append(s.Parts, Part{Commodity: t.Commodity, Name: t.Name, Outbound: t.Outbound, units: u})
	return &s.Parts[len(s.Parts)-1]
}
