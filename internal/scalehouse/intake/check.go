package intake

import (
	"context"
	"maps"
	"reflect"
	"slices"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry/moving"
	"tenthpoint/internal/imports"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/binlog"
	"tenthpoint/internal/quantity"
)

// bookCheck compares the rows of a list with the book.
type bookCheck struct {
	desk    office.Desk
	list    List
	growers map[string]elevator.Grower // in the book
	listed  map[string]bool            // growers in the list itself
	trucks  map[string]elevator.Truck
	bins    moving.House
	heat    bin.Movement // that the last row of temperatures is
}

func newBookCheck(ctx context.Context, d office.Desk, t List) (*bookCheck, error) {
	c := &bookCheck{desk: d, list: t, growers: map[string]elevator.Grower{}, listed: map[string]bool{}, trucks: map[string]elevator.Truck{}}
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
	if err == nil && t.Kind == imports.Temperatures {
		c.bins, err = binlog.House(ctx, d, d.Today())
	}
	for _, row := range t.Rows {
		if row.Grower != nil {
			c.listed[row.Grower.ID] = true
		}
	}
	return c, err
}

// row adds the book's objections to a row, and returns what the row would change.
func (c *bookCheck) row(r *imports.Row) message.Text {
	if len(r.Problems) > 0 {
		return message.Text{}
	}
	var change message.Text
	switch {
	case r.Grower != nil:
		for _, s := range r.Grower.Shares {
			c.needGrower(r, "shares", s.GrowerID)
		}
		was, known := c.growers[r.Grower.ID]
		change = changes(known, was, c.list.GrowerOnto(was, *r.Grower), was.Name)
	case r.Truck != nil:
		if r.Truck.Grower != "" {
			c.needGrower(r, "grower", r.Truck.Grower)
		}
		was, known := c.trucks[r.Truck.ID]
		change = changes(known, was, c.list.TruckOnto(was, *r.Truck), was.ID)
	case r.Cable != nil:
		change = message.New("new")
		c.cable(r)
	case r.Past != nil:
		change = message.New("new")
		c.past(r)
	}
	if len(r.Problems) > 0 {
		return message.Text{}
	}
	return change
}

func changes(known bool, was, is any, name string) message.Text {
	switch {
	case !known:
		return message.New("new")
	case reflect.DeepEqual(was, is):
		return message.New("as it is")
	}
	return message.New("changes %v", name)
}

func (c *bookCheck) needGrower(r *imports.Row, column, id string) {
	if _, known := c.growers[id]; !known && !c.listed[id] {
		r.Problems = append(r.Problems, imports.Problem{Line: r.Line, Column: column, Reason: message.New("there is no grower %q; take the list of growers over first, or write the code as it is there", id)})
	}
}

// cable reads temperatures as they are typed of a bin.
func (c *bookCheck) cable(r *imports.Row) {
	m, problems := moving.Read(bin.Temperatures, r.Cable.Fields(), c.bins)
	for _, id := range slices.Sorted(maps.Keys(problems)) {
		r.Problems = append(r.Problems, imports.Problem{Line: r.Line, Column: r.Cable.Columns()[id], Reason: message.Of(problems[id])})
	}
	c.heat = m
}

// past asks that a past load has been delivered.
func (c *bookCheck) past(r *imports.Row) {
	if day := r.Past.Facts.Details.Day; day.After(c.desk.Today()) {
		r.Problems = append(r.Problems, imports.Problem{Line: r.Line, Column: "day", Reason: message.New("%s has not come yet; today is %s", day, c.desk.Today())})
	}
}

// order returns the order in which the rows are written: past loads by day, so that their tickets
// are numbered by day; other lists as given.
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
		return p.Facts.Details.Day
	}
	return quantity.Date{}
}
