package demo

import (
	"cmp"
	"context"
	"slices"
	"time"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
)

// act is one thing a person does at a moment.
type act struct {
	at  time.Time
	who string
	do  func(context.Context, *scalehouse.Batch) error
}

// actsTogether bounds one transaction.
const actsTogether = 4000

// run simulates the season day by day: trucks come, acts due from earlier days are done, the
// manager closes the day.
func (s *season) run(ctx context.Context, progress func(loads int)) error {
	come, money := 0, &cashier{season: s}
	for d := range s.days {
		day := s.first.AddDays(d)
		loads := s.share(d)
		acts := append(s.due(day), s.trucks(d, loads, s.hour(day, 6, 30), s.hour(day, 20, 0))...)
		acts = append(acts, s.departures(d, loads, s.hour(day, 9, 0), s.hour(day, 17, 0))...)
		acts = append(acts, s.clearing(day), s.closing(day))
		if err := startMeters(ctx, s, day, s.hour(day, 6, 5)); err != nil {
			return err
		}
		if err := s.checkInSeason(ctx, d); err != nil {
			return err
		}
		if err := money.settleUp(ctx, day, s.hour(day, 6, 20)); err != nil {
			return err
		}
		if err := s.perform(ctx, acts); err != nil {
			return err
		}
		if come += loads; progress != nil {
			progress(come)
		}
	}
	if err := startMeters(ctx, s, s.today, benchBegins(s)); err != nil {
		return err
	}
	if err := money.settleUp(ctx, s.today, benchBegins(s)); err != nil {
		return err
	}
	if err := money.trade(ctx); err != nil {
		return err
	}
	loads := s.thisMorning()
	morning := append(s.due(s.today), s.trucks(s.days, loads, s.hour(s.today, 6, 30), s.Now.Add(-45*time.Minute))...)
	morning = slices.DeleteFunc(morning, func(a act) bool { return a.at.After(s.Now) })
	if err := s.perform(ctx, morning); err != nil {
		return err
	}
	if progress != nil {
		progress(come + loads)
	}
	return nil
}

// benchBegins is when the bench began today: in the morning, or where it is night, with the trucks
// that are on the yard.
func benchBegins(s *season) time.Time {
	morning, beforeTrucks := s.hour(s.today, 6, 5), s.Now.Add(-20*time.Minute)
	switch midnight := s.hour(s.today, 0, 0); {
	case morning.Before(s.Now):
		return morning
	case beforeTrucks.Before(midnight):
		return midnight
	}
	return beforeTrucks
}

// due takes the acts put off to a day.
func (s *season) due(day quantity.Date) []act {
	var due []act
	end := s.hour(day, 23, 59)
	s.later = slices.DeleteFunc(s.later, func(a act) bool {
		if a.at.After(end) {
			return false
		}
		due = append(due, a)
		return true
	})
	return due
}

// trucks are the acts of a day's trucks, in the order they come.
func (s *season) trucks(day, loads int, from, until time.Time) []act {
	minutes := int64(until.Sub(from) / time.Minute)
	if minutes < 1 {
		return nil
	}
	var acts []act
	for i := range loads {
		at := from.Add(time.Duration(minutes*int64(i)/int64(loads)) * time.Minute)
		at = at.Add(time.Duration(s.chance.between(0, 55)) * time.Second)
		acts = append(acts, s.visit(day, at)...)
	}
	return acts
}

// closing is the manager's last act of a day.
func (s *season) closing(day quantity.Date) act {
	return act{s.hour(day, 21, 30), Manager, func(ctx context.Context, w *scalehouse.Batch) error { return scalehouse.CloseDay(ctx, w, day, "") }}
}

// perform does acts in the order of their hours, many in one transaction.
func (s *season) perform(ctx context.Context, acts []act) error {
	slices.SortStableFunc(acts, func(a, b act) int { return cmp.Compare(a.at.Unix(), b.at.Unix()) })
	for chunk := range slices.Chunk(acts, actsTogether) {
		err := s.desk.Batch(ctx, func(w *scalehouse.Batch) error {
			for _, a := range chunk {
				if err := s.as(a.who, a.at); err != nil {
					return err
				}
				if err := a.do(ctx, w); err != nil {
					return err
				}
			}
			return nil
		})
		if err != nil {
			return err
		}
	}
	return nil
}

// as puts a person at the desk at an hour.
func (s *season) as(who string, at time.Time) error {
	s.clock = at
	if s.desk.Who().Name == who {
		return nil
	}
	return s.desk.SignIn(who)
}
