package daysheet

import (
	"cmp"
	"slices"

	"tenthpoint/internal/quantity"
)

// Facts are what a day's sheet is made of.
type Facts struct {
	Day quantity.Date
	// Tickets are the loads issued or refused on the day, and the tickets of
	// earlier days that were voided or corrected on it.
	Tickets []Ticket
	// Samples are loads whose retained sample may go and has not.
	Samples []Ticket
	// Meters are sentences about meters that are due, overdue or failed.
	Meters []string
	// Before is the position at the end of the day before.
	Before Position
	Closed *Closing
}

// Closing is who closed the day and when; the time is local.
type Closing struct {
	By, At, Remark string
}

// Sheet is a business day, added up.
type Sheet struct {
	Facts
	Parts   []Part // inbound commodities, then outbound ones
	Hours   []Hour
	Places  []Place // where it went, by commodity and bin
	Taken   []Taken // sold, stored, contract, by commodity
	Refused []Ticket
	// Struck are tickets issued and ended on this day; Later are tickets of
	// earlier days ended on this day.
	Struck, Later []Ticket
	Manual        []Ticket
	Accepted      []Ticket
	Flagged       []Ticket
	First, Last   int64 // ticket numbers issued on the day; nought when none
	After         Position
}

// Part is one commodity moved one way.
type Part struct {
	Commodity, Name string
	Outbound        bool
	Tickets         []Ticket // counted on this day
	Against         []Ticket // of earlier days, counted out on this day
	Sum             Sum
}

// Hour is the loads of one hour of the day, over all commodities.
type Hour struct {
	Hour  string // "14"
	Loads int
}

// Place is what one bin took of one commodity.
type Place struct {
	Commodity, Name, Bin string
	Outbound             bool
	Sum                  Sum
}

// Taken is one commodity by what became of it.
type Taken struct {
	Commodity, Name, How string
	Sum                  Sum
}

// Make adds a day up.
func Make(f Facts) Sheet {
	s := Sheet{Facts: f}
	slices.SortFunc(s.Tickets, func(a, b Ticket) int { return cmp.Or(cmp.Compare(a.Number, b.Number), cmp.Compare(a.Load, b.Load)) })
	for _, t := range s.Tickets {
		s.list(t)
	}
	s.After = f.Before.With(s.Parts)
	slices.SortStableFunc(s.Parts, func(a, b Part) int { return cmp.Compare(order(a), order(b)) })
	slices.SortFunc(s.Hours, func(a, b Hour) int { return cmp.Compare(a.Hour, b.Hour) })
	return s
}

func order(p Part) string {
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
	if t.Day == s.Day {
		s.numbered(t)
	}
	switch {
	case t.CountsOn(s.Day):
		s.count(t)
	case t.Day == s.Day:
		s.Struck = append(s.Struck, t)
	case t.Ended == s.Day:
		s.Later = append(s.Later, t)
		part := s.part(t)
		part.Against = append(part.Against, t)
		part.Sum.Take(t)
	}
}

func (s *Sheet) numbered(t Ticket) {
	if s.First == 0 || t.Number < s.First {
		s.First = t.Number
	}
	s.Last = max(s.Last, t.Number)
	if len(t.Manual) > 0 {
		s.Manual = append(s.Manual, t)
	}
	if len(t.Accepted) > 0 {
		s.Accepted = append(s.Accepted, t)
	}
	if len(t.Flags) > 0 {
		s.Flagged = append(s.Flagged, t)
	}
}

func (s *Sheet) count(t Ticket) {
	part := s.part(t)
	part.Tickets = append(part.Tickets, t)
	part.Sum.Add(t)
	s.hour(t)
	s.place(t).Add(t)
	if !t.Outbound {
		s.taken(t).Add(t)
	}
}

func (s *Sheet) part(t Ticket) *Part {
	for i := range s.Parts {
		if s.Parts[i].Commodity == t.Commodity && s.Parts[i].Outbound == t.Outbound {
			return &s.Parts[i]
		}
	}
	s.Parts = append(s.Parts, Part{Commodity: t.Commodity, Name: t.Name, Outbound: t.Outbound, Sum: NewSum(t.weightUnit(), t.quantityUnit())})
	return &s.Parts[len(s.Parts)-1]
}

func (s *Sheet) hour(t Ticket) {
	hour := t.Time
	if len(hour) > 2 {
		hour = hour[:2]
	}
	for i := range s.Hours {
		if s.Hours[i].Hour == hour {
			s.Hours[i].Loads++
			return
		}
	}
	s.Hours = append(s.Hours, Hour{Hour: hour, Loads: 1})
}

func (s *Sheet) place(t Ticket) *Sum {
	for i := range s.Places {
		p := &s.Places[i]
		if p.Commodity == t.Commodity && p.Bin == t.Bin && p.Outbound == t.Outbound {
			return &p.Sum
		}
	}
	s.Places = append(s.Places, Place{Commodity: t.Commodity, Name: t.Name, Bin: t.Bin, Outbound: t.Outbound, Sum: NewSum(t.weightUnit(), t.quantityUnit())})
	return &s.Places[len(s.Places)-1].Sum
}

func (s *Sheet) taken(t Ticket) *Sum {
	for i := range s.Taken {
		if s.Taken[i].Commodity == t.Commodity && s.Taken[i].How == t.Taken {
			return &s.Taken[i].Sum
		}
	}
	s.Taken = append(s.Taken, Taken{Commodity: t.Commodity, Name: t.Name, How: t.Taken, Sum: NewSum(t.weightUnit(), t.quantityUnit())})
	return &s.Taken[len(s.Taken)-1].Sum
}
