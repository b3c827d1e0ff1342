package growers

import (
	"context"
	"strings"

	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Growers is the list of those who bring grain, and the card of the one chosen:
// shares, trucks with their stored tares, contracts, and what the season has
// brought.
type Growers struct {
	session *session.Session
	line    string
	chosen  string // code

	account    daysheet.Account
	accountOf  string // whose account that is; empty while it is being added up
	accountErr error
}

// NewGrowers makes the list.
func NewGrowers(f *session.Session) *Growers { return &Growers{session: f} }

// Line is what stands in the filter.
func (g *Growers) Line() string { return g.line }

// Type narrows the list to those who have every word of the line in code, name,
// address or the number of a truck.
func (g *Growers) Type(line string) {
	g.line = line
	g.keepChosen()
}

// Clear empties the line, and reports whether anything stood in it.
func (g *Growers) Clear() bool {
	if g.line == "" {
		return false
	}
	g.Type("")
	return true
}

// Reload takes the book's word anew.
func (g *Growers) Reload() {
	g.accountOf = ""
	g.keepChosen()
}

// keepChosen keeps the chosen grower, or takes the first of the list.
func (g *Growers) keepChosen() {
	fits := g.fits()
	if _, still := session.Find(fits, func(one elevator.Grower) bool { return one.ID == g.chosen }); still {
		g.Choose(g.chosen)
		return
	}
	if len(fits) == 0 {
		g.chosen = ""
		return
	}
	g.Choose(fits[0].ID)
}

func (g *Growers) fits() []elevator.Grower {
	var out []elevator.Grower
	for _, one := range g.session.Known().Growers {
		text := strings.Join([]string{one.ID, one.Name, one.Address, one.Phone}, " ")
		for _, t := range g.trucksOf(one.ID) {
			text += " " + t.ID + " " + t.Plate
		}
		if session.HasAll(text, g.line) {
			out = append(out, one)
		}
	}
	return out
}

func (g *Growers) trucksOf(code string) []elevator.Truck {
	var out []elevator.Truck
	for _, t := range g.session.Known().Trucks {
		if t.Grower == code && code != "" {
			out = append(out, t)
		}
	}
	return out
}

// Chosen is the code of the chosen grower; empty when the list is empty.
func (g *Growers) Chosen() string { return g.chosen }

// HasChosen reports whether a grower is in hand.
func (g *Growers) HasChosen() bool { return g.chosen != "" }

// Choose takes a grower and has the season added up away from the window.
func (g *Growers) Choose(code string) {
	if g.chosen == code && g.accountOf == code {
		return
	}
	g.chosen, g.accountOf, g.accountErr = code, "", nil
	var account daysheet.Account
	g.session.Run(model.Job{
		Topic: "account",
		Do: func(ctx context.Context, _ func(int, int)) (err error) {
			account, err = office.Account(ctx, g.session.Desk, code, seasonBegan(g.session), quantity.Date{})
			return err
		},
		Done: func(err error) { g.account, g.accountOf, g.accountErr = account, code, err },
	})
}

// seasonMonth is the month a season begins in: before winter wheat comes in.
const seasonMonth = 6

// seasonBegan is the first day of the season that today lies in.
func seasonBegan(f *session.Session) quantity.Date {
	today := f.Desk.Today()
	year := today.Year()
	if today.Month() < seasonMonth {
		year--
	}
	first, _ := quantity.NewDate(year, seasonMonth, 1)
	return first
}

// Counted says how many there are.
func (g *Growers) Counted() string {
	n := len(g.fits())
	if n == 1 {
		return session.Say("1 grower")
	}
	return session.Say("%d growers", n)
}

// Empty is what to do when nobody is listed.
func (g *Growers) Empty() string {
	if strings.TrimSpace(g.line) == "" {
		return session.Say("No grower is written down yet. Press Ctrl+G for the first.")
	}
	return session.Say("Nobody fits. Take a word away, or press Ctrl+G to write a new grower down.")
}

// Rows are the growers: code, name, shares, trucks, and what to look at.
func (g *Growers) Rows() []model.Row {
	fits := g.fits()
	out := make([]model.Row, len(fits))
	for i, one := range fits {
		trucks := g.trucksOf(one.ID)
		note := g.oldTares(trucks)
		out[i] = model.Row{
			Key: one.ID, State: note.State,
			Cells: []string{one.ID, one.Name, g.sharesCell(one), trucksCell(trucks), note.Text},
		}
	}
	return out
}

// sharesCell names the parts a grower's loads come in: "2/3, 1/3".
func (g *Growers) sharesCell(one elevator.Grower) string {
	text := ""
	for _, o := range session.UsualShares(g.session, one) {
		text = session.Join(", ", text, shareWords(o))
	}
	return text
}

func trucksCell(trucks []elevator.Truck) string {
	ids := make([]string, len(trucks))
	for i, t := range trucks {
		ids[i] = t.ID
	}
	return strings.Join(ids, ", ")
}

// oldTareDays is how long a stored tare is taken without a word. It is a
// choice of this program: mud, fuel and tarps change an empty truck within a
// month. No law is restated by it.
const oldTareDays = 30

// oldTares says which of the trucks' stored tares are old.
func (g *Growers) oldTares(trucks []elevator.Truck) model.Remark {
	var old []string
	for _, t := range trucks {
		if isOldTare(g.session, t) {
			old = append(old, t.ID)
		}
	}
	switch len(old) {
	case 0:
		return model.Remark{}
	case 1:
		return model.Remark{State: model.Warn, Text: session.Say("tare of %s is old", old[0])}
	}
	return model.Remark{State: model.Warn, Text: session.Say("%d tares are old", len(old))}
}

// isOldTare reports whether a truck's stored tare was taken too long ago.
func isOldTare(f *session.Session, t elevator.Truck) bool {
	return t.Tare != nil && t.Taken.DaysUntil(f.Desk.Today()) > oldTareDays
}

// TicketsOf shows the tickets of the chosen grower.
func (g *Growers) TicketsOf() { g.session.ShowTickets(session.Say("grower") + " " + g.chosen) }

// grower is the one chosen.
func (g *Growers) grower() (elevator.Grower, bool) { return g.session.Known().Grower(g.chosen) }
