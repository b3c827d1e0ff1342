package duelist

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// lot is one grower's grain of one kind whose day has come near, with the first of the days.
type lot struct {
	day               quantity.Date
	grower, commodity string
	passed            message.Text
	quantity          quantity.Amount
	numbers           []any // of its tickets
}

// lots are lots in the order they were first met.
type lots []*lot

// add adds a quantity of a ticket to the lot of the same grower and grain.
func (all *lots) add(to lot, ticket int64, q quantity.Amount) {
	for _, l := range *all {
		if l.grower == to.grower && l.commodity == to.commodity && l.quantity.Unit() == q.Unit() {
			l.quantity, l.numbers = l.quantity.Add(q), append(l.numbers, ticket)
			if to.day.Before(l.day) {
				l.day, l.passed = to.day, to.passed
			}
			return
		}
	}
	to.quantity, to.numbers = q, []any{ticket}
	*all = append(*all, &to)
}

// near puts a ticket's quantity into a lot if its day has come near and something is left of it.
func (g *gathering) near(all *lots, to lot, ticket int64, left quantity.Amount) {
	if left.Sign() > 0 && !to.day.IsZero() && !to.day.After(g.last) {
		all.add(to, ticket, left)
	}
}

// addLots puts lots on the list; what is said of each has its grain, quantity and tickets.
func (g *gathering) addLots(all lots, kind Kind, what message.Text) {
	for _, l := range all {
		said := message.New("%s, %s: %s (%s)", message.Words(grain.NameOf(l.commodity)), l.quantity, what, l.tickets())
		g.add(Due{Day: l.day, Kind: kind, Grower: l.grower, What: said, IfPassed: l.passed})
	}
}

// tickets names a few tickets and counts many.
func (l *lot) tickets() message.Text {
	if len(l.numbers) > mostNamed {
		return message.New("%d tickets, the first %d", len(l.numbers), l.numbers[0])
	}
	return message.Count(len(l.numbers), "ticket %[2]s", "tickets %[2]s", message.List(", ", l.numbers...))
}

const mostNamed = 4
