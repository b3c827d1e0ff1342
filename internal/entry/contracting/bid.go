package contracting

import (
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/entry/typed"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// bidding is a posted price while its fields are read.
type bidding struct {
	house     entry.House
	commodity string
	elevator.PostedPrice
}

var bidFields = []typed.Reader[*bidding]{
	typed.As(typed.Field{ID: "grain", Label: message.New("Grain"), Form: typed.OneGrain, Required: true},
		func(b *bidding, text string) error { b.commodity = text; return nil }),
	typed.As(typed.Field{ID: "day", Label: message.New("Day"), Form: typed.OneDate, Hint: message.New("without it, today")}, readBidDay),
	typed.As(typed.Field{ID: "price", Label: message.New("Price"), Form: typed.Figure, Unit: quantity.Dollar, Required: true}, readBidPrice),
	typed.As(typed.Field{ID: "place", Label: message.New("Place"), Hint: message.New("without it, here")},
		func(b *bidding, text string) error { b.Place = text; return nil }),
	typed.As(typed.Field{ID: "delivery", Label: message.New("Month of delivery"), Hint: message.New("like 2027-03; without it, now")}, readDelivery),
}

// BidFields are the fields of a price to be posted.
func BidFields() []typed.Field { return typed.FieldsOf(bidFields) }

// ReadBid makes a price to be posted of what is typed, by the ids of the fields.
func ReadBid(texts map[string]string, house entry.House) (elevator.PostedPrice, typed.Problems) {
	b := &bidding{house: house}
	problems := typed.Read(b, bidFields, texts)
	return b.PostedPrice, problems
}

func readBidDay(b *bidding, text string) (err error) {
	if b.Day, err = entry.ParseDay("Day", text, b.house.Today()); err == nil && b.Day.IsZero() {
		b.Day = b.house.Today()
	}
	return err
}

// readBidPrice finds the grain too, whose unit the price is per.
func readBidPrice(b *bidding, text string) error {
	if text == "" || b.commodity == "" {
		return nil
	}
	read, err := entry.ReadPosted(b.house, b.commodity, text, b.Day.String())
	b.Commodity, b.Price = read.Commodity, read.Price
	return err
}

func readDelivery(b *bidding, text string) error {
	if text == "" {
		return nil
	}
	if _, err := quantity.ParseDate(text + "-01"); err != nil {
		return message.Invalid.Errorf("%q is no month; write it like 2027-03", text)
	}
	b.Delivery = text
	return nil
}
