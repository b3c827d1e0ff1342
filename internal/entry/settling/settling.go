// Package settling reads what is typed of a settlement sheet and of a payment on it: the fields of each
// as data, and the order or the payment they make. Window and terminal ask it, so both take the same
// texts and say the same of them. That a sheet or a payment may be is decided where it is made.
package settling

import (
	"strconv"
	"strings"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/entry/typed"
	"tenthpoint/internal/levy"
	"tenthpoint/internal/message"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tariff"
)

// House is the records that texts of a settlement sheet are looked up in.
type House struct {
	entry.House
	Grain string // that of the tickets that are settled
	// Tariff is a tariff by its id; of none, the one in force for the grain on a day.
	Tariff func(id, grain string, day quantity.Date) (*tariff.Edition, error)
	Levies *levy.Set
}

// The ids of the fields of a sheet.
const (
	Grower, Day, Price, Contract, Sale = "grower", "day", "price", "contract", "sale"
	Tariff, Levies, Advances, Payees   = "tariff", "levies", "advances", "payees"
	Release, PayAfter, Corrects        = "release", "pay-after", "corrects"
)

// What the price of a sheet is said to be from.
const (
	ownPrice = "price of the sheet"
	posted   = entry.PostedText
)

// ordering is an order while its fields are read.
type ordering struct {
	house House
	paysheet.Order
}

// sheetFields are the fields of a sheet; those that later ones depend on come first.
var sheetFields = []typed.Reader[*ordering]{
	typed.As(typed.Field{ID: Grower, Label: message.New("Grower"), Form: typed.OneGrower, Required: true}, readGrower),
	typed.As(typed.Field{ID: Day, Label: message.New("Day"), Form: typed.OneDate, Hint: message.New("without it, today")}, readDay),
	typed.As(typed.Field{ID: Tariff, Label: message.New("Tariff"), Form: typed.OneTariff, Hint: message.New("without it, the one in force")}, readTariff),
	typed.As(typed.Field{ID: Price, Label: message.New("Price"), Form: typed.Figure, Hint: message.New("of what has none yet")}, readPrice),
	typed.As(typed.Field{ID: Contract, Label: message.New("Contract"), Form: typed.OneContract, Hint: message.New("without it, that of the ticket")},
		func(o *ordering, text string) error { o.Contract = text; return nil }),
	typed.As(typed.Field{ID: Sale, Label: message.New("Sold only now"), Form: typed.Tick, Hint: message.New("it was held until today")},
		func(o *ordering, text string) error { o.Sale = text != ""; return nil }),
	typed.As(typed.Field{ID: Levies, Label: message.New("Levies"), Form: typed.OneLevy, Hint: message.New("several are parted by ;")}, readLevies),
	typed.As(typed.Field{ID: Advances, Label: message.New("Advances"), Hint: message.New("like 2000@2026-10-15")}, readAdvances),
	typed.As(typed.Field{ID: Payees, Label: message.New("Paid jointly with"), Hint: message.New("such as a lender")},
		func(o *ordering, text string) error { o.Payees = typed.List(text); return nil }),
	typed.As(typed.Field{ID: Release, Label: message.New("Not jointly because"), Hint: message.New("where a lien asks for it")},
		func(o *ordering, text string) error { o.Order.Release = text; return nil }),
	typed.As(typed.Field{ID: PayAfter, Label: message.New("Pay not before"), Form: typed.OneDate, Hint: message.New("deferred to that day")}, readPayAfter),
	typed.As(typed.Field{ID: Corrects, Label: message.New("In place of sheet"), Hint: message.New("a void one")}, readCorrects),
}

// SheetFields are the fields of a settlement sheet beside its tickets.
func SheetFields() []typed.Field { return typed.FieldsOf(sheetFields) }

// ReadSheet makes an order of what is typed, by the ids of the fields, without its tickets.
func ReadSheet(texts map[string]string, house House) (paysheet.Order, typed.Problems) {
	o := &ordering{house: house}
	problems := typed.Read(o, sheetFields, texts)
	return o.Order, problems
}

func readGrower(o *ordering, text string) error {
	if text == "" {
		return nil
	}
	one, err := entry.Grower(o.house, text)
	o.Grower = one.ID
	return err
}

func readDay(o *ordering, text string) (err error) {
	if o.Day, err = entry.ParseDay("Day", text, o.house.Today()); err == nil && o.Day.IsZero() {
		o.Day = o.house.Today()
	}
	return err
}

// readTariff finds the tariff; a sheet whose day is wrong has none, which its day says.
func readTariff(o *ordering, text string) (err error) {
	if !o.Day.IsZero() {
		o.Order.Tariff, err = o.house.Tariff(text, o.house.Grain, o.Day)
	}
	return err
}

// readPrice reads a price, or takes the one posted for the day where the text says so: nothing takes
// it by itself.
func readPrice(o *ordering, text string) error {
	if text == "" || o.Order.Tariff == nil {
		return nil
	}
	if strings.EqualFold(text, entry.PostedText) {
		bid, err := o.house.Posted(o.house.Grain, o.Day)
		if err == nil && bid == nil {
			err = message.NotFound.Errorf("no price is posted for %s on %s; type one", message.Words(o.house.Grain), o.Day)
		}
		if err != nil {
			return err
		}
		o.Price, o.Source, o.Bid = &bid.Price, posted, &paysheet.Bid{At: bid.At, Who: bid.Who}
		return nil
	}
	price, err := entry.ParsePrice(text, o.Order.Tariff.Settle)
	o.Price, o.Source = &price, ownPrice
	return err
}

func readLevies(o *ordering, text string) error {
	for _, id := range typed.List(text) {
		l, err := levyFor(o.house.Levies, id, o.house.Grain, o.Day)
		if err != nil {
			return err
		}
		o.Levies = append(o.Levies, l)
	}
	return nil
}

// LeviesOf are the levies taken of a grain on a day.
func LeviesOf(known *levy.Set, grain string, day quantity.Date) []*levy.Levy {
	var out []*levy.Levy
	for _, l := range known.All() {
		if l.Commodity == grain && day.Between(l.From, l.Until) {
			out = append(out, l)
		}
	}
	return out
}

// levyFor is a levy by its id, if it is taken of the grain on the day.
func levyFor(known *levy.Set, id, grain string, day quantity.Date) (*levy.Levy, error) {
	l, there := known.ByID(id)
	switch {
	case !there:
		return nil, message.NotFound.Errorf("there is no levy %q here", id)
	case l.Commodity != grain:
		return nil, message.Refused.Errorf("levy %s is taken of %s, not of %s", id, l.Commodity, grain)
	case !day.Between(l.From, l.Until):
		return nil, message.Refused.Errorf("levy %s is taken %s, and the sheet is of %s", id, l.Days(), day)
	}
	return l, nil
}

// readAdvances reads "2000@2026-10-15; 500@2026-11-01".
func readAdvances(o *ordering, text string) error {
	for _, one := range typed.List(text) {
		sum, day, ok := strings.Cut(one, "@")
		if !ok {
			return message.Invalid.Errorf("the advance %q has no day; write it like 2000@2026-10-15", one)
		}
		amount, err := money("Advance").Parse(sum)
		if err != nil {
			return err
		}
		on, err := entry.ParseDay("Advance", day, o.house.Today())
		if err != nil {
			return err
		}
		o.Advances = append(o.Advances, paysheet.Advance{Day: on, Amount: amount})
	}
	return nil
}

func readPayAfter(o *ordering, text string) (err error) {
	o.PayAfter, err = entry.ParseDay("Pay not before", text, o.house.Today())
	return err
}

func readCorrects(o *ordering, text string) error {
	if text == "" {
		return nil
	}
	number, err := strconv.ParseInt(text, 10, 64)
	if err != nil || number < 1 {
		return message.Invalid.Errorf("%q is no number of a settlement sheet", text)
	}
	o.Corrects = number
	return nil
}

// most is beyond any elevator, so that a slip of the finger is seen.
const most = 100_000_000

func money(name string) quantity.Field {
	return quantity.Field{Name: name, Unit: quantity.Dollar, Places: 2, Min: quantity.Of("0.01", quantity.Dollar), Max: quantity.Int(most, quantity.Dollar)}
}

// ReadPart reads how much of a ticket is settled.
func ReadPart(text string, unit quantity.Unit) (quantity.Amount, error) {
	return quantity.Field{Name: "Quantity", Unit: unit, Places: 2, Min: quantity.Of("0.01", unit), Max: quantity.Int(most, unit)}.Parse(text)
}
