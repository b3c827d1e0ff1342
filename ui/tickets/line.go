package tickets

import (
	"strings"

	"tenthpoint/internal/office"
	"tenthpoint/ui/session"
)

// pageOfTickets is the number of tickets fetched at a time.
const pageOfTickets = 100

// ticketLine is a parsed ticket search.
type ticketLine struct {
	search office.Search
	read   []string // each part in words
}

// readTicketLine understands a line as [office.ReadSearch] does.
func readTicketLine(f *session.Session, text string) ticketLine {
	line := office.ReadSearch(text, f.Desk.Today(), func(english string) string { return f.Say(english) })
	l := ticketLine{search: line.Search}
	l.search.Limit = pageOfTickets
	for _, part := range line.Parts {
		l.read = append(l.read, f.Text(part))
	}
	return l
}

// words is the whole line as it was understood.
func (l *ticketLine) words(in session.Language) string {
	if len(l.read) == 0 {
		return in.Say("Type a number, a grower, a truck, a day, or a grain. F1 tells what else.")
	}
	return strings.Join(l.read, " · ")
}
