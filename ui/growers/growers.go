package growers

import (
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Growers is the list of growers, and the card of the chosen one: shares, trucks with their stored
// tares, contracts, and the season's deliveries.
type Growers struct {
	session *session.Session
	line    string
	chosen  string    // code
	season  seasonSum // the deliveries of the chosen one
}

// NewGrowers makes the list.
func NewGrowers(f *session.Session) *Growers {
	return &Growers{session: f, season: seasonSum{session: f}}
}

// Line is the text of the filter.
func (g *Growers) Line() string { return g.line }

// Type narrows the list to those who have every word of the line in code, name,
// address or the number of a truck.
func (g *Growers) Type(line string) {
	g.line = line
	g.keepChosen()
}

// Clear empties the line, and reports whether it held text.
func (g *Growers) Clear() bool {
	if g.line == "" {
		return false
	}
	g.Type("")
	return true
}

// Reload adds the season up again and keeps the chosen grower.
func (g *Growers) Reload() {
	g.season.forget()
	g.keepChosen()
}

// keepChosen keeps the chosen grower, or takes the first of the list.
func (g *Growers) keepChosen() {
	g.chosen = session.KeepChosen(g.fits(), func(one elevator.Grower) string { return one.ID }, g.chosen)
	if g.HasChosen() {
		g.season.open(g.chosen)
	}
}

func (g *Growers) fits() []elevator.Grower {
	var out []elevator.Grower
	for _, one := range g.session.Known().Growers {
		if one.Into != nil {
			continue // another card is in its place
		}
		text := strings.Join(append([]string{one.ID, one.Name, one.Address, one.Phone}, one.Former...), " ")
		for _, t := range trucksOf(g.session, one.ID) {
			text += " " + t.ID + " " + t.Plate
		}
		if session.HasAll(text, g.line) {
			out = append(out, one)
		}
	}
	return out
}

// Chosen is the code of the chosen grower; empty when the list is empty.
func (g *Growers) Chosen() string { return g.chosen }

// HasChosen reports whether a grower is chosen.
func (g *Growers) HasChosen() bool { return g.chosen != "" }

// Choose takes a grower and has the season's account added up.
func (g *Growers) Choose(code string) {
	g.chosen = code
	g.season.open(code)
}

// Counted returns the number of rows, in words.
func (g *Growers) Counted() string {
	n := len(g.fits())
	if n == 1 {
		return g.session.Say("1 grower")
	}
	return g.session.Say("%d growers", n)
}

// Empty returns what to do when nobody is listed.
func (g *Growers) Empty() string {
	if strings.TrimSpace(g.line) == "" {
		return g.session.Say("No grower is written down yet. Press Ctrl+G for the first.")
	}
	return g.session.Say("Nobody fits. Take a word away, or press Ctrl+G to write a new grower down.")
}

// columns of the list.
func (g *Growers) columns() model.Columns[row] {
	return model.Columns[row]{
		model.Words(g.session.Say("Code"), 4, func(r row) string { return r.ID }),
		model.Words(g.session.Say("Name"), 16, func(r row) string { return r.Name }).Growing(),
		model.Words(g.session.Say("Shares"), 8, row.shares).Wishing(15).Dropped(2),
		model.Words(g.session.Say("Trucks"), 7, row.truckNumbers).Dropped(1),
		model.Words(g.session.Say("Note"), 11, func(r row) string { return r.note.Text }).Wishing(14).Stated(),
	}
}

// Columns are the columns of the list.
func (g *Growers) Columns() []model.Column { return g.columns().Heads() }

// Rows are the growers that fit the line.
func (g *Growers) Rows() []model.Row {
	columns, fits := g.columns(), g.fits()
	out := make([]model.Row, len(fits))
	for i, one := range fits {
		r := rowOf(g.session, one)
		out[i] = model.Row{Key: one.ID, State: r.note.State, Cells: columns.Cells(r)}
	}
	return out
}

// TicketsOf shows the tickets of the chosen grower.
func (g *Growers) TicketsOf() { g.session.ShowTickets(g.session.Say("grower") + " " + g.chosen) }

// grower is the one chosen.
func (g *Growers) grower() (elevator.Grower, bool) { return g.session.Known().Grower(g.chosen) }
