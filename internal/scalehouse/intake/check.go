package intake

import (
	"context"
	"fmt"
	"reflect"
	"slices"

	"tenthpoint/internal/house"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/takeover"
)

// bookCheck holds the rows of a list against the book.
type bookCheck struct {
	desk    office.Desk
	list    List
	growers map[string]house.Grower // in the book
	listed  map[string]bool         // growers in the list itself
	trucks  map[string]house.Truck
}

func newBookCheck(ctx context.Context, d office.Desk, t List) (*bookCheck, error) {
	c := &bookCheck{desk: d, list: t, growers: map[string]house.Grower{}, listed: map[string]bool{}, trucks: map[string]house.Truck{}}
	growers, err := office.Growers(ctx, d)
	if err != nil {
		return nil, err
	}
	for _, g := range growers {
		c.growers[g.ID] = g
	}
	trucks, err := office.Trucks(ctx, d)
	for _, one := range trucks {
		c.trucks[one.ID] = one
	}
	for _, row := range t.Rows {
		if row.Grower != nil {
			c.listed[row.Grower.ID] = true
		}
	}
	return c, err
}

// row adds what the book has against a row, and says what the row would do.
func (c *bookCheck) row(r *takeover.Row) string {
	if len(r.Problems) > 0 {
		return ""
	}
	change := ""
	switch {
	case r.Grower != nil:
		for _, s := range r.Grower.Shares {
			c.needGrower(r, "shares", s.GrowerID)
		}
		was, known := c.growers[r.Grower.ID]
		change = changes(known, was, *r.Grower, was.Name)
	case r.Truck != nil:
		if r.Truck.Grower != "" {
			c.needGrower(r, "grower", r.Truck.Grower)
		}
		was, known := c.trucks[r.Truck.ID]
		change = changes(known, was, *r.Truck, was.ID)
	case r.Past != nil:
		change = "new"
		c.past(r)
	}
	if len(r.Problems) > 0 {
		return ""
	}
	return change
}

func changes(known bool, was, is any, name string) string {
	switch {
	case !known:
		return "new"
	case reflect.DeepEqual(was, is):
		return "as it is"
	}
	return "changes " + name
}

func (c *bookCheck) needGrower(r *takeover.Row, column, id string) {
	if _, known := c.growers[id]; !known && !c.listed[id] {
		r.Problems = append(r.Problems, takeover.Problem{Line: r.Line, Column: column, Reason: fmt.Sprintf("there is no grower %q; take the list of growers over first, or write the code as it is there", id)})
	}
}

// past names the growers of a past load as the book has them, then settles it to
// see whether it can be.
func (c *bookCheck) past(r *takeover.Row) {
	details := &r.Past.Details
	c.needGrower(r, "grower", details.Grower.ID)
	details.Grower.Name = c.growers[details.Grower.ID].Name
	for i, o := range details.Shares {
		c.needGrower(r, "shares", o.ID)
		details.Shares[i].Name = c.growers[o.ID].Name
	}
	if details.Shares == nil {
		details.Shares = c.usualShares(details.Grower.ID)
	}
	if details.Day.After(c.desk.Today()) {
		r.Problems = append(r.Problems, takeover.Problem{Line: r.Line, Column: "day", Reason: fmt.Sprintf("%s has not come yet; today is %s", details.Day, c.desk.Today())})
	}
	if len(r.Problems) > 0 {
		return
	}
	bareprice(c.desk, r.Past)
	l, err := pastReplayed(c.list.Name, *r)
	if err != nil {
		r.Problems = append(r.Problems, takeover.Problem{Line: r.Line, Reason: err.Error()})
		return
	}
	_, problems := office.Preview(c.desk, l)
	for _, p := range problems {
		r.Problems = append(r.Problems, takeover.Problem{Line: r.Line, Column: c.columnOf(p), Reason: p.Sentence})
	}
}

// usualShares are how the grower's loads are parted when the list does not say.
func (c *bookCheck) usualShares(grower string) []load.Owner {
	var out []load.Owner
	for _, s := range c.growers[grower].Shares {
		out = append(out, load.Owner{Party: load.Party{ID: s.GrowerID, Name: c.growers[s.GrowerID].Name}, Parts: s.Parts, Of: s.Of})
	}
	return out
}

// columnOf is the column of the list that a problem of settlement is about, if
// it has one.
func (c *bookCheck) columnOf(p settle.Problem) string {
	for _, name := range []string{p.Field, "factor." + p.Field} {
		if slices.Contains(c.list.Columns, name) {
			return name
		}
	}
	if p.Field == "edition" {
		return "day"
	}
	return ""
}

// bareprice gives a price that was written without a unit the unit the load's
// rates settle in.
func bareprice(d office.Desk, p *takeover.Past) {
	if !p.BarePrice || p.Details.Price == nil {
		return
	}
	if e, err := office.EditionFor(d, &load.Load{Details: p.Details}); err == nil && e != nil {
		price := p.Details.Price.In(quantity.Dollar.Per(e.Units.Settle))
		p.Details.Price, p.BarePrice = &price, false
	}
}

// order is how the rows are written: past loads day by day, so that their
// tickets are numbered in the order of their days; other lists as they stand.
func (t List) order() []int {
	out := make([]int, len(t.Rows))
	for i := range out {
		out[i] = i
	}
	slices.SortStableFunc(out, func(a, b int) int { return t.dayOf(a).Cmp(t.dayOf(b)) })
	return slices.Clip(out)
}

func (t List) dayOf(i int) quantity.Date {
	if p := t.Rows[i].Past; p != nil {
		return p.Details.Day
	}
	return quantity.Date{}
}
