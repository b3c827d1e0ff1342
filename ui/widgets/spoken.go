package widgets

import (
	"strings"

	"tenthpoint/ui/model"
)

// Role is what a widget is to somebody who does not see it.
type Role string

// The roles.
const (
	EntryRole  Role = "entry"
	FindRole   Role = "find one of a list"
	TickRole   Role = "check box"
	ButtonRole Role = "button"
	TableRole  Role = "table"
	TextRole   Role = "text"
	CardsRole  Role = "board"
	// PictureRole is a picture whose parts can be chosen.
	PictureRole Role = "picture"
)

// Spoken is a widget as it would be read out: what it is called, what it is, and what it holds.
type Spoken struct {
	ID, Name string
	Role     Role
	Value    string
}

// Spoken are the stops of the order that can have the focus, in the order in which Tab reads them.
func (r *FocusOrder) Spoken() []Spoken {
	var out []Spoken
	for _, s := range r.Stops {
		if !s.Stop.Visible() {
			continue
		}
		one := spokenOf(s.Stop)
		one.ID = s.id
		if s.name != "" {
			one.Name = s.name
		}
		out = append(out, one)
	}
	return out
}

// Name says what a stop is called that does not show its own name, as an entry after its label.
func (r *FocusOrder) Name(id, name string) {
	if i := r.find(id); i >= 0 {
		r.Stops[i].name = name
	}
}

// spokenOf is what a widget says of itself.
func spokenOf(w Keyed) Spoken {
	switch w := w.(type) {
	case *Autocomplete:
		return Spoken{Role: FindRole, Value: w.Text}
	case *FieldEntry:
		return Spoken{Role: EntryRole, Value: w.Text}
	case *Checkbox:
		return Spoken{Role: TickRole, Name: w.Text, Value: ticked(w.On())}
	case *Button:
		return Spoken{Role: ButtonRole, Name: w.Text}
	case *Table:
		return Spoken{Role: TableRole, Name: firstHeading(w.fitted.columns), Value: chosenCells(w)}
	case *Chooser:
		return Spoken{Role: PictureRole, Name: w.Name, Value: w.Says}
	case *Cards:
		return Spoken{Role: CardsRole, Value: w.chosenName()}
	}
	if says, speaks := w.(interface{ Says() string }); speaks {
		return Spoken{Role: TextRole, Value: says.Says()}
	}
	return Spoken{}
}

// firstHeading names a table by its first column with a heading.
func firstHeading(columns []model.Column) string {
	for _, c := range columns {
		if c.Title != "" {
			return c.Title
		}
	}
	return ""
}

// chosenCells are the cells of the chosen row.
func chosenCells(t *Table) string {
	if !t.rows.Has(t.rows.Chosen) {
		return ""
	}
	return strings.Join(t.rows.Rows[t.rows.Chosen].Cells, ", ")
}

// chosenName is the truck whose card has the keyboard.
func (c *Cards) chosenName() string {
	if at, row := c.find(c.chosen); at >= 0 {
		return c.columns[at].Title + ", " + c.columns[at].Rows[row].Truck
	}
	return ""
}

// Says is what is read; empty where it has no text.
func (r *Reader) Says() string {
	if r.Text == nil {
		return ""
	}
	return r.Text()
}
