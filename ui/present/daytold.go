package present

import (
	"fmt"
	"strings"

	"tenthpoint/internal/daysheet"
)

// Told are the tickets that the manager must look at before signing: voided,
// corrected, turned away, typed by hand, let through, doubted.
func (s *DaySheet) Told() []Row {
	var out []Row
	add := func(state State, t daysheet.Ticket, what, words string) {
		number := t.Load
		if t.Number > 0 {
			number = counted(t.Number)
		}
		out = append(out, Row{
			Key: fmt.Sprintf("%d %s %d", t.Number, t.Load, len(out)), State: state,
			Cells: []string{number, s.frame.Date(t.Day), t.Grower, what, words},
		})
	}
	for _, p := range s.sheet.Parts {
		for _, t := range p.Struck {
			add(Stop, t, s.ending(t), join(", ", t.EndedWho, Say(t.Reason)))
		}
	}
	for _, t := range s.sheet.Later {
		add(Stop, t, Say("%s, taken back", s.ending(t)), join(", ", t.EndedWho, Say(t.Reason)))
	}
	for _, t := range s.sheet.Corrections {
		add(Wait, t, Say("corrects %d", t.Corrects), Say("of %s, by %s", s.frame.Date(t.CorrectsOn), t.Weigher))
	}
	for _, t := range s.sheet.Reissues {
		add(Wait, t, Say("in place of %d", t.Reissues), Say("of %s, void, by %s", s.frame.Date(t.ReissuesOn), t.Weigher))
	}
	for _, t := range s.sheet.Refused {
		add(Stop, t, Say("turned away"), join(", ", t.EndedWho, Say(t.Reason)))
	}
	for _, t := range s.sheet.Manual {
		add(Warn, t, Say("typed weight"), translate(strings.Join(t.Manual, "; ")))
	}
	for _, t := range s.sheet.Accepted {
		add(Warn, t, Say("let through"), translate(strings.Join(t.Accepted, "; ")))
	}
	for _, t := range s.sheet.Flagged {
		add(Warn, t, Say("doubted"), translate(strings.Join(t.Flags, "; ")))
	}
	return out
}

// Choose takes a ticket to look at in hand.
func (s *DaySheet) Choose(key string) { s.chosen = key }

// ending is what became of a ticket.
func (s *DaySheet) ending(t daysheet.Ticket) string {
	if t.EndedBy > 0 {
		return Say("corrected by %d", t.EndedBy)
	}
	if t.ReissuedBy > 0 {
		return Say("void, reissued as %d", t.ReissuedBy)
	}
	return Say("void")
}

// NothingTold is said when there is nothing to tell.
func (s *DaySheet) NothingTold() string {
	return Say("Every ticket of the day stands, every weight came from the scale, and no moisture was doubted.")
}

// Evening is what stands open on the day: trucks, samples, disputes, meters.
func (s *DaySheet) Evening() []Saying {
	var out []Saying
	tell := func(word string, lines []string, nothing string) {
		if len(lines) == 0 {
			out = append(out, Saying{OK, word, nothing})
			return
		}
		out = append(out, Saying{Warn, word, translate(strings.Join(lines, "\n"))})
	}
	if row, chosen := find(s.Told(), func(r Row) bool { return r.Key == s.chosen }); chosen {
		out = append(out, Saying{row.State, join(" ", Say("ticket %s:", row.Cells[0]), row.Cells[3]), row.Cells[4]})
	}
	if c := s.sheet.Closed; c != nil && c.Differs {
		out = append(out, Saying{Stop, Say("not what was closed"), Say("The book gives other figures for this day now than in the evening it was closed. Check the book and go back to a backup before anybody signs.")})
	}
	if c := s.sheet.Closed; c != nil && c.Remark != "" {
		out = append(out, Saying{Plain, Say("remark"), c.Remark})
	}
	n := s.sheet.Notes
	tell(Say("on the yard"), n.Yard, Say("No truck is without its ticket."))
	tell(Say("samples"), n.Samples, Say("None is due."))
	tell(Say("disputes"), n.Disputes, Say("None is open."))
	tell(Say("meters"), n.Meters, Say("None is overdue or outside its limit."))
	return out
}
