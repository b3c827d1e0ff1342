package tickets

import (
	"context"
	"strings"

	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Tickets is the list of all tickets, filtered by a search line, with the paper of the chosen one.
// The list is read a page at a time, so it is as quick in a book of ten years as in a new one.
type Tickets struct {
	session *session.Session
	line    string
	read    ticketLine
	found   []office.Found
	all     int64
	more    bool // there are further pages
	fresh   bool // found belongs to the line

	chosen string  // load id
	Ticket *Ticket // the chosen one
}

// NewTickets makes the list without reading it; [Tickets.Reload] does that.
func NewTickets(f *session.Session) *Tickets {
	t := &Tickets{session: f, fresh: true, Ticket: &Ticket{session: f}}
	t.read = readTicketLine(f, "")
	f.OnOpen("tickets", t.Type)
	for _, mark := range slipMarks {
		f.Scans[mark] = t.openScanned
	}
	return t
}

// Line is the text of the filter.
func (t *Tickets) Line() string { return t.line }

// Type takes the text of the filter and narrows the list.
func (t *Tickets) Type(line string) {
	if line == t.line {
		return
	}
	t.line = line
	t.read = readTicketLine(t.session, line)
	t.Reload()
}

// Reload reads the first page of the list again.
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

// keepChosen keeps the chosen ticket, or takes the first of the list, and reads
// it again.
func (t *Tickets) keepChosen() {
	t.chosen = session.KeepChosen(t.found, func(r office.Found) string { return r.ID }, t.chosen)
	t.Ticket.open(t.chosen)
}

// Choose takes a row by its key. Near the end of the list it fetches more.
func (t *Tickets) Choose(key string) {
	if key == t.chosen {
		return
	}
	t.chosen = key
	t.Ticket.open(key)
	if n := len(t.found); n > 0 && t.found[n-1].ID == key {
		t.More()
	}
}

// Chosen is the key of the chosen row; empty when the list is empty.
func (t *Tickets) Chosen() string { return t.chosen }

// Find brings the list to the front with an empty line.
func (t *Tickets) Find() {
	t.Clear()
	t.session.Go("tickets")
}

// Load is the load of the chosen ticket; nil when there is none.
func (t *Tickets) Load() *load.Load { return t.Ticket.load }

// Reading describes how the line was parsed.
func (t *Tickets) Reading() string { return t.read.words(t.session.Language) }

// Counted says how many tickets there are.
func (t *Tickets) Counted() string {
	shown := int64(len(t.found))
	switch {
	case !t.fresh:
		return t.session.Say("looking …")
	case t.all == 0:
		return t.session.Say("none")
	case t.all == 1:
		return t.session.Say("1 found")
	case shown < t.all:
		return t.session.Say("%s of %s, the newest first", session.Counted(shown), session.Counted(t.all))
	}
	return t.session.Say("%s found", session.Counted(t.all))
}

// Empty returns what to do when nothing is listed.
func (t *Tickets) Empty() string {
	switch {
	case !t.fresh:
		return ""
	case strings.TrimSpace(t.line) == "":
		return t.session.Say("No ticket has been issued yet. Receive the first truck on the yard: Ctrl+N.")
	}
	return t.session.Say("Nothing fits. Take a word away, or press Escape to start over.")
}

// Clear empties the line, and reports whether it held text.
func (t *Tickets) Clear() bool {
	if t.line == "" {
		return false
	}
	t.Type("")
	return true
}

// columns of the list.
func (t *Tickets) columns() model.Columns[row] {
	return model.Columns[row]{
		model.Figures(t.session.Say("Ticket"), 5, row.number),
		model.Words(t.session.Say("Day"), 5, row.day),
		model.Words(t.session.Say("Time"), 5, row.hour).Dropped(7),
		model.Words(t.session.Say("Grower"), 12, func(r row) string { return r.GrowerName }).Wishing(18).Growing(),
		model.Words(t.session.Say("Grain"), 8, func(r row) string { return session.GrainInList(t.session.Language, r.Commodity) }).Wishing(12).Dropped(2),
		model.Words(t.session.Say("Truck"), 4, func(r row) string { return r.Truck }).Dropped(6),
		model.Figures(t.session.Say("Net %s", t.session.Desk.Profile().WeightUnit()), 6, row.net).Dropped(3),
		model.Figures(t.session.Say("Moist"), 4, row.moisture).Dropped(5),
		model.Figures(t.session.Say("Bushels"), 10, row.bushels).Dropped(1),
		model.Figures(t.session.Say("Payable $"), 9, row.payable).Dropped(4),
		model.Words(t.session.Say("State"), 11, func(r row) string { return r.state.Text }).Wishing(13).Stated(),
	}
}

// Columns are the columns of the list.
func (t *Tickets) Columns() []model.Column { return t.columns().Heads() }

// Rows are the tickets found.
func (t *Tickets) Rows() []model.Row {
	columns := t.columns()
	out := make([]model.Row, len(t.found))
	for i, found := range t.found {
		r := rowOf(t.session, found)
		out[i] = model.Row{Key: r.ID, State: r.state.State, Cells: columns.Cells(r)}
	}
	return out
}
