package terminal

import (
	"errors"
	"strconv"
	"strings"
	"time"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
)

// Figures as people type them on a command line, each parsed within limits with a readable error.

// ParsePercent reads a percent from 0 to 100.
func ParsePercent(name, text string) (quantity.Amount, error) { return entry.Percent(name).Parse(text) }

// ParseFinding reads "test-weight=54.2" or "musty=yes", as a grain or an edition
// measures it.
func ParseFinding(c grain.Commodity, by interface {
	Factor(grain.FactorID) (grain.Factor, bool)
}, text string) (load.Finding, error) {
	id, result, err := SplitResult(text)
	if err != nil {
		return load.Finding{}, err
	}
	factor, err := entry.FactorOf(c, by, id)
	if err != nil {
		return load.Finding{}, err
	}
	return entry.ParseFinding(factor, result)
}

// TicketNumber is a ticket as its number is typed.
type TicketNumber int64

// UnmarshalText reads a number above zero, with or without commas.
func (n *TicketNumber) UnmarshalText(text []byte) error {
	plain := strings.ReplaceAll(strings.TrimSpace(string(text)), ",", "")
	number, err := strconv.ParseInt(plain, 10, 64)
	if err != nil || number < 1 {
		return message.Invalid.Errorf("%q is no number of a ticket", string(text))
	}
	*n = TicketNumber(number)
	return nil
}

// LoadNamed finds a load by its id, "L12", or by the number of its ticket.
func (p *Session) LoadNamed(text string) (*load.Load, error) {
	text = strings.TrimSpace(text)
	if strings.HasPrefix(strings.ToUpper(text), "L") {
		return office.Load(p, p.Desk, strings.ToUpper(text))
	}
	var number TicketNumber
	if err := number.UnmarshalText([]byte(text)); err != nil {
		return nil, Refusal("Give the load as \"tenth yard\" lists it, like L12, or the number of its ticket", "%q is neither a load nor a ticket", text)
	}
	return office.Ticket(p, p.Desk, int64(number))
}

// GrowerID finds a grower by code or name. An unknown code may still be on old tickets, and is
// returned unchanged.
func (p *Session) GrowerID(text string) (string, error) {
	g, err := entry.Grower(office.NewEntering(p, p.Desk), text)
	var unknown entry.Unknown
	if errors.As(err, &unknown) && len(unknown.Near) == 0 {
		return strings.TrimSpace(text), nil
	}
	return g.ID, err
}

// OnlyGrower is the grower that a list is narrowed to, as [Session.GrowerID] finds it; empty where
// none is named.
func (p *Session) OnlyGrower(text string) (string, error) {
	if text == "" {
		return "", nil
	}
	return p.GrowerID(text)
}

// OnlyGrain is the id of the grain that a list or a rule is narrowed to; empty where none is named.
func OnlyGrain(text string) (string, error) {
	if text == "" {
		return "", nil
	}
	found, err := entry.Commodity(text)
	return found.ID, err
}

// SpanTo reads a span that ends today unless it says so, and begins so many days before its end.
func (p *Session) SpanTo(from, to string, days int) (first, last quantity.Date, err error) {
	if last, err = p.DayOrToday(to); err != nil {
		return first, last, err
	}
	first, err = entry.ParseDay("From", from, p.Today())
	if err == nil && first.IsZero() {
		first = last.AddDays(-days)
	}
	return first, last, err
}

// Span reads the two days of a span; a day not given is zero.
func (p *Session) Span(from, to string) (first, last quantity.Date, err error) {
	if first, err = entry.ParseDay("From", from, p.Today()); err != nil {
		return first, last, err
	}
	last, err = entry.ParseDay("To", to, p.Today())
	return first, last, err
}

// DayOrToday reads a day; the default is today.
func (p *Session) DayOrToday(text string) (quantity.Date, error) {
	day, err := entry.ParseDay("Day", text, p.Today())
	if err == nil && day.IsZero() {
		day = p.Today()
	}
	return day, err
}

// Moment is a local time, typed as day and hour, as facts carry it; nothing where none was typed.
func (t *Terminal) Moment(text string) (string, error) {
	if text == "" {
		return "", nil
	}
	at, err := time.ParseInLocation("2006-01-02 15:04", text, t.Place)
	if err != nil {
		return "", Refusal("Write it like 2026-10-01 18:00", "%q is no day and hour", text)
	}
	return journal.Stamp(at), nil
}
