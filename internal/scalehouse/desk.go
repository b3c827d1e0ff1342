package scalehouse

import (
	"context"
	"sync"
	"time"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/law"
	"tenthpoint/internal/load"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/office"
	"tenthpoint/internal/published"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/signing"
)

// Desk is one place of work on a book. Its methods may be called from one
// goroutine at a time.
type Desk struct {
	book   Book
	own    *rates.Set       // the editions of this house
	office []*rates.Edition // those that its head office publishes
	rates  *rates.Set       // both
	charts *chart.Set
	laws   *law.Set
	name   string
	clock  func() time.Time
	place  *time.Location
	who    elevator.Person
	engine settle.Engine                                   // settles new loads and closes days
	check  func(*load.Load, guard.Setting) []guard.Finding // the guards' findings about a load

	profile elevator.Profile
	people  []elevator.Person

	key  signing.Key // of this computer
	ring ring        // what the book says of it

	proofs proofs // who typed a PIN

	reading sync.Mutex                // of kept editions
	kept    map[string]*rates.Edition // read from the book, by hash
	tables  map[string]*grain.Tables  // of law, by hash
}

// Options are a desk's dependencies besides its book.
type Options struct {
	Name string // of this desk, as written into facts
	// Computer is the account and the computer it runs at, written beside the name: "mae@scale1".
	Computer string
	Rates    *rates.Set
	Charts   *chart.Set // moisture charts of dial meters; nil has none
	// Laws are the published rules in use; nil has those of the program alone.
	Laws *law.Set
	// Clock returns the time; nil is the computer's clock.
	Clock func() time.Time
	// Place is the time zone of the business day; nil is the computer's.
	Place *time.Location
	// Key is the key of this computer; zero signs nothing.
	Key signing.Key
	// Who is signed in; see [Desk.SignIn].
	Who string
	// Check finds what is improbable about a load; nil is what the guards find.
	Check func(*load.Load, guard.Setting) []guard.Finding
}

// Open starts work on a book.
func Open(ctx context.Context, b Book, o Options) (*Desk, error) {
	d := &Desk{book: b, own: o.Rates, charts: o.Charts, name: o.Name, clock: o.Clock, place: o.Place, engine: settle.Current, check: o.Check, kept: map[string]*rates.Edition{}, laws: o.Laws, key: o.Key, tables: map[string]*grain.Tables{}, proofs: proofs{since: map[string]time.Time{}}}
	if d.laws == nil {
		d.laws, _ = law.NewSet(law.Shipped()...) // compared with each other by a test
	}
	if d.clock == nil {
		d.clock = time.Now
	}
	if d.place == nil {
		d.place = time.Local
	}
	if d.check == nil {
		d.check = guard.Check
	}
	if d.name == "" {
		d.name = "desk"
	}
	if o.Computer != "" {
		d.name += ", " + o.Computer
	}
	if err := d.reload(ctx); err != nil {
		return nil, err
	}
	if o.Who != "" {
		return d, d.SignIn(o.Who)
	}
	return d, nil
}

// reload reads the current profile and people.
func (d *Desk) reload(ctx context.Context) error {
	profiles, err := office.RecordsOf[elevator.Profile](ctx, d.book)
	if err != nil {
		return err
	}
	if len(profiles) > 0 {
		d.profile = profiles[0]
	}
	if d.people, err = office.RecordsOf[elevator.Person](ctx, d.book); err != nil {
		return err
	}
	pins, err := office.RecordsOf[elevator.PIN](ctx, d.book)
	d.proofs.usePINs(pins)
	if err != nil {
		return err
	}
	return usePublished(ctx, d)
}

// usePublished puts the editions of the head office before those of the desk.
func usePublished(ctx context.Context, d *Desk) error {
	received, err := office.RecordsOf[published.Received](ctx, d.book)
	if err != nil {
		return err
	}
	d.office, err = published.Editions(received, func(hash string) (*rates.Edition, error) { return d.Kept(ctx, hash) })
	d.UseRates(d.own)
	return err
}

// Book is the book the desk works on.
func (d *Desk) Book() Book { return d.book }

// Reader is the same book, for answers.
func (d *Desk) Reader() office.Book { return d.book }

// Rates are the editions the desk settles under.
func (d *Desk) Rates() *rates.Set {
	if d.rates != nil && d.profile.UnderGrainAct() {
		return d.rates.UnderGrainAct()
	}
	return d.rates
}

// UseRates replaces the house's own editions for new settlements.
func (d *Desk) UseRates(set *rates.Set) { d.own, d.rates = set, set.Under(d.office...) }

// Profile is the elevator as set up; its Business is empty before set-up.
func (d *Desk) Profile() elevator.Profile { return d.profile }

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

// Charts are the moisture charts in use.
func (d *Desk) Charts() *chart.Set { return d.charts }

// UseCharts replaces the charts for new tests.
func (d *Desk) UseCharts(charts *chart.Set) { d.charts = charts }

// Engine settles new loads and closes days.
func (d *Desk) Engine() settle.Engine { return d.engine }

// remember has an edition at hand whose text a write keeps in the book, read anew as it will be from
// there: what follows in the same write is settled under it.
func remember(d *Desk, e *rates.Edition) error {
	kept, err := rates.Read(e.ID, e.Text)
	if err != nil {
		return err
	}
	d.reading.Lock()
	defer d.reading.Unlock()
	d.kept[kept.Hash] = kept
	return nil
}

// Kept returns the edition a ticket was settled under, from the book: its text as of that day. A
// book never changes the text it keeps, so it is read once.
func (d *Desk) Kept(ctx context.Context, hash string) (*rates.Edition, error) {
	d.reading.Lock()
	defer d.reading.Unlock()
	if e, ok := d.kept[hash]; ok {
		return e, nil
	}
	e, err := office.KeptEdition(ctx, d.book, hash)
	if err == nil {
		d.kept[hash] = e
	}
	return e, err
}
