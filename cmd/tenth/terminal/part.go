package terminal

import (
	"strings"

	"tenthpoint/internal/quantity"
)

// mostPart is more than any ticket brings.
const mostPart = 100_000_000

// TicketPart reads a ticket, or a part of it, as it is typed: "12" or "12=500". Unit is the unit it is
// settled in.
func TicketPart(text string, unit func(ticket int64) (quantity.Unit, error)) (number int64, part *quantity.Amount, err error) {
	typed, rest, parted := strings.Cut(text, "=")
	var ticket TicketNumber
	if err := ticket.UnmarshalText([]byte(typed)); err != nil || !parted {
		return int64(ticket), nil, err
	}
	of, err := unit(int64(ticket))
	if err != nil {
		return int64(ticket), nil, err
	}
	q, err := (quantity.Field{Name: "Quantity", Unit: of, Places: 2, Min: quantity.Of("0.01", of), Max: quantity.Int(mostPart, of)}).Parse(rest)
	return int64(ticket), &q, err
}
