package sheets

import (
	"strconv"

	"tenthpoint/internal/entry/settling"
	"tenthpoint/internal/office/money"
	"tenthpoint/internal/paysheet"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Tickets are those of a grower that are not settled yet, and which of them are chosen.
type Tickets struct {
	session *session.Session
	left    []money.Unsettled
	parts   map[int64]string // of each chosen ticket; empty for all that is left
	at      int64            // the ticket the keyboard is on
}

// HasTicket reports whether the keyboard is on a ticket.
func (s *Tickets) HasTicket() bool { return s.at != 0 }

func (s *Tickets) ticket(number int64) (money.Unsettled, bool) {
	return session.Find(s.left, func(u money.Unsettled) bool { return u.Ticket == number })
}

// chosen are those chosen in the order of the list, without their parts.
func (s *Tickets) chosen() []paysheet.Chosen {
	var out []paysheet.Chosen
	for _, u := range s.left {
		if _, chosen := s.parts[u.Ticket]; chosen {
			out = append(out, paysheet.Chosen{Number: u.Ticket})
		}
	}
	return out
}

// grain is that of the tickets chosen; of the one the keyboard is on, while none is.
func (s *Tickets) grain() string {
	for _, u := range s.left {
		if _, chosen := s.parts[u.Ticket]; chosen {
			return u.Commodity
		}
	}
	u, _ := s.ticket(s.at)
	return u.Commodity
}

// toggle chooses the ticket the keyboard is on, or leaves it out again.
func (s *Tickets) toggle() {
	if _, chosen := s.parts[s.at]; chosen {
		delete(s.parts, s.at)
	} else if s.at != 0 {
		s.parts[s.at] = ""
	}
}

// toggleAll chooses every ticket of the grain the keyboard is on; where they are chosen it leaves all
// out.
func (s *Tickets) toggleAll() {
	of, _ := s.ticket(s.at)
	some := false
	for _, u := range s.left {
		if _, chosen := s.parts[u.Ticket]; !chosen && u.Commodity == of.Commodity {
			s.parts[u.Ticket], some = "", true
		}
	}
	if !some {
		clear(s.parts)
	}
}

// columns of the tickets that are left.
func (s *Tickets) columns() model.Columns[money.Unsettled] {
	f := s.session
	return model.Columns[money.Unsettled]{
		model.Figures(f.Say("Ticket"), 6, func(u money.Unsettled) string { return strconv.FormatInt(u.Ticket, 10) }),
		model.Words(f.Say("Delivered"), 10, func(u money.Unsettled) string { return f.ShortDay(u.Day.String()) }),
		model.Words(f.Say("Grain"), 8, func(u money.Unsettled) string { return session.GrainInList(f.Language, u.Commodity) }).Growing(),
		model.Figures(f.Say("Still open"), 11, func(u money.Unsettled) string { return f.Signs().Write(u.Left.String()) }),
		model.Words(f.Say("Held under"), 12, func(u money.Unsettled) string { return f.Text(u.Under) }).Dropped(1),
		model.Figures(f.Say("Price"), 11, s.price).Dropped(2),
		model.Words(f.Say("Settle"), 9, s.settles).Stated(),
	}
}

// Columns are the columns of the list.
func (s *Tickets) Columns() []model.Column { return s.columns().Heads() }

// Rows are the tickets that are left; those chosen are marked.
func (s *Tickets) Rows() []model.Row {
	columns := s.columns()
	out := make([]model.Row, len(s.left))
	for i, u := range s.left {
		out[i] = model.Row{Key: strconv.FormatInt(u.Ticket, 10), Cells: columns.Cells(u)}
		if _, chosen := s.parts[u.Ticket]; chosen {
			out[i].State = model.OK
		}
	}
	return out
}

func (s *Tickets) price(u money.Unsettled) string {
	if u.Price == nil {
		return session.NoFigure
	}
	return s.session.Signs().Write(u.Price.Written())
}

// settles is the quantity of a ticket that is chosen.
func (s *Tickets) settles(u money.Unsettled) string {
	part, chosen := s.parts[u.Ticket]
	switch {
	case !chosen:
		return ""
	case part == "":
		return s.session.Say("all")
	}
	return part
}

// Chosen is the ticket the keyboard is on.
func (s *Tickets) Chosen() string { return strconv.FormatInt(s.at, 10) }

// Choose puts the keyboard on a ticket; it is chosen for the sheet by [Settle.Toggle].
func (s *Settle) Choose(key string) {
	s.at, _ = session.Number(key)
	if len(s.parts) == 0 {
		s.work() // levies and the posted price are those of another grain
	}
}

// Empty is the sentence shown where no ticket is left.
func (s *Settle) Empty() string {
	switch {
	case s.failed != nil:
		return s.session.Sentence(s.failed)
	case s.texts[settling.Grower] == "":
		return s.session.Say("Name the grower. The tickets that are not settled yet stand here then.")
	}
	return s.session.Say("Everything of this grower is settled.")
}
