package tariff

import (
	"tenthpoint/internal/dated"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/title"
	"tenthpoint/internal/tomlfile"
)

// Status is the permitted use of a tariff.
type Status string

const (
	// Example tariffs are invented. They are marked "example - not for trade" everywhere.
	Example Status = "example"
	// House tariffs are an elevator's own posted ones.
	House Status = "house"
	// Filed tariffs are on file with an authority.
	Filed Status = "filed"
)

// Edition is one commodity's tariff for one period.
type Edition struct {
	ID        string
	Title     string
	Schedule  string // the series of tariffs it belongs to, such as "main"
	Commodity grain.Commodity
	From      quantity.Date // first day in force
	Until     quantity.Date // last day in force; zero means until replaced
	Status    Status
	Corrects  string // id of the tariff this one corrects, if any
	Origin    tomlfile.Origin
	Settle    quantity.Unit // bu, cwt or t: what charges are per
	Currency  string
	Money     quantity.Rounding

	Keeping   []Charge // storage and service, each for some titles
	Elevation Elevation
	Receipts  Receipts
	Interest  Interest

	File string // the name it was read by, for messages
	Text []byte // the file as read
	Hash string // SHA-256 of Text, in hex
}

// Set is all the tariffs an elevator has loaded.
type Set = dated.Set[*Edition]

// NewSet gathers tariffs and checks them against each other, as [dated.NewSet] does.
var NewSet = dated.NewSet[*Edition]

// Line is the series in which tariffs replace each other: a commodity of a schedule.
func Line(schedule, commodity string) string { return schedule + "/" + commodity }

// Dated is the tariff among others.
func (e *Edition) Dated() dated.Edition {
	return dated.Edition{
		ID: e.ID, Line: Line(e.Schedule, e.Commodity.ID), From: e.From, Until: e.Until, Corrects: e.Corrects,
		File: e.File, Text: e.Text, Head: headTable,
	}
}

// Days are the days the tariff is in force.
func (e *Edition) Days() message.Text { return e.Dated().Days() }

// For is the charge for keeping grain under a title; false where the tariff has none.
func (e *Edition) For(under title.Under) (Charge, bool) {
	for _, c := range e.Keeping {
		if c.isFor(under) {
			return c, true
		}
	}
	return Charge{}, false
}

// InForce is the tariff of the schedule that a grain is settled by; of the main schedule where that
// one has none.
func InForce(s *Set, schedule, commodity string, day quantity.Date) (*Edition, error) {
	if e, ok := s.On(Line(schedule, commodity), day); ok {
		return e, nil
	}
	return On(s, mainSchedule, commodity, day)
}

const mainSchedule = "main"

// On returns the tariff in force for a commodity of a schedule on a day.
func On(s *Set, schedule, commodity string, day quantity.Date) (*Edition, error) {
	line := Line(schedule, commodity)
	if e, ok := s.On(line, day); ok {
		return e, nil
	}
	return nil, message.NotFound.Errorf("no tariff is in force for %s on %s in schedule %q. Tariffs here: %s. Add one for that day", commodity, day, schedule, s.Periods(line))
}
