package desk

import (
	"context"
	"time"

	"tenthpoint/internal/house"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/store"
)

// Desk is one place of work on a book. Its methods may be called from one
// goroutine at a time.
type Desk struct {
	book   *store.Book
	rates  *rates.Set
	charts *chart.Set
	name   string
	clock  func() time.Time
	place  *time.Location
	who    house.Person
	engine settle.Engine // settles new loads and closes days

	profile house.Profile
	people  []house.Person
	// examples remembers which editions in the book are invented, by hash.
	examples map[string]bool
}

// Options are what a desk needs besides its book.
type Options struct {
	Name   string // of this desk, as written into facts
	Rates  *rates.Set
	Charts *chart.Set // moisture charts of dial meters; nil has none
	// Clock tells the time; nil is the computer's clock.
	Clock func() time.Time
	// Place is the time zone of the business day; nil is the computer's.
	Place *time.Location
	// Who is signed in; see [Desk.SignIn].
	Who string
}

// Open starts work on a book.
func Open(ctx context.Context, book *store.Book, o Options) (*Desk, error) {
	d := &Desk{book: book, rates: o.Rates, charts: o.Charts, name: o.Name, clock: o.Clock, place: o.Place, engine: settle.Current}
	if d.clock == nil {
		d.clock = time.Now
	}
	if d.place == nil {
		d.place = time.Local
	}
	if d.name == "" {
		d.name = "desk"
	}
	if err := d.reload(ctx); err != nil {
		return nil, err
	}
	if o.Who != "" {
		return d, d.SignIn(o.Who)
	}
	return d, nil
}

// reload reads the profile and the people as they now stand.
func (d *Desk) reload(ctx context.Context) error {
	profiles, err := standing[house.Profile](ctx, d.book)
	if err != nil {
		return err
	}
	if len(profiles) > 0 {
		d.profile = profiles[0]
	}
	d.people, err = standing[house.Person](ctx, d.book)
	return err
}

// Book is the book the desk works on.
func (d *Desk) Book() *store.Book { return d.book }

// Rates are the editions the desk settles under.
func (d *Desk) Rates() *rates.Set { return d.rates }

// UseRates puts another set of editions in force for new settlements.
func (d *Desk) UseRates(set *rates.Set) { d.rates = set }

// Profile is the elevator as set up; its Business is empty before set-up.
func (d *Desk) Profile() house.Profile { return d.profile }

// Now is the time as facts carry it.
func (d *Desk) Now() string { return journal.Stamp(d.clock()) }

// Today is the calendar day at the desk.
func (d *Desk) Today() quantity.Date {
	return quantity.MustDate(d.clock().In(d.place).Format(time.DateOnly))
}

// Local turns a fact's time into the time on the desk's wall, to the minute.
func (d *Desk) Local(at string) string {
	t, err := time.Parse(journal.TimeLayout, at)
	if err != nil {
		return at
	}
	return t.In(d.place).Format("2006-01-02 15:04")
}
