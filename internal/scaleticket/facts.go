package scaleticket

import (
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
)

// facts are the input of a ticket, with short names for what every section reads.
type facts struct {
	Ticket
	dates
	w Words
	l *load.Load
	s *settle.Settlement
}

func factsOf(t Ticket) *facts {
	t.fillIn()
	days := dates{zone: t.Zone, local: t.House.Dates == "local", order: t.Words.DateOrder, day: t.Load.Details.Day}
	return &facts{Ticket: t, dates: days, w: t.Words, l: t.Load, s: t.Settlement}
}

// isDraft reports whether the slip is a preview and no ticket.
func (t *facts) isDraft() bool { return t.Copy == Draft || t.l.Number == 0 }

// isRefused reports whether the load was turned away: nothing is to come.
func (t *facts) isRefused() bool { return t.l.Phase == load.TurnedAway }

// whenSettled is the placeholder of a figure that the settlement will provide, if there will be
// one.
func (t *facts) whenSettled() string {
	if t.isRefused() {
		return t.w.NotSettled
	}
	return t.w.WhenSettled
}

// isExample reports whether anything on the slip is invented.
func (t *facts) isExample() bool {
	return t.House.Demo || t.Edition != nil && t.Edition.Status == rates.Example
}

func (t *facts) ticketNumber() string {
	switch {
	case t.isRefused():
		return t.l.ID
	case t.l.Number == 0:
		return t.w.NumberLater
	}
	return elevator.Lettered(t.l.Letters, t.l.Number)
}

// owner returns the owner this slip is for, and whether it is for one.
func (t *facts) owner() (load.Owner, bool) {
	if t.Owner == 0 {
		return load.Owner{}, false
	}
	return t.l.Details.Shares[t.Owner-1], true
}

// ownPart is that owner's part of the settlement; nil when there is none.
func (t *facts) ownPart() *settle.ShareLine {
	if t.s == nil || t.Owner == 0 || t.Owner > len(t.s.Shares) {
		return nil
	}
	return &t.s.Shares[t.Owner-1]
}
