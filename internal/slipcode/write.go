package slipcode

import (
	"crypto/sha256"
	"encoding/binary"
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// MostBytes is the length that a code may have, its signature with it: 250 bytes are 65 modules of a
// QR code, which at three dots of a printer of 203 dots to the inch take 27 mm with the quiet zone.
const MostBytes = 250

// Format is the number of the format that is written.
const Format = 2

// mark begins the text of a code, and what is signed.
const mark = "TP2:"

// The bits of the first byte.
const (
	markSigned = 1 << iota
	markNoMoney
	markOwnersLeft
	markSampleLeft
	markLinesLeft
	markLaw
)

// checkBytes is the length of the check behind the body.
const checkBytes = 2

// Fitted leaves out what has no room in a code, signed or not: lines from the end of their table,
// then the owners of the whole load, then the results of the sample. The error is of a ticket that
// has no room even then, or of a figure that no code can hold.
func (c Code) Fitted(signed bool) (Code, error) {
	room := MostBytes
	if signed {
		room -= keyBytes + signatureBytes
	}
	c.Lines = slices.Clone(c.Lines)
	for {
		body, err := c.body(signed)
		switch {
		case err != nil:
			return Code{}, err
		case len(body)+checkBytes <= room:
			return c, nil
		case len(c.Lines) > 1:
			c.Lines = c.Lines[:len(c.Lines)-1]
			c.Left.Lines++
		case len(c.Owners) > 0 && c.Owner == 0:
			c.Owners, c.Left.Owners = nil, true
		case len(c.Sample) > 0:
			c.Sample, c.Left.Sample = nil, true
		default:
			return Code{}, message.Invalid.Errorf("ticket %d has more on it than a code holds", c.Ticket)
		}
	}
}

// Payload is the text that is signed: the mark, the body, its check and the id of the key.
func (c Code) Payload(key [keyBytes]byte) ([]byte, error) {
	body, err := c.body(true)
	if err != nil {
		return nil, err
	}
	return append([]byte(mark), append(checked(body), key[:]...)...), nil
}

// Text is the text of the code, in the letters of the QR code's alphanumeric mode.
func (c Code) Text() (string, error) {
	body, err := c.body(c.Signature != nil)
	if err != nil {
		return "", err
	}
	raw := checked(body)
	if s := c.Signature; s != nil {
		raw = append(append(raw, s.Key[:]...), s.Bytes[:]...)
	}
	return mark + encode45(raw), nil
}

// checked is a body with its check behind it.
func checked(body []byte) []byte {
	sum := sha256.Sum256(append([]byte(mark), body...))
	return append(slices.Clone(body), sum[:checkBytes]...)
}

// body writes everything but check and signature.
func (c Code) body(signed bool) ([]byte, error) {
	w := writer{}
	w.byte(c.marks(signed))
	w.number(uint64(c.Site))
	w.number(uint64(c.Ticket))
	w.raw(c.Find[:])
	w.number(uint64(firstDay.DaysUntil(c.Day)))
	w.raw(c.Edition[:])
	if c.Law != ([lawBytes]byte{}) {
		w.raw(c.Law[:])
	}
	w.number(uint64(c.Engine.Number()))
	w.word(grains, c.Grain)
	w.byte(c.Units.byte())
	list(&w, c.Drafts, w.draft)
	w.figure(c.Moisture)
	list(&w, c.Sample, w.result)
	list(&w, c.Accepted, w.text)
	w.deal(c.Deal)
	list(&w, c.Owners, w.owner)
	w.number(uint64(c.Owner))
	list(&w, c.Lines, w.line)
	if c.Left.Lines > 0 {
		w.number(uint64(c.Left.Lines))
	}
	return w.bytes, w.err
}

// firstDay is the day that days are counted from.
var firstDay = quantity.MustDate("2000-01-01")

func (c Code) marks(signed bool) (b byte) {
	for bit, is := range map[byte]bool{
		markSigned: signed, markNoMoney: c.NoMoney, markOwnersLeft: c.Left.Owners, markSampleLeft: c.Left.Sample,
		markLinesLeft: c.Left.Lines > 0, markLaw: c.Law != [lawBytes]byte{},
	} {
		if is {
			b |= bit
		}
	}
	return b
}

const (
	unitScaleKg = 1 << iota
	unitWeightKg
	unitCwt
	unitTonne
)

func (u Units) byte() (b byte) {
	if u.Scale == quantity.Kg {
		b |= unitScaleKg
	}
	if u.Weight == quantity.Kg {
		b |= unitWeightKg
	}
	switch u.Quantity {
	case quantity.Cwt:
		b |= unitCwt
	case quantity.Tonne:
		b |= unitTonne
	}
	return b
}

// writer appends to the bytes of a body; the first error stays.
type writer struct {
	bytes []byte
	err   error
}

func (w *writer) raw(b []byte)    { w.bytes = append(w.bytes, b...) }
func (w *writer) byte(b byte)     { w.bytes = append(w.bytes, b) }
func (w *writer) number(n uint64) { w.bytes = binary.AppendUvarint(w.bytes, n) }

func (w *writer) text(s string) {
	w.number(uint64(len(s)))
	w.raw([]byte(s))
}

func (w *writer) word(table []string, word string) {
	n := wordNumber(table, word)
	w.number(uint64(n))
	if n == 0 {
		w.text(word)
	}
}

func list[T any](w *writer, all []T, one func(T)) {
	w.number(uint64(len(all)))
	for _, each := range all {
		one(each)
	}
}

func (w *writer) figure(a quantity.Amount) {
	n, ok := packed(a)
	if !ok {
		w.err = message.Invalid.Errorf("%s has more digits than a code holds", a)
	}
	w.number(n)
}

func (w *writer) draft(d Draft) {
	w.word(draftNames, d.Name)
	w.figure(d.Gross)
	w.figure(d.Tare)
}

func (w *writer) result(r Result) {
	w.word(factors, string(r.Factor))
	switch {
	case !r.IsSeen:
		w.word(units, r.Amount.Unit().String())
		w.figure(r.Amount)
	case r.Present:
		w.word(units, present)
	default:
		w.word(units, absent)
	}
}

func (w *writer) deal(d Deal) {
	n := uint64(max(0, slices.Index(held, d.Under))) << 1
	if d.Price != nil {
		n |= 1
	}
	w.byte(byte(n))
	if d.Price != nil {
		w.figure(*d.Price)
	}
}

const (
	ownerDriesApart = 1 << iota
	ownerHasDeal
)

func (w *writer) owner(o Owner) {
	w.figure(o.Parts)
	w.figure(o.Of)
	var marks byte
	if o.Drying != nil {
		marks |= ownerDriesApart
	}
	if o.Own != nil {
		marks |= ownerHasDeal
	}
	w.byte(marks)
	if o.Drying != nil {
		w.figure(o.Drying.Parts)
		w.figure(o.Drying.Of)
	}
	if o.Own != nil {
		w.deal(*o.Own)
	}
}

func (w *writer) line(l Line) {
	n := firstDiscount + l.Discount - 1
	if l.Discount == 0 {
		n = wordNumber(lines, l.Name)
	}
	if l.Owner == 0 {
		w.number(uint64(n) << 1)
	} else {
		w.number(uint64(n)<<1 | 1)
		w.number(uint64(l.Owner))
	}
	w.figure(l.Figure)
}

// mostDecimals and mostDigits are the limits of a figure.
const (
	mostDecimals = 7
	mostDigits   = 1 << 50
)

// packed is a figure as a number; false for one that is no decimal of so few digits.
func packed(a quantity.Amount) (uint64, bool) {
	d, exact := a.Decimal()
	if !exact {
		return 0, false
	}
	for places := range int32(mostDecimals + 1) {
		m := d.Shift(places)
		if !m.IsInteger() {
			continue
		}
		digits := m.BigInt()
		if !digits.IsInt64() || digits.Int64() > mostDigits || digits.Int64() < -mostDigits {
			return 0, false
		}
		n := digits.Int64()
		return uint64(n<<1^n>>63)<<3 | uint64(places), true
	}
	return 0, false
}
