package demo

import (
	"context"
	"fmt"
	"time"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/scalehouse"
)

// Options are the parameters of the season.
type Options struct {
	Loads int    // trucks that come in the season, before those on the yard
	Seed  uint64 // the number the season is drawn from
	// Now is the moment the book is left at, with trucks half done on the yard.
	Now time.Time
	// Place is the elevator's time zone; nil is UTC.
	Place *time.Location
	// Language is the elevator's: "en", "fr"; none is English.
	Language string
	// Rates are the editions to settle under, in force on the days before Now.
	Rates *rates.Set
	// Money is the tariffs and levies of the season; nil leaves every ticket unsettled.
	Money *Money
}

// MostLoads is the largest season.
const MostLoads = 2_000_000

// Fill sets the demo elevator up in an empty book and fills it with a season. progress is called
// with the number of loads so far and may be nil. When the context ends, the loads written so far
// stay complete.
func Fill(ctx context.Context, b scalehouse.Book, o Options, progress func(loads int)) error {
	if o.Loads < 0 || o.Loads > MostLoads {
		return fmt.Errorf("a season of %d loads cannot be invented. Ask for 0 to %d", o.Loads, MostLoads)
	}
	if o.Place == nil {
		o.Place = time.UTC
	}
	s, err := plan(o)
	if err != nil {
		return err
	}
	if err := s.open(ctx, b); err != nil {
		return err
	}
	if err := s.setUp(ctx); err != nil {
		return err
	}
	if err := s.run(ctx, progress); err != nil {
		return err
	}
	return s.leaveYard(ctx)
}

// open opens a desk whose clock the season sets.
func (s *season) open(ctx context.Context, b scalehouse.Book) error {
	var err error
	s.desk, err = scalehouse.Open(ctx, b, scalehouse.Options{
		Name: "scale house", Rates: s.Rates, Place: s.Place,
		Clock: func() time.Time { return s.clock },
	})
	return err
}

// hour is a moment of a day at the elevator.
func (s *season) hour(day quantity.Date, hour, minute int) time.Time {
	return time.Date(day.Year(), time.Month(day.Month()), day.Day(), hour, minute, 0, 0, s.Place)
}
