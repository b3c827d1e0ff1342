package tickets

import (
	"regexp"
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scaleticket/barcode"
	"tenthpoint/internal/textsearch"
	"tenthpoint/ui/session"
)

// pageOfTickets is how many tickets are fetched at a time.
const pageOfTickets = 100

// ticketLine is what a person typed to find tickets, understood.
type ticketLine struct {
	search office.Search
	read   []string // each part in words
}

// dateBegun is a day of the calendar, or the beginning of one: a month, or a
// month half typed.
var dateBegun = regexp.MustCompile(`^[12]\d{3}-(\d{0,2}(-\d{0,2})?)?$`)

// afterAll sorts behind every way to end a date that has been begun.
const afterAll = "~"

// readTicketLine understands a line word by word. Words that mean nothing
// special are looked for in names, numbers and commodities.
func readTicketLine(f *session.Session, text string) ticketLine {
	l := ticketLine{search: office.Search{Limit: pageOfTickets}}
	if p, err := barcode.ParsePayload(strings.TrimSpace(text)); err == nil {
		l.ticket(p.Ticket)
		return l
	}
	words := strings.Fields(text)
	for len(words) > 0 {
		words = words[readWord(f, &l, words):]
	}
	return l
}

// readWord understands the first word, with the next where it asks for one, and
// tells how many it took.
func readWord(f *session.Session, l *ticketLine, words []string) int {
	word := strings.ToLower(words[0])
	if len(words) > 1 && l.exact(word, words[1]) {
		return 2
	}
	today := f.Desk.Today()
	switch {
	case isWord(word, "today"):
		l.days(today.String(), today.String())
	case isWord(word, "yesterday"):
		l.days(today.AddDays(-1).String(), today.AddDays(-1).String())
	case l.state(word), l.period(word):
	default:
		l.term(f, words[0])
	}
	return 1
}

// isWord reports whether a typed word is one of ours, in the language of the
// desk or in English.
func isWord(typed, english string) bool {
	return textsearch.Equal(typed, english) || textsearch.Equal(typed, session.Say(english))
}

// exact understands "truck 77", "grower 114" and "ticket 1042".
func (l *ticketLine) exact(kind, which string) bool {
	switch {
	case isWord(kind, "truck"):
		l.search.Truck = which
		l.say(session.Say("truck %s and no other", which))
	case isWord(kind, "grower"):
		l.search.Grower = which
		l.say(session.Say("grower %s and who shares with %s", which, which))
	case isWord(kind, "ticket"):
		n, ok := session.Number(which)
		if !ok {
			return false
		}
		l.ticket(n)
	default:
		return false
	}
	return true
}

func (l *ticketLine) ticket(n int64) {
	l.search.Ticket = n
	l.say(session.Say("ticket %d and no other", n))
}

// states are the words for how a ticket ended.
var states = map[string]load.Phase{"void": load.Void, "corrected": load.Corrected, "issued": load.Ticketed}

func (l *ticketLine) state(word string) bool {
	for name, phase := range states {
		if isWord(word, name) {
			l.search.Phases = append(l.search.Phases, string(phase))
			l.say(session.Say(name))
			return true
		}
	}
	if isWord(word, "refused") {
		l.search.Refused = true
		l.say(session.Say("loads turned away, which have no ticket"))
		return true
	}
	return false
}

// period understands a day, a month, and two of either with two dots between.
func (l *ticketLine) period(word string) bool {
	from, to, isRange := strings.Cut(word, "..")
	if !isRange {
		if !dateBegun.MatchString(word) {
			return false
		}
		l.days(word, word)
		return true
	}
	for _, end := range []string{from, to} {
		if end != "" && !dateBegun.MatchString(end) {
			return false
		}
	}
	l.days(from, to)
	return true
}

// days narrows to the days that begin with from up to those that begin with to.
func (l *ticketLine) days(from, to string) {
	l.search.FromDay = from
	if to != "" {
		l.search.ToDay = to + afterAll
	}
	switch {
	case from == to:
		l.say(session.Say("of %s", from))
	case to == "":
		l.say(session.Say("since %s", from))
	case from == "":
		l.say(session.Say("until %s", to))
	default:
		l.say(session.Say("from %s until %s", from, to))
	}
}

// term is any other word.
func (l *ticketLine) term(f *session.Session, word string) {
	t := office.Term{Text: word}
	for _, c := range grain.All() {
		if textsearch.Contains(session.GrainName(c.ID), word) || textsearch.Contains(c.ID, word) {
			t.Commodities = append(t.Commodities, c.ID)
		}
	}
	l.search.Terms = append(l.search.Terms, t)
	l.say(session.Say("“%s” in a number, name, truck, or grain", word))
}

func (l *ticketLine) say(words string) { l.read = append(l.read, words) }

// words is the whole line as it was understood.
func (l *ticketLine) words() string {
	if len(l.read) == 0 {
		return session.Say("Type a number, a grower, a truck, a day, or a grain. F1 tells what else.")
	}
	return strings.Join(l.read, " · ")
}
