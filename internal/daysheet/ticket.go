package daysheet

import (
	"tenthpoint/internal/quantity"
)

// Ticket is one load as the sheets read it. Days are business days; times are
// local, "14:05".
type Ticket struct {
	Number     int64 // nought for a load turned away
	Load       string
	Outbound   bool
	Day        quantity.Date // issued, or refused
	Time       string
	Commodity  string // its id
	Name       string // its name
	GrowerID   string
	Grower     string
	Owners     []string // ids of those who share, in the order of the ticket
	Truck      string
	Bin        string
	Contract   string
	Kept       string // where the retained sample is
	KeepUntil  quantity.Date
	Sample     string
	Taken      string // "sold", "stored", "contract"
	Weigher    string
	Edition    string
	Refused    bool
	Ended      quantity.Date // voided or corrected on; zero while in force
	EndedBy    int64         // the correcting ticket; nought for a void
	EndedWho   string
	Corrects   int64
	CorrectsOn quantity.Date // day of the corrected ticket
	Reason     string
	Manual     []string
	Accepted   []string
	Flags      []string
	Figures    map[string]quantity.Amount
}

// figure is a line of the settlement, or nought in the unit given.
func (t Ticket) figure(id string, unit quantity.Unit) quantity.Amount {
	if a, ok := t.Figures[id]; ok && a.Unit() == unit {
		return a
	}
	return quantity.Zero(unit)
}

// weightUnit is the unit of the ticket's weights.
func (t Ticket) weightUnit() quantity.Unit {
	for _, id := range []string{"settled", "net"} {
		if a, ok := t.Figures[id]; ok {
			return a.Unit()
		}
	}
	return quantity.Lb
}

// quantityUnit is what the ticket is paid by: bu, cwt or t.
func (t Ticket) quantityUnit() quantity.Unit {
	if a, ok := t.Figures["quantity"]; ok {
		return a.Unit()
	}
	return quantity.Bushel
}

// net is the net weight in the unit the ticket was settled in.
func (t Ticket) net() quantity.Amount {
	if a, ok := t.Figures["net.converted"]; ok {
		return a
	}
	return t.figure("net", t.weightUnit())
}

// EndedSameDay reports whether the ticket was voided or corrected on the day it
// was issued, so that it never counted.
func (t Ticket) EndedSameDay() bool { return !t.Ended.IsZero() && t.Ended == t.Day }

// CountsOn reports whether the ticket counts on a day's sheet.
func (t Ticket) CountsOn(day quantity.Date) bool {
	return !t.Refused && t.Number > 0 && t.Day == day && !t.EndedSameDay()
}
