package demo

import (
	"time"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
)

// The length of a season, in days, and the loads of a day worth opening for.
const (
	mostDays   = 70
	loadsADay  = 40
	mostAtDawn = 12 // loads already ticketed on the day the book is left at
)

// season is the state of the generator.
type season struct {
	Options
	desk  *scalehouse.Desk
	clock time.Time

	crops     []priced
	fleet     []truck
	contracts []elevator.ContractTerms
	delivered delivered
	chance    *chance
	first     quantity.Date // first day of the season
	today     quantity.Date // day of Now
	days      int           // full days, today not counted
	numbers   int           // samples taken so far
	later     []act         // acts due on a later day
	heaps     heaps         // the grain in the bins
	shelf     []kept        // samples kept
	came      comings       // when each truck came
}

// plan lays the season out: its days, its crops, its trucks, its contracts.
func plan(o Options) (*season, error) {
	now := o.Now.In(o.Place)
	today, err := quantity.ParseDate(now.Format(time.DateOnly))
	if err != nil {
		return nil, err
	}
	s := &season{Options: o, today: today, chance: newChance(o.Seed, ofSeason), heaps: heaps{}, came: comings{}, delivered: delivered{}}
	s.days = min(o.Loads/loadsADay+1, mostDays)
	for s.days > 1 && len(s.inForce(today.AddDays(-s.days))) == 0 {
		s.days--
	}
	s.first = today.AddDays(-s.days)
	if s.crops = s.priced(); len(s.crops) == 0 {
		return nil, message.Incomplete.Errorf("no rates are in force on %s for any grain of the demo elevator. Add an edition for that day to the schedules", today)
	}
	s.fleet = fleet(newChance(o.Seed, ofFleet), s.first.AddDays(-20))
	s.contracts = contracts(newChance(o.Seed, ofPrices), s.crops, today)
	return s, nil
}

// share parts the season's loads among its days: few at first, most in the
// middle, few at last.
func (s *season) share(day int) int {
	weight := func(d int) int { return min(d+1, s.days-d) + s.days/6 }
	total, before := 0, 0
	for d := range s.days {
		if d < day {
			before += weight(d)
		}
		total += weight(d)
	}
	loads := s.Loads - s.thisMorning()
	return loads*(before+weight(day))/total - loads*before/total
}

// thisMorning returns the number of loads that already have their tickets today.
func (s *season) thisMorning() int {
	if s.Now.Before(s.hour(s.today, 9, 0)) {
		return 0
	}
	return min(s.Loads/20, mostAtDawn)
}
