package tickets

import (
	"context"
	"strconv"
	"strings"

	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Tickets is the list of all tickets, narrowed by one line, with the paper of
// the one chosen. The list is read a page at a time, so it is as quick in a
// book of ten years as in a new one.
type Tickets struct {
	session *session.Session
	line    string
	read    ticketLine
	found   []office.Found
	all     int64
	more    bool // there are further pages
	fresh   bool // found belongs to the line

	chosen string // load id
	paper  ticketPaper
}

// NewTickets makes the list without reading it; [Tickets.Reload] does that.
func NewTickets(f *session.Session) *Tickets {
	t := &Tickets{session: f, fresh: true}
	t.read = readTicketLine(f, "")
	t.paper.session = f
	f.OnShowTickets(t.Type)
	return t
}

// Line is what stands in the filter.
func (t *Tickets) Line() string { return t.line }

// Type takes what now stands in the filter and narrows the list.
func (t *Tickets) Type(line string) {
	if line == t.line {
		return
	}
	t.line = line
	t.read = readTicketLine(t.session, line)
	t.Reload()
}

// Reload reads the first page again.
func (t *Tickets) Reload() {
	search := t.read.search
	t.fresh = false
	t.fetch("tickets", search, func(page []office.Found, all int64) {
		t.found, t.all, t.fresh = page, all, true
		t.keepChosen()
	})
}

// More reads the page after the last row there is.
func (t *Tickets) More() {
	if !t.more || !t.fresh || len(t.found) == 0 {
		return
	}
	search := t.read.search
	search.Before = t.found[len(t.found)-1].Ticket
	t.more = false
	t.fetch("tickets", search, func(page []office.Found, all int64) {
		t.found, t.all = append(t.found, page...), all
	})
}

func (t *Tickets) fetch(topic string, search office.Search, take func([]office.Found, int64)) {
	var page []office.Found
	var all int64
	t.session.Run(model.Job{
		Topic: topic,
		Do: func(ctx context.Context, _ func(int, int)) (err error) {
			page, all, err = office.FindTickets(ctx, t.session.Desk, search)
			return err
		},
		Done: func(err error) {
			if err != nil {
				t.session.Fail(err)
				return
			}
			t.more = len(page) == search.Limit && !search.Refused
			take(page, all)
			t.session.Window.Redraw()
		},
	})
}

// keepChosen keeps the chosen ticket, or takes the first of the list.
func (t *Tickets) keepChosen() {
	if _, still := session.Find(t.found, func(r office.Found) bool { return r.ID == t.chosen }); still {
		t.paper.open(t.chosen)
		return
	}
	t.chosen = ""
	if len(t.found) > 0 {
		t.chosen = t.found[0].ID
	}
	t.paper.open(t.chosen)
}

// Choose takes a row by its key. Near the end of the list it fetches more.
func (t *Tickets) Choose(key string) {
	if key == t.chosen {
		return
	}
	t.chosen = key
	t.paper.open(key)
	if n := len(t.found); n > 0 && t.found[n-1].ID == key {
		t.More()
	}
}

// Chosen is the key of the chosen row; empty when the list is empty.
func (t *Tickets) Chosen() string { return t.chosen }

// Load is the load of the chosen ticket; nil when there is none.
func (t *Tickets) Load() *load.Load { return t.paper.load }

// Reading says how the line was understood.
func (t *Tickets) Reading() string { return t.read.words() }

// Counted says how many tickets there are.
func (t *Tickets) Counted() string {
	shown := int64(len(t.found))
	switch {
	case !t.fresh:
		return session.Say("looking …")
	case t.all == 0:
		return session.Say("none")
	case t.all == 1:
		return session.Say("1 found")
	case shown < t.all:
		return session.Say("%s of %s, the newest first", session.Counted(shown), session.Counted(t.all))
	}
	return session.Say("%s found", session.Counted(t.all))
}

// Empty is what to do when nothing is listed.
func (t *Tickets) Empty() string {
	switch {
	case !t.fresh:
		return ""
	case strings.TrimSpace(t.line) == "":
		return session.Say("No ticket has been issued yet. Receive the first truck on the yard: Ctrl+N.")
	}
	return session.Say("Nothing fits. Take a word away, or press Escape to begin anew.")
}

// Clear empties the line, and reports whether anything stood in it.
func (t *Tickets) Clear() bool {
	if t.line == "" {
		return false
	}
	t.Type("")
	return true
}

// Unit is what the nets are in.
func (t *Tickets) Unit() string { return t.session.Desk.Profile().WeightUnit().String() }

// Rows are the tickets, with cells in the order of the columns: ticket, day,
// time, grower, commodity, truck, net, moisture, bushels, payable, state.
func (t *Tickets) Rows() []model.Row {
	unit := t.session.Desk.Profile().WeightUnit()
	out := make([]model.Row, len(t.found))
	for i, r := range t.found {
		out[i] = t.row(r, unit)
	}
	return out
}

func (t *Tickets) row(r office.Found, unit quantity.Unit) model.Row {
	when := r.IssuedAt
	ticket := strconv.FormatInt(r.Ticket, 10)
	if r.Ticket == 0 {
		when, ticket = r.EndedAt, session.NoFigure
	}
	day, hour, _ := strings.Cut(t.session.Desk.Local(when), " ")
	day = t.session.ShortDay(day)
	state := ticketState(r)
	f := ticketFigures(r)
	return model.Row{
		Key: r.ID, State: state.State,
		Cells: []string{
			ticket, day, hour, r.GrowerName, session.GrainName(r.Commodity), r.Truck,
			f.cell(f.ScaleNet, unit, 0), f.moisture(), f.bushels(), f.payable(), state.Text,
		},
	}
}

// figuresOf are the figures of a ticket in a list; none where the load was never
// settled, or where the book no longer has them as they were written down.
type figuresOf struct {
	settle.Summary
	known bool
}

func ticketFigures(r office.Found) figuresOf {
	s, err := r.Recorded().Summary()
	return figuresOf{s, err == nil}
}

func (f figuresOf) cell(a quantity.Amount, unit quantity.Unit, places int32) string {
	return session.FigureIn(a, f.known, unit, places)
}

func (f figuresOf) moisture() string {
	if !f.known || f.Moisture == nil {
		return session.NoFigure
	}
	return f.cell(*f.Moisture, quantity.Percent, 1)
}

// bushels is what the grain comes to: bushels where they are used, else what was
// settled by.
func (f figuresOf) bushels() string {
	a, counted := f.DryQuantity()
	return session.FigureIn(a, f.known && counted, quantity.Bushel, 2)
}

// payable is what was paid, or that the price comes later.
func (f figuresOf) payable() string {
	switch {
	case !f.known || f.Weighed:
		return session.NoFigure
	case f.Priced():
		return f.Payable.Fixed(2)
	}
	return session.Say("later")
}

// ticketState is how a ticket stands, in a word.
func ticketState(r office.Found) model.Remark {
	switch load.Phase(r.Phase) {
	case load.Void:
		if r.ReissuedBy != 0 {
			return model.Remark{State: model.Stop, Text: session.Say("void, see %d", r.ReissuedBy)}
		}
		return model.Remark{State: model.Stop, Text: session.Say("void")}
	case load.Corrected:
		return model.Remark{State: model.Locked, Text: session.Say("corrected")}
	case load.TurnedAway:
		return model.Remark{State: model.Stop, Text: session.Say("refused")}
	}
	switch {
	case r.Corrects != 0:
		return model.Remark{State: model.Wait, Text: session.Say("corrects %d", r.Corrects)}
	case r.Reissues != 0:
		return model.Remark{State: model.Wait, Text: session.Say("reissues %d", r.Reissues)}
	case r.Manual != "":
		return model.Remark{State: model.Warn, Text: session.Say("manual weight")}
	}
	return model.Remark{State: model.OK, Text: session.Say("issued")}
}
