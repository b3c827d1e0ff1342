package day

import (
	"fmt"

	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/message"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// alert is a ticket that the manager must look at before signing.
type alert struct {
	daysheet.Ticket
	state       model.State
	what, words string
}

func (a alert) number() string {
	if a.Number > 0 {
		return session.Counted(a.Number)
	}
	return a.Load
}

// alertColumns are the columns of the tickets to look at.
func (s *DaySheet) alertColumns() model.Columns[alert] {
	return model.Columns[alert]{
		model.Words(s.session.Say("Ticket"), 6, alert.number),
		model.Words(s.session.Say("Of day"), 10, func(a alert) string { return s.session.Date(a.Day) }).Dropped(2),
		model.Words(s.session.Say("Grower"), 16, func(a alert) string { return a.Grower }),
		model.Words(s.session.Say("What"), 14, func(a alert) string { return a.what }).Stated(),
		model.Words(s.session.Say("Why, who"), 20, func(a alert) string { return a.words }).Growing().Dropped(1),
	}
}

// AlertRows are the tickets to look at as rows of their table.
func (s *DaySheet) AlertRows() []model.Row {
	columns := s.alertColumns()
	var out []model.Row
	for i, a := range s.alerts() {
		out = append(out, model.Row{Key: fmt.Sprintf("%d %s %d", a.Number, a.Load, i), State: a.state, Cells: columns.Cells(a)})
	}
	return out
}

// alerts are the tickets that were voided, corrected, turned away, typed by hand, accepted despite
// a limit, or flagged.
func (s *DaySheet) alerts() []alert {
	var out []alert
	add := func(state model.State, t daysheet.Ticket, what, words string) {
		out = append(out, alert{t, state, what, words})
	}
	for _, p := range s.sheet.Parts {
		for _, t := range p.Struck {
			add(model.Stop, t, s.ending(t), session.Join(", ", t.EndedWho, t.Reason))
		}
	}
	for _, t := range s.sheet.Later {
		add(model.Stop, t, s.session.Say("%s, taken back", s.ending(t)), session.Join(", ", t.EndedWho, t.Reason))
	}
	for _, t := range s.sheet.Corrections {
		add(model.Wait, t, s.session.Say("corrects %d", t.Corrects), s.session.Say("of %s, by %s", s.session.Date(t.CorrectsOn), t.Weigher))
	}
	for _, t := range s.sheet.Reissues {
		add(model.Wait, t, s.session.Say("in place of %d", t.Reissues), s.session.Say("of %s, void, by %s", s.session.Date(t.ReissuesOn), t.Weigher))
	}
	for _, t := range s.sheet.Refused {
		add(model.Stop, t, s.session.Say("rejected"), session.Join(", ", t.EndedWho, t.Reason))
	}
	for _, t := range s.sheet.Manual {
		add(model.Warn, t, s.session.Say("typed weight"), s.session.Text(message.Texts("; ", t.Manual)))
	}
	for _, t := range s.sheet.Accepted {
		add(model.Warn, t, s.session.Say("overridden"), s.session.Text(message.Texts("; ", t.Accepted)))
	}
	for _, t := range s.sheet.Flagged {
		add(model.Warn, t, s.session.Say("doubted"), s.session.Text(message.Texts("; ", t.Flags)))
	}
	return out
}

// Choose takes a ticket to look at by its key.
func (s *DaySheet) Choose(key string) { s.chosen = key }

// ending describes how a ticket ended.
func (s *DaySheet) ending(t daysheet.Ticket) string {
	if t.EndedBy > 0 {
		return s.session.Say("corrected by %d", t.EndedBy)
	}
	if t.ReissuedBy > 0 {
		return s.session.Say("void, reissued as %d", t.ReissuedBy)
	}
	return s.session.Say("void")
}

// NothingTold is the text when there are no alerts.
func (s *DaySheet) NothingTold() string {
	return s.session.Say("Every ticket of the day stands, every weight came from the scale, and no moisture was doubted.")
}

// Evening returns the open items of the day: trucks, samples, disputes, meters.
func (s *DaySheet) Evening() []model.Status {
	var out []model.Status
	tell := func(word string, lines []message.Kept, nothing string) {
		if len(lines) == 0 {
			out = append(out, model.Status{State: model.OK, Word: word, Text: nothing})
			return
		}
		out = append(out, model.Status{State: model.Warn, Word: word, Text: s.session.Text(message.Texts("\n", lines))})
	}
	if row, chosen := session.Find(s.AlertRows(), func(r model.Row) bool { return r.Key == s.chosen }); chosen {
		out = append(out, model.Status{State: row.State, Word: session.Join(" ", s.session.Say("ticket %s:", row.Cells[0]), row.Cells[3]), Text: row.Cells[4]})
	}
	if c := s.sheet.Closed; c != nil && c.Differs {
		out = append(out, model.Status{State: model.Stop, Word: s.session.Say("not what was closed"), Text: s.session.Say("The book gives other figures for this day now than in the evening it was closed. Check the book and go back to a backup before anybody signs.")})
	}
	if c := s.sheet.Closed; c != nil && c.Remark != "" {
		out = append(out, model.Status{State: model.Plain, Word: s.session.Say("remark"), Text: c.Remark})
	}
	n := s.sheet.Notes
	tell(s.session.Say("on the yard"), n.Yard, s.session.Say("No truck is without its ticket."))
	tell(s.session.Say("samples"), n.Samples, s.session.Say("None is due."))
	tell(s.session.Say("disputes"), n.Disputes, s.session.Say("None is open."))
	tell(s.session.Say("meters"), n.Meters, s.session.Say("None is overdue or outside its limit."))
	if len(n.Scales) > 0 {
		out = append(out, model.Status{State: model.Plain, Word: s.session.Say("truck scales"), Text: s.session.Text(message.Texts("\n", n.Scales))})
	}
	return out
}
