package office

import (
	"context"
	"regexp"
	"strconv"
	"strings"

	"tenthpoint/internal/book"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/keyring"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/textsearch"
)

// Search selects tickets, and Term is one word of it.
type (
	Search = book.Search
	Term   = book.Term
)

// Found is one load as a list shows it.
type Found = book.LoadRow

// FindTickets lists tickets, the newest first, and returns their total number. It only reads the
// book, so it may run beside other acts.
func FindTickets(ctx context.Context, d Desk, s Search) (page []Found, all int64, err error) {
	if s, err = byEitherCard(ctx, d, s); err != nil {
		return nil, 0, err
	}
	s = onTheClock(d, s)
	if page, err = d.Reader().Search(ctx, s); err != nil {
		return nil, 0, err
	}
	if s.Before == 0 && len(page) < s.Limit {
		return page, int64(len(page)), nil
	}
	all, err = d.Reader().CountFound(ctx, s)
	return page, all, err
}

// SearchLine is a parsed ticket search: the search, and each part of it in words.
type SearchLine struct {
	Search Search
	Parts  []message.Text
	today  quantity.Date
	say    func(english string) string
}

// ReadSearch parses a line word by word, on a day and in the language of the elevator or in
// English. Other words are searched for in names, numbers and commodities.
func ReadSearch(text string, today quantity.Date, say func(english string) string) SearchLine {
	l := SearchLine{today: today, say: say}
	if scanned, err := scaleticket.ReadSquare(strings.TrimSpace(text)); err == nil {
		l.ticket(scanned.Ticket)
		return l
	}
	words := strings.Fields(text)
	for len(words) > 0 {
		words = words[l.readWord(words):]
	}
	return l
}

// readWord parses the first word, with the next where it needs one, and returns the number of words
// used.
func (l *SearchLine) readWord(words []string) int {
	word := strings.ToLower(words[0])
	if len(words) > 1 && l.exact(word, words[1]) {
		return 2
	}
	switch {
	case l.isWord(word, "today"):
		l.days(l.today.String(), l.today.String())
	case l.isWord(word, "yesterday"):
		l.days(l.today.AddDays(-1).String(), l.today.AddDays(-1).String())
	case l.state(word), l.period(word):
	default:
		l.term(words[0])
	}
	return 1
}

// isWord reports whether a typed word is one of the search's keywords, in the language of the
// elevator or in English.
func (l *SearchLine) isWord(typed, english string) bool {
	return textsearch.Equal(typed, english) || textsearch.Equal(typed, l.say(english))
}

// exact understands "truck 77", "grower 114", "ticket 1042", and words on what was found of a load.
func (l *SearchLine) exact(kind, which string) bool {
	switch {
	case l.isWord(kind, "truck"):
		l.Search.Truck = which
		l.part("truck %s and no other", which)
	case l.isWord(kind, "grower"):
		l.Search.Grower = which
		l.part("grower %s and who shares with %s", which, which)
	case l.isWord(kind, "ticket"):
		n, err := strconv.ParseInt(strings.ReplaceAll(unlettered(which), ",", ""), 10, 64)
		if err != nil || n < 1 {
			return false
		}
		l.ticket(n)
	default:
		return l.ofLoad(kind, which)
	}
	return true
}

// unlettered is a number without the letters of a site: "KH-1042" is 1042.
func unlettered(number string) string {
	letters, rest, lettered := strings.Cut(number, "-")
	if lettered && elevator.CheckLetters(strings.ToUpper(letters)) == nil {
		return rest
	}
	return number
}

func (l *SearchLine) ticket(n int64) {
	l.Search.Ticket = n
	l.part("ticket %d and no other", n)
}

// states are the words for how a ticket ended.
var states = map[string]load.Phase{"void": load.Void, "corrected": load.Corrected, "issued": load.Ticketed}

func (l *SearchLine) state(word string) bool {
	for name, phase := range states {
		if l.isWord(word, name) {
			l.Search.Phases = append(l.Search.Phases, string(phase))
			l.Parts = append(l.Parts, message.Words(name))
			return true
		}
	}
	if l.isWord(word, "refused") {
		l.Search.Refused = true
		l.part("loads rejected, which have no ticket")
		return true
	}
	return false
}

// dateBegun is a day of the calendar, or the beginning of one: a month, or a month
// half typed.
var dateBegun = regexp.MustCompile(`^[12]\d{3}-(\d{0,2}(-\d{0,2})?)?$`)

// afterAll sorts behind every way to end a date that has been begun.
const afterAll = "~"

// period understands a day, a month, and two of either with two dots between.
func (l *SearchLine) period(word string) bool {
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
func (l *SearchLine) days(from, to string) {
	l.Search.FromDay = from
	if to != "" {
		l.Search.ToDay = to + afterAll
	}
	switch {
	case from == to:
		l.part("of %s", from)
	case to == "":
		l.part("since %s", from)
	case from == "":
		l.part("until %s", to)
	default:
		l.part("from %s until %s", from, to)
	}
}

// term is any other word.
func (l *SearchLine) term(word string) {
	t := Term{Text: word}
	for _, c := range grain.All() {
		if textsearch.Contains(l.say(c.Name), word) || textsearch.Contains(c.ID, word) {
			t.Commodities = append(t.Commodities, c.ID)
		}
	}
	l.Search.Terms = append(l.Search.Terms, t)
	l.part("“%s” in a number, name, truck, or grain", word)
}

func (l *SearchLine) part(format string, args ...any) {
	l.Parts = append(l.Parts, message.New(format, args...))
}

// A code is enough of a hash that two tickets of one book do not share it.
const (
	codeLength = 12
	leastCode  = 8
)

// Code is the short code on a ticket: the first 12 characters of the hash of
// the fact that issued it. [TicketByCode] finds the ticket by it.
func Code(ctx context.Context, d Desk, l *load.Load) (string, error) {
	facts, err := d.Reader().FactsOf(ctx, LoadSubject(l.ID))
	if err != nil {
		return "", err
	}
	return codeIn(facts), nil
}

// Vouched says who signed a ticket; nothing before it is issued, and in a house without keys.
func Vouched(ctx context.Context, d Desk, l *load.Load) (message.Text, error) {
	facts, err := d.Reader().FactsOf(ctx, LoadSubject(l.ID))
	if err != nil {
		return message.Text{}, err
	}
	for _, f := range facts {
		if f.Kind == (load.Issued{}).Kind() {
			by, err := keyring.Over(ctx, d.Reader(), f.Seq)
			return by.Message(), err
		}
	}
	return message.Text{}, nil
}

// CodeOf is the short code of a ticket by the fact that issued it.
func CodeOf(issued journal.Fact) string { return issued.Hash[:min(codeLength, len(issued.Hash))] }

func codeIn(facts []journal.Fact) string {
	for _, f := range facts {
		if f.Kind == (load.Issued{}).Kind() {
			return CodeOf(f)
		}
	}
	return ""
}

// TicketByCode finds the ticket that carries a short code, by the fact that issued
// it.
func TicketByCode(ctx context.Context, d Desk, code string) (*load.Load, error) {
	code = strings.ToLower(strings.TrimSpace(code))
	if len(code) < leastCode {
		return nil, message.Invalid.Errorf("the code %q is too short to find a ticket by. Type all %d letters and digits from the foot of the slip", code, codeLength)
	}
	for f, err := range d.Reader().Facts(ctx, book.FactFilter{Kind: load.Issued{}.Kind(), Hash: code}) {
		if err != nil {
			return nil, err
		}
		if id, ok := LoadOfSubject(f.Subject); ok {
			return Load(ctx, d, id)
		}
	}
	if l, err := reenteredByCode(ctx, d, code); l != nil || err != nil {
		return l, err
	}
	return nil, message.NotFound.Errorf("no ticket in this book carries the code %q. Check the letters; the code is %d letters and digits from the foot of the slip", code, codeLength)
}

// reenteredByCode finds a ticket that was entered again from the slip with a code; nil where none
// was.
func reenteredByCode(ctx context.Context, d Desk, code string) (*load.Load, error) {
	passed, err := RecordsOf[numbering.Passed](ctx, d.Reader())
	if err != nil {
		return nil, err
	}
	rows, err := passedLoads(bookNow{ctx, d.Reader()}, passed)
	if err != nil {
		return nil, err
	}
	for _, r := range rows {
		if l, err := Load(ctx, d, r.ID); err != nil || l.Slip != nil && strings.HasPrefix(l.Slip.Code, code) {
			return l, err
		}
	}
	return nil, nil
}

// numberedLists are the lists that say which tickets a book has.
type numberedLists interface {
	Records(kind string) ([]book.Record, error)
	Loads(book.LoadFilter) ([]book.LoadRow, error)
}

// AbsentTickets are the tickets passed over that are not in the book: those still missing, and those
// declared lost.
func AbsentTickets(l numberedLists) (missing, gone []int64, err error) {
	passed, err := book.RecordsIn[numbering.Passed](l)
	if err != nil || len(passed) == 0 {
		return nil, nil, err
	}
	lost, err := book.RecordsIn[numbering.Lost](l)
	if err != nil {
		return nil, nil, err
	}
	rows, err := passedLoads(l, passed)
	if err != nil {
		return nil, nil, err
	}
	has := map[int64]bool{}
	for _, r := range rows {
		has[r.Ticket] = true
	}
	missing, gone = numbering.Absent(passed, lost, func(number int64) bool { return has[number] })
	return missing, gone, nil
}

// MissingTickets are the tickets that are on paper only, and not declared lost.
func MissingTickets(ctx context.Context, d Desk) ([]int64, error) {
	missing, _, err := AbsentTickets(bookNow{ctx, d.Reader()})
	return missing, err
}

// passedLoads are the loads with tickets among the numbers passed over.
func passedLoads(l numberedLists, passed []numbering.Passed) (out []book.LoadRow, err error) {
	for _, p := range passed {
		if p.Series != numbering.Ticket {
			continue
		}
		rows, err := l.Loads(book.LoadFilter{FromTicket: p.First, ToTicket: p.Last})
		if err != nil {
			return nil, err
		}
		out = append(out, rows...)
	}
	return out, nil
}

// LastTicket is the highest ticket number given so far; found is false while
// no ticket has been issued.
func LastTicket(ctx context.Context, d Desk) (number int64, found bool, err error) {
	rows, err := d.Reader().Loads(ctx, book.LoadFilter{Newest: true, FromTicket: 1, Limit: 1})
	if err != nil || len(rows) == 0 {
		return 0, false, err
	}
	return rows[0].Ticket, true, nil
}
