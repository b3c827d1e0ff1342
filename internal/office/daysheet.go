package office

import (
	"bytes"
	"context"
	"encoding/json"
	"strings"

	"tenthpoint/internal/book"
	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/digest"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/keyring"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/internal/settle"
)

// DayClosed is the fact that a business day has been closed.
type DayClosed struct {
	Day    quantity.Date `json:"day"`
	Remark string        `json:"remark,omitempty"`
	// Notes are the open items of that evening.
	Notes daysheet.Notes `json:"notes"`
	// Sheet is the SHA-256 of everything the sheet was made of, so that a sheet
	// printed again is known for the same.
	Sheet string `json:"sheet,omitempty"`
	// Engine is the version of the sheet's serialization for its hash. It is left out for the first
	// one.
	Engine settle.Engine `json:"engine,omitzero"`
	// Pinned says that the sheet prints the head of the book, which is this fact. Sheets closed by
	// earlier versions print as before.
	Pinned bool `json:"pinned,omitempty"`
	// Metric says that the sheet prints test weights in kg/hL beside those in lb/bu.
	Metric bool `json:"metric,omitempty"`
}

// Kind names the fact in the journal.
func (DayClosed) Kind() string { return "day.closed" }

// ClosingOf returns who closed a day and when; found is false while it is open.
func ClosingOf(ctx context.Context, d Desk, day quantity.Date) (fact journal.Fact, closed DayClosed, found bool, err error) {
	facts, err := d.Reader().FactsOf(ctx, "day "+day.String())
	if err != nil || len(facts) == 0 {
		return journal.Fact{}, DayClosed{}, false, err
	}
	last := facts[len(facts)-1]
	decoder := json.NewDecoder(bytes.NewReader(last.Body))
	return last, closed, true, decoder.Decode(&closed)
}

// DayExplained is the fact that a manager explained why something entered after a day was closed
// counts on that day or before it: past loads imported late, a wrong clock. Current versions let
// nothing count before a closed day, so they make no such days. The sheet stays as it was closed.
type DayExplained struct {
	Day    quantity.Date `json:"day"`
	Reason string        `json:"reason"`
	// Sheet is the SHA-256 of the sheet as the book gives it now, so that later entries need an
	// explanation of their own.
	Sheet string `json:"sheet"`
}

// Kind names the fact in the journal.
func (DayExplained) Kind() string { return "day.explained" }

// Check requires the reason.
func (f DayExplained) Check() error {
	if strings.TrimSpace(f.Reason) == "" {
		return message.Incomplete.Errorf("say why something counts on %s that was entered after it was closed", f.Day)
	}
	return nil
}

// ExplainedSubject returns the subject of the explanations of a day.
func ExplainedSubject(day quantity.Date) string { return "explanation of day " + day.String() }

// explanationOf returns the explanation of a sheet as the book gives it now.
func explanationOf(ctx context.Context, d Desk, day quantity.Date, sheet string) (*daysheet.Explanation, error) {
	facts, err := d.Reader().FactsOf(ctx, ExplainedSubject(day))
	if err != nil {
		return nil, err
	}
	for _, fact := range facts {
		said, err := journal.ReadBody[DayExplained](fact.Body)
		if err != nil {
			return nil, message.Errorf("fact %d: %w", fact.Seq, err)
		}
		if said.Sheet == sheet {
			return &daysheet.Explanation{By: fact.Who, At: d.Local(fact.At), Reason: said.Reason}, nil
		}
	}
	return nil, nil
}

// DaySheet totals a business day. The sheet of a closed day is the one that was closed; if the book
// now gives another, the sheet says so, and whether later entries are the cause.
func DaySheet(ctx context.Context, d Desk, day quantity.Date) (daysheet.Sheet, error) {
	fact, closed, isClosed, err := ClosingOf(ctx, d, day)
	if err != nil {
		return daysheet.Sheet{}, err
	}
	l := ReadNow(ctx, d)
	f, err := DayFacts(d, l, day)
	if err != nil {
		return daysheet.Sheet{}, err
	}
	if f.Example, err = IsExample(ctx, d, f.Tickets); err != nil {
		return daysheet.Sheet{}, err
	}
	if !isClosed {
		f.Notes, err = EveningNotes(d, l, day)
		return daysheet.Make(f), err
	}
	f.Notes = closed.Notes
	sheet := daysheet.Make(f)
	again, err := SheetHash(sheet, closed.Engine)
	if err != nil {
		return sheet, message.Errorf("the sheet of %s cannot be held against the one that was closed: %w", day, err)
	}
	closing := &daysheet.Closing{By: fact.Who, At: d.Local(fact.At), Remark: closed.Remark, Engine: closed.Engine, Metric: closed.Metric}
	if closed.Pinned {
		closing.Head = journal.HeadOf(fact).OnPaper()
		by, err := keyring.Over(ctx, d.Reader(), fact.Seq)
		if err != nil {
			return sheet, err
		}
		closing.Vouched = by.WithNote()
	}
	if closed.Sheet != "" && closed.Sheet != again {
		sheet, err = closedBefore(ctx, d, fact, closed, closing, sheet, again)
	}
	sheet.Closed = closing
	return sheet, err
}

// closedBefore returns the sheet of a day that the book no longer gives as it was closed: the sheet
// as it was, where only later facts make the difference, else the one the book gives now.
func closedBefore(ctx context.Context, d Desk, fact journal.Fact, closed DayClosed, closing *daysheet.Closing, now daysheet.Sheet, sum string) (daysheet.Sheet, error) {
	closing.Differs = true
	then, asClosed, err := sheetUpTo(ctx, d, fact.Seq, closed)
	if err != nil || asClosed != closed.Sheet {
		return now, ctx.Err() // facts that do not follow from each other were not signed either
	}
	if _, byFacts, err := sheetUpTo(ctx, d, wholeJournal, closed); err != nil || byFacts != sum {
		return now, ctx.Err() // the lists say what no fact does
	}
	closing.Differs = false
	closing.Explained, err = explanationOf(ctx, d, closed.Day, sum)
	closing.Late = closing.Explained == nil
	return then, err
}

// wholeJournal is past the number of any fact.
const wholeJournal = 0

// sheetUpTo rebuilds the sheet of a closed day from the journal up to a fact, ignoring the read
// models, and returns its hash.
func sheetUpTo(ctx context.Context, d Desk, seq int64, closed DayClosed) (s daysheet.Sheet, sum string, err error) {
	then, err := listsUpTo(ctx, d, seq)
	if err != nil {
		return s, "", err
	}
	f, err := DayFacts(d, then, closed.Day)
	if err != nil {
		return s, "", err
	}
	if f.Example, err = IsExample(ctx, d, f.Tickets); err != nil {
		return s, "", err
	}
	f.Notes = closed.Notes
	s = daysheet.Make(f)
	sum, err = SheetHash(s, closed.Engine)
	return s, sum, err
}

// LateSheet returns the hash of a closed day's sheet as the book gives it now, for a day with late
// entries. It refuses every other day: an unchanged sheet needs no explanation, and none may excuse
// a book whose journal no longer gives what was signed.
func LateSheet(ctx context.Context, d Desk, day quantity.Date) (string, error) {
	sheet, err := DaySheet(ctx, d, day)
	switch {
	case err != nil:
		return "", err
	case sheet.Closed == nil:
		return "", message.Refused.Errorf("%s is not closed; there is nothing to explain", day)
	case sheet.Closed.Differs:
		return "", message.Refused.Errorf("the sheet of %s is not the one that was closed, and nothing entered later makes the difference. That cannot be explained: verify the book, and compare it with a backup", day)
	case !sheet.Closed.Late:
		return "", message.Refused.Errorf("the sheet of %s is as it was closed, or its difference has been explained", day)
	}
	f, err := DayFacts(d, ReadNow(ctx, d), day)
	if err != nil {
		return "", err
	}
	_, closed, _, err := ClosingOf(ctx, d, day)
	if err != nil {
		return "", err
	}
	f.Notes = closed.Notes
	return SheetHash(daysheet.Make(f), closed.Engine)
}

// DayPaper is the sheet of a day as a paper, under the elevator's name as it was
// when the day was closed.
func DayPaper(ctx context.Context, d Desk, day quantity.Date) (report.Document, error) {
	sheet, err := DaySheet(ctx, d, day)
	if err != nil {
		return report.Document{}, err
	}
	profile, err := profileOn(ctx, d, day)
	return daysheet.Compose(sheet, profile), err
}

// profileOn returns the profile of the elevator when a day was closed; on an open day, the current
// one.
func profileOn(ctx context.Context, d Desk, day quantity.Date) (elevator.Profile, error) {
	closing, _, isClosed, err := ClosingOf(ctx, d, day)
	if err != nil || !isClosed {
		return d.Profile(), err
	}
	profile := d.Profile()
	for f, err := range d.Reader().Facts(ctx, book.FactFilter{Kind: elevator.Profile{}.Kind(), ToSeq: closing.Seq}) {
		if err != nil {
			return d.Profile(), err
		}
		if profile, err = journal.ReadBody[elevator.Profile](f.Body); err != nil {
			return d.Profile(), err
		}
	}
	return profile, nil
}

func SheetHash(s daysheet.Sheet, by settle.Engine) (string, error) {
	text, err := s.Digest(by)
	if err != nil {
		return "", err
	}
	return digest.Of(text), nil
}

// DayFacts reads the input of a day's sheet, except its notes.
func DayFacts(d Desk, l DayLists, day quantity.Date) (daysheet.Facts, error) {
	f := daysheet.Facts{Day: day}
	rows, err := l.Loads(book.LoadFilter{OnDay: day.String()})
	if err != nil {
		return f, err
	}
	for _, r := range rows {
		t, err := SheetTicket(d, r)
		if err != nil {
			return f, err
		}
		if t.CorrectsOn, err = countedOn(l, t.Corrects); err != nil {
			return f, err
		}
		if t.ReissuesOn, err = countedOn(l, t.Reissues); err != nil {
			return f, err
		}
		f.Tickets = append(f.Tickets, t)
	}
	if f.Last, err = l.LastTicketBefore(day.String()); err != nil {
		return f, err
	}
	f.Before, err = positionBefore(l, day)
	return f, err
}

// countedOn is the day of a ticket whose place another took; none for no ticket.
func countedOn(l DayLists, number int64) (quantity.Date, error) {
	if number == 0 {
		return quantity.Date{}, nil
	}
	rows, err := l.Loads(book.LoadFilter{Ticket: number})
	if err != nil || len(rows) == 0 {
		return quantity.Date{}, err
	}
	return ListedDay(rows[0].IssuedDay)
}

func positionBefore(l DayLists, day quantity.Date) (daysheet.Position, error) {
	rows, err := l.StockBefore(day.String())
	if err != nil {
		return nil, err
	}
	var out daysheet.Position
	for _, r := range rows {
		out = append(out, daysheet.Stock{Commodity: r.Commodity, Name: grain.NameOf(r.Commodity), Bin: r.Bin, Weight: r.Weight})
	}
	return out, nil
}

// ListedDay reads a day of the lists; an empty text is no day.
func ListedDay(text string) (d quantity.Date, err error) {
	if err = d.UnmarshalText([]byte(text)); err != nil {
		return d, message.Errorf("the lists hold %q for a day: %w", text, err)
	}
	return d, nil
}

// DaysClosed are all days closed so far, with the fact of each closing.
func DaysClosed(ctx context.Context, d Desk) ([]journal.Fact, error) {
	var out []journal.Fact
	for f, err := range d.Reader().Facts(ctx, book.FactFilter{Kind: DayClosed{}.Kind()}) {
		if err != nil {
			return nil, err
		}
		out = append(out, f)
	}
	return out, nil
}
