// Package lookup finds in a book what package guard compares a load with: the other loads of its
// truck, the stock of its bin, the last prices of its grain.
package lookup

import (
	"encoding/json"
	"slices"
	"time"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/book"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
)

// Lists are the current book, or the book within a write so far.
type Lists interface {
	Loads(book.LoadFilter) ([]book.LoadRow, error)
	BinBefore(name, day string) ([]bin.Row, error)
	MovementsOn(day string) ([]bin.Movement, error)
	Records(kind string) ([]book.Record, error)
	FactsOf(subject string) ([]journal.Fact, error)
}

// lastPrices and priceDays are the number of tickets, and of days, that the usual price is taken
// from.
const (
	lastPrices = 9
	priceDays  = 7
)

// Around returns the context of a load in a book.
func Around(lists Lists, p elevator.Profile, today quantity.Date, l *load.Load) (guard.Setting, error) {
	s := guard.Setting{House: p, Today: today}
	for _, find := range []func(Lists, *load.Load, *guard.Setting) error{pit, stock, truck, passages, posted, prices, contracts} {
		if err := find(lists, l, &s); err != nil {
			return s, err
		}
	}
	return s, nil
}

func truck(lists Lists, l *load.Load, s *guard.Setting) (err error) {
	if _, weighed := l.Weight(load.Tare, ""); weighed && l.Details.Truck.ID != "" {
		s.Truck, err = recordOf(lists, l.Details.Truck.ID, func(t elevator.Truck) string { return t.ID })
	}
	return err
}

// recordOf is the record with an id; its zero where there is none.
func recordOf[R journal.Kinded](lists Lists, id string, idOf func(R) string) (found R, err error) {
	rows, err := lists.Records(found.Kind())
	if err != nil {
		return found, err
	}
	for _, row := range rows {
		if row.ID != id {
			continue
		}
		var r R
		if err := json.Unmarshal(row.Body, &r); err != nil {
			return found, err
		}
		if idOf(r) == id {
			return r, nil
		}
	}
	return found, nil
}

// passages are the loads of the truck on the yard, and those with a ticket of today or the day
// before.
func passages(lists Lists, l *load.Load, s *guard.Setting) error {
	name := l.Details.Truck.ID
	if name == "" {
		name = l.Details.Truck.Plate
	}
	if name == "" {
		return nil
	}
	here, err := lists.Loads(book.LoadFilter{Truck: name, Phases: []string{string(load.OnYard), string(load.Ready)}})
	if err != nil {
		return err
	}
	issued, err := lists.Loads(book.LoadFilter{Truck: name, Phases: []string{string(load.Ticketed)}, FromDay: s.Today.AddDays(-1).String()})
	if err != nil {
		return err
	}
	for _, r := range slices.Concat(here, issued) {
		if r.Truck != name || r.ID == l.ID || r.Ticket > 0 && r.Ticket == l.InPlaceOf() || r.Corrects > 0 || r.Reissues > 0 {
			continue
		}
		s.Others = append(s.Others, passage(r, l))
	}
	return nil
}

func passage(r book.LoadRow, l *load.Load) guard.Passage {
	return guard.Passage{
		Load: r.ID, Ticket: r.Ticket, Gross: r.Figures[settle.LineGross], Minutes: minutesBetween(r.OpenedAt, l.Opened.At),
	}
}

// minutesBetween are whole minutes between two times of facts, whichever came first;
// a long time where one cannot be read.
func minutesBetween(one, other string) int {
	a, errA := time.Parse(journal.TimeLayout, one)
	b, errB := time.Parse(journal.TimeLayout, other)
	if errA != nil || errB != nil {
		return int(24 * time.Hour / time.Minute)
	}
	return int(a.Sub(b).Abs() / time.Minute)
}

// posted is the price posted for the load's grain on its day.
func posted(lists Lists, l *load.Load, s *guard.Setting) (err error) {
	if guard.ComparesPrice(l) {
		s.Posted, err = Posted(lists, l.Details.Commodity, l.Details.Day)
	}
	return err
}

// Posted is the price posted for a grain and a day, with its hour and person; nil where none is.
func Posted(lists Lists, commodity string, day quantity.Date) (*load.Posted, error) {
	facts, err := lists.FactsOf(elevator.PostedPrice{}.Kind() + " " + elevator.PostedID(commodity, day))
	if err != nil || len(facts) == 0 {
		return nil, err
	}
	last := facts[len(facts)-1]
	p, err := journal.ReadBody[elevator.PostedPrice](last.Body)
	if err != nil {
		return nil, err
	}
	return &load.Posted{Commodity: p.Commodity, Day: p.Day, Price: p.Price, At: last.At, Who: last.Who}, nil
}

// prices returns those of the last tickets of the grain, where the load has a price to compare and
// the elevator no range of its own.
func prices(lists Lists, l *load.Load, s *guard.Setting) error {
	if !guard.ComparesPrice(l) || s.House.Guards.For(string(guard.Price), l.Details.Commodity, "").To != nil {
		return nil
	}
	rows, err := lists.Loads(book.LoadFilter{
		Commodity: l.Details.Commodity, Phases: []string{string(load.Ticketed)}, FromDay: s.Today.AddDays(-priceDays).String(), Newest: true, Limit: lastPrices,
	})
	for _, r := range rows {
		summary, err := r.Recorded().Summary()
		if err == nil && summary.Price != nil && r.Contract == "" && r.ID != l.ID {
			s.Prices = append(s.Prices, *summary.Price)
		}
	}
	return err
}
