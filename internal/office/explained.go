package office

import (
	"context"
	"strings"

	"tenthpoint/internal/book"
	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// DayExplained is the fact that a manager explained why something entered after a
// day was closed counts on that day or before it: past loads taken over late, a
// clock that stood wrong. Programs that let nothing count before a closed day make
// no such days any more. The sheet stays the one that was closed.
type DayExplained struct {
	Day    quantity.Date `json:"day"`
	Reason string        `json:"reason"`
	// Sheet is the SHA-256 of the sheet as the book gives it by now, so that what
	// is entered later needs an explanation of its own.
	Sheet string `json:"sheet"`
}

// Kind names the fact in the journal.
func (DayExplained) Kind() string { return "day.explained" }

// Check asks for the reason.
func (f DayExplained) Check() error {
	if strings.TrimSpace(f.Reason) == "" {
		return message.Incomplete.Errorf("say why something counts on %s that was entered after it was closed", f.Day)
	}
	return nil
}

// ExplainedSubject is what explanations of a day are facts of.
func ExplainedSubject(day quantity.Date) string { return "explanation of day " + day.String() }

// explanationOf is the explanation of a sheet as the book gives it by now.
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

// wholeJournal is past the number of any fact.
const wholeJournal = 0

// sheetUpTo makes the sheet of a closed day from the journal up to a fact, whatever
// the lists say, and its hash.
func sheetUpTo(ctx context.Context, d Desk, seq int64, closed DayClosed) (s daysheet.Sheet, sum string, err error) {
	then, err := listsUpTo(ctx, d, seq)
	if err != nil {
		return s, "", err
	}
	f, err := DayFacts(d, then, closed.Day)
	if err != nil {
		return s, "", err
	}
	if f.Example, err = isExample(ctx, d, f.Tickets); err != nil {
		return s, "", err
	}
	f.Notes = closed.Notes
	s = daysheet.Make(f)
	sum, err = SheetHash(s, closed.Engine)
	return s, sum, err
}

// listsThen are the loads as they were when a fact was written.
type listsThen struct {
	rows  []book.LoadRow
	stock []book.StockRow
}

// listsUpTo replays every load by the facts up to a number.
func listsUpTo(ctx context.Context, d Desk, seq int64) (listsThen, error) {
	facts := map[string][]journal.Fact{}
	var order []string
	for f, err := range d.Reader().Facts(ctx, book.FactFilter{ToSeq: seq}) {
		if err != nil {
			return listsThen{}, err
		}
		if id, is := LoadOfSubject(f.Subject); is {
			if facts[id] == nil {
				order = append(order, id)
			}
			facts[id] = append(facts[id], f)
		}
	}
	var out listsThen
	var sum book.StockSum
	for _, id := range order {
		l, err := Replay(id, facts[id])
		if err != nil {
			return out, err
		}
		row := RowOf(l)
		if err := sum.Add(row); err != nil {
			return out, err
		}
		out.rows = append(out.rows, row)
	}
	out.stock = sum.Rows()
	return out, nil
}

// Loads chooses by the day they stand on, or by a ticket.
func (l listsThen) Loads(f book.LoadFilter) ([]book.LoadRow, error) {
	var out []book.LoadRow
	for _, r := range l.rows {
		onDay := f.OnDay != "" && (r.IssuedDay == f.OnDay || r.EndedDay == f.OnDay)
		if onDay || f.Ticket > 0 && r.Ticket == f.Ticket {
			out = append(out, r)
		}
	}
	return out, nil
}

// LastTicketBefore is the last number of the last day before a day.
func (l listsThen) LastTicketBefore(day string) (int64, error) {
	last := book.LoadRow{}
	for _, r := range l.rows {
		before := r.Ticket > 0 && r.IssuedDay < day
		if before && (r.IssuedDay > last.IssuedDay || r.IssuedDay == last.IssuedDay && r.Ticket > last.Ticket) {
			last = r
		}
	}
	return last.Ticket, nil
}

// StockBefore is the position in the evening before a day.
func (l listsThen) StockBefore(day string) ([]book.StockRow, error) {
	var out []book.StockRow
	for i, r := range l.stock {
		ends := i+1 == len(l.stock) || !l.stock[i+1].SamePlace(r) || l.stock[i+1].Day >= day
		if r.Day < day && ends && !r.Weight.IsZero() {
			out = append(out, r)
		}
	}
	return out, nil
}
