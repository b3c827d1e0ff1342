package contracts

import (
	"cmp"
	"context"
	"slices"

	"tenthpoint/internal/contract"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/money"
	"tenthpoint/internal/paper"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// List is the list of contracts, the open ones by their last day first, with the paper of the chosen
// one.
type List struct {
	session *session.Session
	line    string
	all     []contract.Filled
	chosen  string // number
	page    *paper.Layout
	failed  error // why the book could not be read
}

// Contracts are the acts on the contracts of the list.
type Contracts struct{ *List }

// NewContracts makes the list; it is read when the screen comes to the front.
func NewContracts(f *session.Session) *Contracts {
	c := &Contracts{&List{session: f}}
	f.OnOpen("contracts", c.Type)
	return c
}

// Reload reads contracts and what is delivered on them and keeps the chosen one.
func (c *List) Reload() {
	c.all, c.failed = filled(c.session)
	slices.SortStableFunc(c.all, func(a, b contract.Filled) int {
		return cmp.Or(cmp.Compare(rank(a), rank(b)), a.Until.Cmp(b.Until), cmp.Compare(a.Number, b.Number))
	})
	c.Choose(c.kept())
}

// filled are all contracts with the tickets applied to them.
func filled(f *session.Session) ([]contract.Filled, error) {
	all, err := office.Contracts(context.Background(), f.Desk)
	if err != nil {
		return nil, err
	}
	return office.ContractFills(context.Background(), f.Desk, all...)
}

// rank is the place of a contract among open, delivered and ended ones.
func rank(c contract.Filled) int {
	switch _, closed := c.Closed(); {
	case closed:
		return 2
	case c.Left.IsZero():
		return 1
	}
	return 0
}

// kept is the contract to choose after the list has changed.
func (c *List) kept() string { return session.KeepChosen(c.fits(), number, c.chosen) }

func number(c contract.Filled) string { return c.Number }

// fits are the contracts that have every word of the line.
func (c *List) fits() []contract.Filled {
	var out []contract.Filled
	for _, one := range c.all {
		text := session.Join(" ", one.Number, one.Grower, c.growerName(one), c.session.GrainName(one.Commodity), c.session.Text(one.Form.Name()), c.note(one))
		if session.HasAll(text, c.line) {
			out = append(out, one)
		}
	}
	return out
}

// Line is the text of the filter.
func (c *List) Line() string { return c.line }

// Type narrows the list. The paper of a contract that stays chosen is not laid out again.
func (c *List) Type(line string) {
	c.line = line
	if number := c.kept(); number != c.chosen {
		c.Choose(number)
	}
}

// Clear empties the line, and reports whether it held text.
func (c *List) Clear() bool {
	if c.line == "" {
		return false
	}
	c.Type("")
	return true
}

// Chosen is the number of the chosen contract; empty when there is none.
func (c *List) Chosen() string { return c.chosen }

// HasChosen reports whether a contract is chosen.
func (c *List) HasChosen() bool { return c.chosen != "" }

// Choose takes a contract.
func (c *List) Choose(number string) {
	c.chosen, c.page = number, nil
	if one, there := c.contract(); there {
		pages := c.paper(one).Layout(report.PageFor(c.session.Desk.Profile().Rules))
		c.page = &pages
	}
}

// contract is the one chosen.
func (c *List) contract() (contract.Filled, bool) {
	return session.Find(c.all, func(one contract.Filled) bool { return one.Number == c.chosen })
}

func (c *List) paper(one contract.Filled) report.Document {
	return money.ContractPaper(one, c.session.GrainName(one.Commodity), c.session.Desk.Profile(), c.session.Desk.Today())
}

// Pages are the chosen contract as it prints.
func (c *List) Pages() *paper.Layout { return c.page }

// Counted is the number of open contracts, in words.
func (c *List) Counted() string {
	open := 0
	for _, one := range c.all {
		if rank(one) == 0 {
			open++
		}
	}
	return c.session.Say("%d of %d to fill", open, len(c.all))
}

// Empty is the sentence shown where no contract is listed.
func (c *List) Empty() string {
	switch {
	case c.failed != nil:
		return c.session.Sentence(c.failed)
	case len(c.all) > 0:
		return c.session.Say("No contract fits. Take a word away.")
	}
	return c.session.Say("No contract is written down yet. Ctrl+K writes the first.")
}

// columns of the list.
func (c *List) columns() model.Columns[contract.Filled] {
	f := c.session
	return model.Columns[contract.Filled]{
		model.Words(f.Say("Number"), 7, number),
		model.Words(f.Say("Grower"), 12, c.growerName).Growing(),
		model.Words(f.Say("Type"), 11, func(one contract.Filled) string { return f.Text(one.Form.Name()) }).Dropped(3),
		model.Words(f.Say("Grain"), 8, func(one contract.Filled) string { return session.GrainInList(f.Language, one.Commodity) }).Dropped(1),
		model.Figures(f.Say("Quantity"), 12, func(one contract.Filled) string { return f.Signs().Write(one.ContractTerms.Quantity.String()) }).Dropped(4),
		model.Figures(f.Say("Still to come"), 12, c.left),
		model.Words(f.Say("Until"), 10, func(one contract.Filled) string { return f.ShortDay(one.Until.String()) }),
		model.Words(f.Say("Price"), 15, func(one contract.Filled) string { return f.Text(one.PriceText()) }).Dropped(2),
		model.Words(f.Say("Note"), 13, c.note).Stated(),
	}
}

// Columns are the columns of the list.
func (c *List) Columns() []model.Column { return c.columns().Heads() }

// Rows are the contracts that fit the line.
func (c *List) Rows() []model.Row {
	columns, fits := c.columns(), c.fits()
	out := make([]model.Row, len(fits))
	for i, one := range fits {
		out[i] = model.Row{Key: one.Number, State: c.state(one), Struck: rank(one) == 2, Cells: columns.Cells(one)}
	}
	return out
}

func (c *List) growerName(one contract.Filled) string {
	if g, known := c.session.Known().Grower(one.Grower); known {
		return g.Name
	}
	return one.Grower
}

func (c *List) left(one contract.Filled) string {
	return c.session.Signs().Write(one.Left.String())
}

// note is the state of a contract: what has to be done first.
func (c *List) note(one contract.Filled) string {
	f := c.session
	end, closed := one.Closed()
	switch {
	case closed:
		return f.Text(contract.ChangeName(end.What))
	case !one.IsSigned():
		return f.Say("not signed")
	case one.Left.IsZero():
		return f.Say("filled")
	case one.Until.Before(c.today()):
		return f.Say("past its last day")
	case isUnpriced(one.ContractTerms):
		return f.Say("%s without price", contract.Unpriced(one.ContractTerms))
	}
	return f.Say("signed")
}

// isUnpriced reports whether some of a contract has no price at all.
func isUnpriced(c elevator.ContractTerms) bool {
	return !c.HasPrice() && contract.Unpriced(c).Sign() > 0
}

func (c *List) today() quantity.Date { return c.session.Desk.Today() }

func (c *List) state(one contract.Filled) model.State {
	switch {
	case rank(one) == 2:
		return model.Locked
	case !one.IsSigned(), one.Left.Sign() > 0 && one.Until.Before(c.today()):
		return model.Warn
	case one.Left.IsZero():
		return model.OK
	}
	return model.Wait
}
