package moisture

import (
	"tenthpoint/internal/fault"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Probe is one thrust of the probe.
type Probe struct {
	// Place is the place in the load, such as "left front".
	Place string `json:"place"`
	// Note is an observation there.
	Note string `json:"note,omitempty"`
}

// Sample is the grain taken from a load, and the part of it that is retained.
type Sample struct {
	Number string        `json:"number"`
	Crop   string        `json:"crop"`
	Ticket string        `json:"ticket,omitempty"`
	Taken  quantity.Date `json:"taken"`
	By     string        `json:"by"`
	Probes []Probe       `json:"probes"`
	// Place is the shelf of the retained part; empty when there is none.
	Place string `json:"place,omitempty"`
	// Keep is the rule the retained part is kept under.
	Keep Retention `json:"keep"`
	// Held is the reason to keep the sample longer, such as a dispute.
	Held message.Kept `json:"held,omitzero"`
	// Discarded is the day the retained part went.
	Discarded quantity.Date `json:"discarded"`
}

// KeepThrough is the last day the sample must be there, its whole number of
// days after the day it was taken: a grower who asks on the seventh day of
// seven still finds it.
func (s Sample) KeepThrough() quantity.Date { return s.Taken.AddDays(s.Keep.Days) }

// DiscardFrom returns the first day the sample may be discarded, unless it is held.
func (s Sample) DiscardFrom() quantity.Date { return s.KeepThrough().AddDays(1) }

// Retained reports whether a part is still kept.
func (s Sample) Retained() bool { return s.Place != "" && s.Discarded.IsZero() }

// DueOn reports whether the retained part may be discarded on a day. A held one may not.
func (s Sample) DueOn(day quantity.Date) bool {
	return s.Retained() && s.Held.IsZero() && !day.Before(s.DiscardFrom())
}

// Check lists everything wrong with the sample as recorded.
func (s Sample) Check() []error {
	var faults fault.List
	faults.Unless(s.Number != "", "the sample has no number; take the next one from the roll")
	faults.Unless(s.Crop != "", "sample %s has no crop", s.Number)
	faults.Unless(!s.Taken.IsZero(), "sample %s has no day", s.Number)
	faults.Unless(s.By != "", "sample %s has no person; write who probed the load", s.Number)
	faults.Unless(len(s.Probes) > 0, "sample %s has no probe; write where in the load it was taken", s.Number)
	faults.Unless(s.Place == "" || s.Keep.Days > 0, "sample %s is kept at %s under no rule; choose how many days", s.Number, s.Place)
	early := !s.Discarded.IsZero() && s.Place != "" && s.Discarded.Before(s.DiscardFrom())
	faults.Unless(!early, "sample %s was discarded on %s, and is to be kept through %s (%d days: %s)", s.Number, s.Discarded, s.KeepThrough(), s.Keep.Days, s.Keep.Name)
	faults.Unless(s.Discarded.IsZero() || s.Held.IsZero(), "sample %s was discarded on %s while it was held for %s", s.Number, s.Discarded, s.Held)
	return faults
}
