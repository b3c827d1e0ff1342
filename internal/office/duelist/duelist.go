// Package duelist gathers the days that grain, money and samples wait for into one list: grain to be
// decided, contracts to be signed and delivered, sheets and sold grain to be paid, free storage that
// ends, samples kept long enough, disputes. Each day has its own law or contract; the list only puts
// them beside each other, and says what becomes of each when its day passes.
package duelist

import (
	"cmp"
	"slices"

	"tenthpoint/internal/book"
	"tenthpoint/internal/contract"
	"tenthpoint/internal/deadline"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office/terms"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/published"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/tariff"
)

// Kind is the kind of a due item.
type Kind string

// The kinds, as programs read them.
const (
	Undecided   Kind = "undecided"   // grain of which nobody said what becomes of it
	Unsigned    Kind = "unsigned"    // a contract that leaves price or payment open
	Undelivered Kind = "undelivered" // a contract on which grain is still to come
	Unpaid      Kind = "unpaid"      // grain sold or settled
	Deferred    Kind = "deferred"    // a payment put off to its day
	FreeUntil   Kind = "storage"     // storage that is free until then
	Sample      Kind = "sample"      // samples kept long enough
	Disputed    Kind = "dispute"     // another test to be asked for
	Lien        Kind = "lien"        // a lender's notice that ends
)

var names = map[Kind]message.Text{
	Undecided: message.Words("grain undecided"), Unsigned: message.Words("contracts not signed"), Undelivered: message.Words("contracts not filled"),
	Unpaid: message.Words("grain not paid"), Deferred: message.Words("payments put off"), FreeUntil: message.Words("free storage"),
	Sample: message.Words("samples kept"), Disputed: message.Words("disputes"), Lien: message.Words("notices of lien"),
}

// Due is one line of the list.
type Due struct {
	Day      quantity.Date
	Kind     Kind
	What     message.Text
	Grower   string // code; empty where it is nobody's
	IfPassed message.Text
}

// Consequences are the sentences on what follows when the days of a list's lines pass, each once.
func Consequences(all []Due) []message.Text {
	var out []message.Text
	said := map[string]bool{}
	for _, d := range all {
		one := message.New("%s: %s", names[d.Kind], d.IfPassed)
		if !said[one.String()] {
			said[one.String()] = true
			out = append(out, one)
		}
	}
	return out
}

// Lists is the source of the list: the book now, or as it is when a day is closed.
type Lists interface {
	Loads(f book.LoadFilter) ([]book.LoadRow, error)
	Records(kind string) ([]book.Record, error)
	SamplesKept(from, to string) ([]book.KeptSamples, error)
}

// House holds the settings of the elevator that due dates depend on.
type House struct {
	Laws      *law.Set
	FillOrder contract.Order
	// Tariff is the tariff that a grain delivered on a day is kept under; nil where storage is not
	// looked at, and false where there is none.
	Tariff func(commodity string, day quantity.Date) (*tariff.Edition, bool)
}

// Until lists all items due up to a day, as of another; overdue ones come first.
func Until(l Lists, h House, today, last quantity.Date) ([]Due, error) {
	g, err := gatheringOf(l, h, today, last)
	if err != nil {
		return nil, err
	}
	if g.rows, err = l.Loads(terms.Tickets(today)); err != nil {
		return nil, err
	}
	return g.gather(g.undecided, g.contracts, g.payments, g.unsettled, g.storage, g.samples, g.disputes, g.liens)
}

// Written lists the due contracts and settlement sheets. It reads
// the tickets of those who sell on contracts that are near their day, and no others.
func Written(l Lists, h House, today, last quantity.Date) ([]Due, error) {
	g, err := gatheringOf(l, h, today, last)
	if err != nil {
		return nil, err
	}
	if g.rows, err = g.ticketsOnContracts(); err != nil {
		return nil, err
	}
	return g.gather(g.contracts, g.payments)
}

func (g *gathering) gather(parts ...func() error) (out []Due, err error) {
	if g.parts, err = partsOf(g.rows); err != nil {
		return nil, err
	}
	g.fill()
	for _, add := range parts {
		if err := add(); err != nil {
			return nil, err
		}
	}
	slices.SortStableFunc(g.out, func(a, b Due) int {
		return cmp.Or(a.Day.Cmp(b.Day), cmp.Compare(a.Kind, b.Kind), cmp.Compare(a.Grower, b.Grower))
	})
	return g.out, nil
}

// gathering is the list being made.
type gathering struct {
	lists       Lists
	house       House
	today, last quantity.Date

	rows    []book.LoadRow
	parts   []part
	cards   elevator.ByCode
	terms   []elevator.ContractTerms // their sellers named by these cards
	filling contract.Filling
	sheets  []paysheet.Sheet
	taken   paysheet.Taken  // by the sheets
	rules   []deadline.Rule // of the place, today

	out []Due
}

// part is an owner's part of a ticket in force.
type part struct {
	book.LoadRow
	settle.Part
	owner     int // counted from 0
	grower    string
	delivered quantity.Date
}

// gatheringOf reads everything but the tickets.
func gatheringOf(l Lists, h House, today, last quantity.Date) (*gathering, error) {
	g := &gathering{lists: l, house: h, today: today, last: last}
	growers, err := book.RecordsIn[elevator.Grower](l)
	if err != nil {
		return nil, err
	}
	received, err := book.RecordsIn[published.Received](l)
	if err != nil {
		return nil, err
	}
	growers = published.Growers(growers, received, today)
	contracts, err := book.RecordsIn[elevator.ContractTerms](l)
	if err != nil {
		return nil, err
	}
	g.cards = elevator.CardsByCode(growers)
	g.terms = contract.UnderCards(contracts, g.cards)
	if g.sheets, err = book.RecordsIn[paysheet.Sheet](l); err != nil {
		return nil, err
	}
	g.taken = paysheet.TakenBy(g.sheets)
	g.rules, err = deadline.RulesIn(h.Laws.On(today))
	return g, err
}

func partsOf(rows []book.LoadRow) ([]part, error) {
	var out []part
	for _, r := range rows {
		if !terms.IsDelivered(r) {
			continue
		}
		delivered, err := quantity.ParseDate(r.Day)
		if err != nil {
			return nil, err
		}
		for i, grower := range terms.OwnersOf(r) {
			of, err := terms.PartOf(r, i)
			if err != nil {
				return nil, err
			}
			out = append(out, part{LoadRow: r, Part: of, owner: i, grower: grower, delivered: delivered})
		}
	}
	return out, nil
}

// add puts something on the list if its day has come near.
func (g *gathering) add(d Due) {
	if !d.Day.IsZero() && !d.Day.After(g.last) {
		g.out = append(g.out, d)
	}
}

// left is the quantity of a part that is on no settlement sheet yet.
func (g *gathering) left(p part) quantity.Amount {
	return p.Quantity.Sub(g.taken.Of(p.Ticket, p.grower, p.Quantity.Unit()))
}
