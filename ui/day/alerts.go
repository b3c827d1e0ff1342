package day

import (
	"fmt"
	"strings"

	"tenthpoint/internal/daysheet"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Told are the tickets that the manager must look at before signing: voided,
// corrected, turned away, typed by hand, let through, doubted.
func (s *DaySheet) Told() []model.Row {
	var out []model.Row
	add := func(state model.State, t daysheet.Ticket, what, words string) {
		number := t.Load
		if t.Number > 0 {
			number = session.Counted(t.Number)
		}
		out = append(out, model.Row{
			Key: fmt.Sprintf("%d %s %d", t.Number, t.Load, len(out)), State: state,
			Cells: []string{number, s.session.Date(t.Day), t.Grower, what, words},
		})
	}
	for _, p := range s.sheet.Parts {
		for _, t := range p.Struck {
			add(model.Stop, t, s.ending(t), session.Join(", ", t.EndedWho, session.Say(t.Reason)))
		}
	}
	for _, t := range s.sheet.Later {
		add(model.Stop, t, session.Say("%s, taken back", s.ending(t)), session.Join(", ", t.EndedWho, session.Say(t.Reason)))
	}
	for _, t := range s.sheet.Corrections {
		add(model.Wait, t, session.Say("corrects %d", t.Corrects), session.Say("of %s, by %s", s.session.Date(t.CorrectsOn), t.Weigher))
	}
	for _, t := range s.sheet.Reissues {
		add(model.Wait, t, session.Say("in place of %d", t.Reissues), session.Say("of %s, void, by %s", s.session.Date(t.ReissuesOn), t.Weigher))
	}
	for _, t := range s.sheet.Refused {
		add(model.Stop, t, session.Say("turned away"), session.Join(", ", t.EndedWho, session.Say(t.Reason)))
	}
	for _, t := range s.sheet.Manual {
		add(model.Warn, t, session.Say("typed weight"), session.Say(strings.Join(t.Manual, "; ")))
	}
	for _, t := range s.sheet.Accepted {
		add(model.Warn, t, session.Say("let through"), session.Say(strings.Join(t.Accepted, "; ")))
	}
	for _, t := range s.sheet.Flagged {
		add(model.Warn, t, session.Say("doubted"), session.Say(strings.Join(t.Flags, "; ")))
	}
	return out
}

// Choose takes a ticket to look at in hand.
func (s *DaySheet) Choose(key string) { s.chosen = key }

// ending is what became of a ticket.
func (s *DaySheet) ending(t daysheet.Ticket) string {
	if t.EndedBy > 0 {
		return session.Say("corrected by %d", t.EndedBy)
	}
	if t.ReissuedBy > 0 {
		return session.Say("void, reissued as %d", t.ReissuedBy)
	}
	return session.Say("void")
}

// NothingTold is said when there is nothing to tell.
func (s *DaySheet) NothingTold() string {
	return session.Say("Every ticket of the day stands, every weight came from the scale, and no moisture was doubted.")
}

// Evening is what stands open on the day: trucks, samples, disputes, meters.
func (s *DaySheet) Evening() []model.Remark {
	var out []model.Remark
	tell := func(word string, lines []string, nothing string) {
		if len(lines) == 0 {
			out = append(out, model.Remark{State: model.OK, Word: word, Text: nothing})
			return
		}
		out = append(out, model.Remark{State: model.Warn, Word: word, Text: session.Say(strings.Join(lines, "\n"))})
	}
	if row, chosen := session.Find(s.Told(), func(r model.Row) bool { return r.Key == s.chosen }); chosen {
		out = append(out, model.Remark{State: row.State, Word: session.Join(" ", session.Say("ticket %s:", row.Cells[0]), row.Cells[3]), Text: row.Cells[4]})
	}
	if c := s.sheet.Closed; c != nil && c.Differs {
		out = append(out, model.Remark{State: model.Stop, Word: session.Say("not what was closed"), Text: session.Say("The book gives other figures for this day now than in the evening it was closed. Check the book and go back to a backup before anybody signs.")})
	}
	if c := s.sheet.Closed; c != nil && c.Remark != "" {
		out = append(out, model.Remark{State: model.Plain, Word: session.Say("remark"), Text: c.Remark})
	}
	n := s.sheet.Notes
	tell(session.Say("on the yard"), n.Yard, session.Say("No truck is without its ticket."))
	tell(session.Say("samples"), n.Samples, session.Say("None is due."))
	tell(session.Say("disputes"), n.Disputes, session.Say("None is open."))
	tell(session.Say("meters"), n.Meters, session.Say("None is overdue or outside its limit."))
	return out
}
