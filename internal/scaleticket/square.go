package scaleticket

import (
	"encoding/hex"
	"fmt"

	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scaleticket/barcode"
	"tenthpoint/internal/slipcode"
)

// Square is the content of the QR code on a slip. A ticket of a book from before slips carried their facts
// keeps the few figures of the first format.
type Square struct {
	barcode.Payload // the figures that every slip's square has
	// Code is the ticket's facts and what they come to; nil in the first format.
	Code *slipcode.Code
	Text string // as it is drawn; empty on a slip without one
}

// QR is the square of a document; false on a preview, which has no code to be found by.
func QR(d Document) (Square, bool) { return d.square, d.square.Text != "" }

// driverCopy is the copy that stays in the truck, by the word for its recipient.
const driverCopy = "driver"

// withoutMoney reports whether this copy says nothing of prices and money: who drives a truck need
// not know what its owner is paid, unless the house says so.
func (t *facts) withoutMoney() bool { return t.For == driverCopy && !t.House.DriverMoney }

func squareOf(t *facts) Square {
	if t.s == nil || t.Code == "" || t.isDraft() {
		return Square{}
	}
	q := Square{Payload: payloadOf(t)}
	q.Text = q.Payload.String()
	if t.l.SlipCode < slipcode.Format {
		return q
	}
	code, err := signedCode(t)
	if err != nil {
		return q // more digits than a code holds: the few figures are better than none
	}
	if text, err := code.Text(); err == nil {
		q.Code, q.Text = &code, text
	}
	return q
}

// signedCode is the code of a slip, signed where there is a key.
func signedCode(t *facts) (slipcode.Code, error) {
	code, err := slipCode(t).Fitted(!t.Key.IsZero())
	if err != nil || t.Key.IsZero() {
		return code, err
	}
	id := t.Key.Public().ID()
	payload, err := code.Payload(id)
	if err != nil {
		return code, err
	}
	code.Signature = &slipcode.Signature{Key: id, Bytes: t.Key.SignTicket(payload)}
	return code, nil
}

// payloadOf are the figures of the whole load.
func payloadOf(t *facts) barcode.Payload {
	dry := t.s.Quantity
	if t.s.Bushels != nil {
		dry = t.s.Bushels
	}
	return barcode.Payload{
		Ticket: t.l.Number, Net: t.s.Net.Value(), Moisture: t.s.Moisture.Value(),
		Dry: dry.Value(), Code: t.Code,
	}
}

// slipCode are the facts that the load was settled by, and what they came to.
func slipCode(t *facts) slipcode.Code {
	e := t.s.Edition
	c := slipcode.Code{
		Ticket: t.l.Number, Day: t.l.Details.Day, Engine: t.s.Engine, Grain: e.Commodity.ID,
		Units:    slipcode.Units{Scale: t.s.Gross.Value().Unit(), Weight: e.Units.Weight, Quantity: e.Units.Settle},
		Moisture: t.s.Moisture.Value(), Owner: t.Owner,
		NoMoney: t.withoutMoney(),
	}
	hash(c.Find[:], t.Code)
	hash(c.Edition[:], e.Hash)
	if t.l.Settled != nil {
		hash(c.Law[:], t.l.Settled.Law)
	}
	for _, name := range t.l.Drafts() {
		gross, _ := t.l.Weight(load.Gross, name)
		tare, _ := t.l.Weight(load.Tare, name)
		c.Drafts = append(c.Drafts, slipcode.Draft{Name: name, Gross: gross.Weight, Tare: tare.Weight})
	}
	for _, found := range t.l.Sample.Findings {
		c.Sample = append(c.Sample, resultOf(found))
	}
	for _, a := range t.l.Accepted {
		c.Accepted = append(c.Accepted, a.Limit)
	}
	shares(&c, t)
	c.Lines = slipcode.LinesOf(t.s, t.Owner, !c.NoMoney)
	return c
}

// hash sets the beginning of a hash in hex; what is no hash leaves zeros.
func hash(into []byte, hex16 string) {
	if raw, err := hex.DecodeString(hex16); err == nil {
		copy(into, raw)
	}
}

func resultOf(f load.Finding) slipcode.Result {
	if f.Amount == nil {
		return slipcode.Result{Factor: f.Factor, IsSeen: true, Present: f.Present}
	}
	return slipcode.Result{Factor: f.Factor, Amount: *f.Amount}
}

// shares sets the deals. On an owner's slip stand no prices of the others, where they have their own.
func shares(c *slipcode.Code, t *facts) {
	deal := func(d load.Deal, seen bool) slipcode.Deal {
		out := slipcode.Deal{Under: d.Under}
		if d.Price != nil && seen && !c.NoMoney {
			price := *d.Price
			out.Price = &price
		}
		return out
	}
	all := t.l.Details.Shares
	c.Deal = deal(t.l.Details.Deal(), true)
	if len(all) == 1 {
		c.Deal = deal(t.l.Details.DealOf(0), true)
	}
	for i, o := range all {
		owner := slipcode.Owner{Parts: o.Parts, Of: o.Of, Drying: o.Drying}
		if o.Own != nil {
			own := deal(*o.Own, t.Owner == 0 || t.Owner == i+1)
			owner.Own = &own
		}
		c.Owners = append(c.Owners, owner)
	}
}

// ReadSquare reads the text of a scanned square, of any format.
func ReadSquare(text string) (Square, error) {
	if !slipcode.Is(text) {
		p, err := barcode.ParsePayload(text)
		return Square{Payload: p, Text: p.String()}, err
	}
	code, err := slipcode.Parse(text)
	if err != nil {
		return Square{}, err
	}
	q := Square{Code: &code, Text: text}
	q.Ticket, q.Moisture, q.Net, q.Payload.Code = code.Ticket, code.Moisture, code.Net(), code.FindCode()
	q.Dry, _ = code.DryQuantity()
	return q, nil
}

// SquareLike is the square that the book's ticket has on the copy that a scanned one is from: of the
// same owner, with or without money.
func (t Ticket) SquareLike(scanned Square) Square {
	t.Copy, t.For = max(t.Copy, 0), ""
	if scanned.Code != nil {
		t.Owner = scanned.Code.Owner
		if scanned.Code.NoMoney {
			t.For, t.House.DriverMoney = driverCopy, false
		}
	}
	return Compose(t).square
}

// Difference is a figure that paper and book do not have alike.
type Difference struct {
	What        message.Text
	Paper, Book string
}

// Unlike are the figures in which a scanned square and the book's own differ. Codes of two formats
// have the figures of the first in common.
func Unlike(paper, book Square) []Difference {
	var d differences
	d.add(message.New("Ticket"), fmt.Sprint(paper.Ticket), fmt.Sprint(book.Ticket))
	d.add(message.New("Net"), paper.Net.String(), book.Net.String())
	d.add(message.New("Moisture"), paper.Moisture.String(), book.Moisture.String())
	if paper.Dry.Unit() != quantity.Plain {
		d.add(message.New("Quantity"), paper.Dry.String(), book.Dry.String())
	}
	if paper.Code != nil && book.Code != nil {
		d.codes(*paper.Code, *book.Code)
	}
	return d
}

type differences []Difference

func (d *differences) add(what message.Text, on, in string) {
	if on != in {
		*d = append(*d, Difference{what, on, in})
	}
}

// codes holds the lines of two codes against each other, and where nothing was told yet, all else that
// they say, at once.
func (d *differences) codes(paper, book slipcode.Code) {
	for _, l := range paper.Lines {
		d.add(l.Label(), l.Figure.String(), book.Says(l))
	}
	paper.Signature, book.Signature = nil, nil
	on, err := paper.Text()
	in, bookErr := book.Text()
	if len(*d) == 0 && (err != nil || bookErr != nil || on != in) {
		d.add(message.New("The code's other facts"), on, in)
	}
}
