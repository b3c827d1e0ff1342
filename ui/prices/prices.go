package prices

import (
	"cmp"
	"context"
	"slices"
	"strconv"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry/contracting"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/terms"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/ask"
)

// Prices is the list of the bids of a day, those in force before those that others took the place of.
type Prices struct {
	session *session.Session
	day     quantity.Date // zero for today
	all     []bid
	chosen  string
	failed  error // why the book could not be read
}

// bid is a posted price, and whether it is in force.
type bid struct {
	load.Posted
	inForce bool
	key     string
}

// NewPrices makes the list; it is read when the screen comes to the front.
func NewPrices(f *session.Session) *Prices { return &Prices{session: f} }

// Day is the day whose bids are listed.
func (p *Prices) Day() quantity.Date {
	if p.day.IsZero() {
		return p.session.Desk.Today()
	}
	return p.day
}

// Step goes so many days on or back.
func (p *Prices) Step(days int) {
	p.day = p.Day().AddDays(days)
	p.Reload()
}

// Reload reads the bids of the day again.
func (p *Prices) Reload() {
	d := p.session.Desk
	posted, err := terms.PostedOn(d.Reader().Facts(context.Background(), terms.Posted()), p.Day())
	p.all, p.failed = nil, err
	for i, one := range posted {
		p.all = append(p.all, bid{one, terms.InForce(posted, i), strconv.Itoa(i)})
	}
	slices.SortStableFunc(p.all, func(a, b bid) int {
		return cmp.Or(cmp.Compare(rank(a), rank(b)), cmp.Compare(a.Commodity, b.Commodity), cmp.Compare(a.Place, b.Place), cmp.Compare(a.Delivery, b.Delivery))
	})
	p.chosen = session.KeepChosen(p.all, func(b bid) string { return b.key }, p.chosen)
}

func rank(b bid) int {
	if b.inForce {
		return 0
	}
	return 1
}

// Chosen is the chosen bid.
func (p *Prices) Chosen() string { return p.chosen }

// Choose takes a bid.
func (p *Prices) Choose(key string) { p.chosen = key }

// Empty is the sentence shown where no bid is listed.
func (p *Prices) Empty() string {
	if p.failed != nil {
		return p.session.Sentence(p.failed)
	}
	return p.session.Say("No price is posted for %s. F12 posts those of today.", p.session.Date(p.Day()))
}

// Counted is the day, and how many bids are in force.
func (p *Prices) Counted() string {
	n := 0
	for _, b := range p.all {
		n += 1 - rank(b)
	}
	return p.session.Say("%s: %d in force", p.session.Date(p.Day()), n)
}

// columns of the list.
func (p *Prices) columns() model.Columns[bid] {
	f := p.session
	return model.Columns[bid]{
		model.Words(f.Say("Grain"), 12, func(b bid) string { return session.GrainInList(f.Language, b.Commodity) }).Growing(),
		model.Words(f.Say("Place"), 14, func(b bid) string { return session.OrElse(b.Place, f.Say("here")) }).Dropped(1),
		model.Words(f.Say("Month of delivery"), 10, func(b bid) string { return session.OrElse(b.Delivery, f.Say("now")) }),
		model.Figures(f.Say("Price"), 14, func(b bid) string { return f.Signs().Write(b.Price.String()) }),
		model.Words(f.Say("Posted"), 16, func(b bid) string { return f.Desk.Local(b.At) }),
		model.Words(f.Say("By"), 16, func(b bid) string { return b.Who }).Dropped(2),
		model.Words(f.Say("State"), 12, p.state).Stated(),
	}
}

func (p *Prices) state(b bid) string {
	if b.inForce {
		return p.session.Say("in force")
	}
	return p.session.Say("price|replaced")
}

// Columns are the columns of the list.
func (p *Prices) Columns() []model.Column { return p.columns().Heads() }

// Rows are the bids of the day.
func (p *Prices) Rows() []model.Row {
	columns := p.columns()
	out := make([]model.Row, len(p.all))
	for i, b := range p.all {
		out[i] = model.Row{Key: b.key, State: model.OK, Cells: columns.Cells(b)}
		if !b.inForce {
			out[i].State, out[i].Struck = model.Locked, true
		}
	}
	return out
}

// PostAll asks for the prices of today of every grain taken here.
func (p *Prices) PostAll() {
	p.day = quantity.Date{}
	ask.Prices(p.session)
}

// PostOne asks for one bid, also for another place or a month still to come.
func (p *Prices) PostOne() {
	f := p.session
	read := func(values map[string]string) (elevator.PostedPrice, map[string]string) {
		b, problems := contracting.ReadBid(values, office.NewEntering(context.Background(), f.Desk))
		return b, ask.Sentences(f, problems)
	}
	chosen, _ := session.Find(p.all, func(b bid) bool { return b.key == p.chosen })
	filled := ask.Filled{Values: map[string]string{"grain": chosen.Commodity, "place": chosen.Place, "delivery": chosen.Delivery}}
	f.Put(model.Ask{
		Draft: "bid", Title: f.Say("Post a bid"), Yes: f.Say("Post"),
		Text:   f.Say("Tickets take the one for grain that is delivered here now. A bid posted again takes the place of the one before; both stay in the book."),
		Fields: ask.Fields(f, contracting.BidFields(), filled),
		Check: func(values map[string]string) map[string]string {
			_, faults := read(values)
			return faults
		},
		Then: func(values map[string]string) {
			one, _ := read(values)
			if err := scalehouse.PostPrice(context.Background(), f.Desk, one); err != nil {
				f.Fail(err)
				return
			}
			p.day = one.Day
			f.Changed()
			p.Reload()
			f.Notify(model.OK, f.Say("the bid for %s is %s on %s.", f.GrainName(one.Commodity), one.Price, f.Date(one.Day)))
			f.Window.Redraw()
		},
	})
}
