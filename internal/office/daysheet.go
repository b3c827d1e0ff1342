package office

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"

	"tenthpoint/internal/book"
	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/internal/settle"
)

// DayClosed is the fact that a business day has been closed.
type DayClosed struct {
	Day    quantity.Date `json:"day"`
	Remark string        `json:"remark,omitempty"`
	// Notes are what stood open that evening.
	Notes daysheet.Notes `json:"notes"`
	// Sheet is the SHA-256 of everything the sheet was made of, so that a sheet
	// printed again is known for the same.
	Sheet string `json:"sheet,omitempty"`
	// Engine says how the sheet was written down to be hashed. It is left out for
	// the first one.
	Engine settle.Engine `json:"engine,omitzero"`
}

// Kind names the fact in the journal.
func (DayClosed) Kind() string { return "day.closed" }

// ClosingOf tells who closed a day and when; found is false while it is open.
func ClosingOf(ctx context.Context, d Desk, day quantity.Date) (fact journal.Fact, closed DayClosed, found bool, err error) {
	facts, err := d.Reader().FactsOf(ctx, "day "+day.String())
	if err != nil || len(facts) == 0 {
		return journal.Fact{}, DayClosed{}, false, err
	}
	last := facts[len(facts)-1]
	decoder := json.NewDecoder(bytes.NewReader(last.Body))
	return last, closed, true, decoder.Decode(&closed)
}

// DaySheet adds a business day up. The sheet of a closed day is the one that
// was closed; should the book say otherwise by now, it says so.
func DaySheet(ctx context.Context, d Desk, day quantity.Date) (daysheet.Sheet, error) {
	fact, closed, isClosed, err := ClosingOf(ctx, d, day)
	if err != nil {
		return daysheet.Sheet{}, err
	}
	l := readNow(ctx, d)
	f, err := DayFacts(d, l, day)
	if err != nil {
		return daysheet.Sheet{}, err
	}
	if f.Example, err = isExample(ctx, d, f.Tickets); err != nil {
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
	differs := closed.Sheet != "" && closed.Sheet != again
	sheet.Closed = &daysheet.Closing{By: fact.Who, At: d.Local(fact.At), Remark: closed.Remark, Differs: differs}
	return sheet, nil
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

// profileOn is the elevator as it was set up when a day was closed; on an open
// day, as it is.
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
	sum := sha256.Sum256([]byte(text))
	return hex.EncodeToString(sum[:]), nil
}

// DayFacts reads what a day's sheet is made of, but for its notes.
func DayFacts(d Desk, l Lists, day quantity.Date) (daysheet.Facts, error) {
	f := daysheet.Facts{Day: day}
	rows, err := l.Loads(book.LoadFilter{OnDay: day.String()})
	if err != nil {
		return f, err
	}
	for _, r := range rows {
		t, err := sheetTicket(d, r)
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
func countedOn(l Lists, number int64) (quantity.Date, error) {
	if number == 0 {
		return quantity.Date{}, nil
	}
	rows, err := l.Loads(book.LoadFilter{Ticket: number})
	if err != nil || len(rows) == 0 {
		return quantity.Date{}, err
	}
	return ListedDay(rows[0].IssuedDay)
}

func positionBefore(l Lists, day quantity.Date) (daysheet.Position, error) {
	rows, err := l.StockBefore(day.String())
	if err != nil {
		return nil, err
	}
	var out daysheet.Position
	for _, r := range rows {
		out = append(out, daysheet.Stock{Commodity: r.Commodity, Name: commodityName(r.Commodity), Bin: r.Bin, Weight: r.Weight})
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
