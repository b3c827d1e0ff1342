package rates

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/discount"
	"tenthpoint/internal/rates/drying"
	"tenthpoint/internal/rates/handling"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/rates/shrink"
	"tenthpoint/internal/tomlfile"
)

// Status is the permitted use of an edition.
type Status string

const (
	// Example editions are invented. They are marked "example - not for trade" everywhere.
	Example Status = "example"
	// House editions are an elevator's own posted rates.
	House Status = "house"
	// Statute editions restate a published rule.
	Statute Status = "statute"
)

// Edition is one commodity's rates for one period.
type Edition struct {
	ID        string
	Title     string
	Schedule  string // the series of editions it belongs to, such as "main"
	Commodity grain.Commodity
	From      quantity.Date // first day in force
	Until     quantity.Date // last day in force; zero means until replaced
	Status    Status
	Corrects  string // id of the edition this one corrects, if any
	Format    Format
	Origin    tomlfile.Origin
	Units     rule.Units
	Rounding  rule.Places
	Order     []string
	Dockage   DockageRule
	Shrink    shrink.Rule
	Handling  handling.Rule
	Drying    drying.Rule
	Discounts []discount.Rule
	Shares    Shares
	// Factors are those the edition declares itself; Commodity has them too.
	Factors []grain.Factor

	File string // the name it was read by, for messages
	Text []byte // the file as read
	Hash string // SHA-256 of Text, in hex
}

// DockageRule is the edition's addition to the grain's own recording rule (7 CFR 810.104): dockage
// is taken off the net weight before anything else. Its Source is empty where none is taken of the
// grain.
type DockageRule struct {
	// MustTest refuses to settle a load whose dockage was not tested; without
	// it an untested load has none taken off.
	MustTest bool
	Rounding quantity.Rounding
	Source   message.Text
}

// Shares says how a settlement is split among owners.
type Shares struct {
	// Remainder says who gets the remainder when every share has been rounded down: "first", "last"
	// or "largest".
	Remainder string
	Source    message.Text
}

// Factor returns a factor of the commodity in the unit of the edition's discount for it, which is
// the default unit of typed figures.
func (e *Edition) Factor(id grain.FactorID) (grain.Factor, bool) {
	for _, d := range e.Discounts {
		if d.Factor.ID == id {
			return d.Factor, true
		}
	}
	return e.Commodity.Factor(id)
}

// By returns the edition with its commodity from other tables of law, which decide how results are
// recorded. The rules of the edition itself stay the same.
func (e *Edition) By(t *grain.Tables) *Edition {
	if e == nil || t == nil || t == grain.First() {
		return e
	}
	c, err := t.ByID(e.Commodity.ID)
	if err != nil {
		return e // the catalog is the program's, so this is the same commodity
	}
	by := *e
	if !e.Dockage.Source.IsZero() {
		c = c.TakingDockage()
	}
	by.Commodity = c.With(e.Factors...)
	return &by
}

// Within is a reference without the name of the edition, where that is already said. Other sources
// are unchanged.
func (e *Edition) Within(source message.Text) message.Text {
	if row, is := e.row(source); is {
		return row
	}
	return source
}

// LineOf is the line of the edition's file that a reference names; false for other sources.
func (e *Edition) LineOf(source message.Text) (line int, found bool) {
	row, is := e.row(source)
	if args := row.Args(); is && len(args) == 2 {
		line, found = args[1].(int)
	}
	return line, found
}

// row takes the row out of a reference that [tomlfile.Table.Source] made.
func (e *Edition) row(source message.Text) (row message.Text, is bool) {
	args := source.Args()
	if len(args) != 2 || args[0] != any(e.ID) {
		return row, false
	}
	row, is = args[1].(message.Text)
	return row, is
}
