package slipcode

import (
	"bytes"
	"encoding/binary"
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
)

// Is reports whether a text is that of a code of this format or of a later one.
func Is(text string) bool {
	_, is := version(strings.TrimSpace(text))
	return is
}

// version is the number in the mark of a code.
func version(text string) (number string, is bool) {
	head, _, has := strings.Cut(text, ":")
	number, is = strings.CutPrefix(head, "TP")
	return number, has && is && number != "" && len(number) < 4 && strings.Trim(number, "0123456789") == ""
}

// Parse reads the text of a code. The error tells a code of another format from one that is torn.
func Parse(text string) (Code, error) {
	text = strings.TrimSpace(text)
	rest, ours := strings.CutPrefix(text, mark)
	if !ours {
		if number, is := version(text); is {
			return Code{}, message.Invalid.Errorf("this code is of format %s, and this program reads format 2. A newer program reads it", number)
		}
		return Code{}, message.Invalid.Errorf("this code is not from a ticket: it holds %.40q", text)
	}
	// A blank at the end of the code is one of its letters.
	for _, letters := range []string{rest, rest + " "} {
		raw, err := decode45(letters)
		if err != nil || len(raw) > MostBytes {
			continue
		}
		if c, err := parse(raw); err == nil {
			return c, nil
		}
	}
	return Code{}, errTorn()
}

// parse reads the bytes of a code. Only what [Code.Text] writes is read: two texts never mean the
// same.
func parse(raw []byte) (Code, error) {
	if len(raw) == 0 {
		return Code{}, errTorn()
	}
	body, signature, err := parted(raw)
	if err != nil {
		return Code{}, err
	}
	r := &reader{rest: body}
	c := r.code()
	c.Signature = signature
	if r.torn || len(r.rest) > 0 {
		return Code{}, errTorn()
	}
	again, err := c.body(signature != nil)
	if err != nil || !bytes.Equal(again, body) {
		return Code{}, errTorn()
	}
	return c, nil
}

// parted takes check and signature off a body.
func parted(raw []byte) (body []byte, s *Signature, err error) {
	tail := checkBytes
	if raw[0]&markSigned != 0 {
		tail += keyBytes + signatureBytes
	}
	if len(raw) <= tail {
		return nil, nil, errTorn()
	}
	body = raw[:len(raw)-tail]
	behind := raw[len(body):]
	if !bytes.Equal(checked(body), raw[:len(body)+checkBytes]) {
		return nil, nil, errTorn()
	}
	if behind = behind[checkBytes:]; len(behind) > 0 {
		s = &Signature{Key: [keyBytes]byte(behind[:keyBytes]), Bytes: [signatureBytes]byte(behind[keyBytes:])}
	}
	return body, s, nil
}

// reader takes a body apart. A body that ends too early, or holds what no code holds, is torn; what
// is read then does not matter.
type reader struct {
	rest []byte
	torn bool
}

func (r *reader) code() (c Code) {
	marks := r.byte()
	c.NoMoney = marks&markNoMoney != 0
	c.Left.Owners, c.Left.Sample = marks&markOwnersLeft != 0, marks&markSampleLeft != 0
	c.Site, c.Ticket = r.count(), r.count()
	copy(c.Find[:], r.raw(findBytes))
	c.Day = r.day()
	copy(c.Edition[:], r.raw(editionBytes))
	if marks&markLaw != 0 {
		copy(c.Law[:], r.raw(lawBytes))
	}
	c.Engine = settle.Engine(r.number(mostSmall))
	c.Grain = r.word(grains)
	c.Units = r.units()
	c.Drafts = listed(r, func() Draft {
		return Draft{Name: r.word(draftNames), Gross: r.figure(c.Units.Scale), Tare: r.figure(c.Units.Scale)}
	})
	c.Moisture = r.figure(quantity.Percent)
	c.Sample = listed(r, r.result)
	c.Accepted = listed(r, r.text)
	price := quantity.Dollar.Per(c.Units.Quantity)
	c.Deal = r.deal(price)
	c.Owners = listed(r, func() Owner { return r.owner(price) })
	c.Owner = int(r.number(mostSmall))
	c.Lines = listed(r, r.line)
	if marks&markLinesLeft != 0 {
		c.Left.Lines = int(r.number(mostSmall))
	}
	return c
}

// mostSmall is more than any count within a code.
const mostSmall = 1 << 15

// mostCount is more than any ticket's number.
const mostCount = 1 << 60

func (r *reader) raw(n int) []byte {
	if n > len(r.rest) {
		r.torn, r.rest = true, nil
		return nil
	}
	out := r.rest[:n]
	r.rest = r.rest[n:]
	return out
}

func (r *reader) byte() byte {
	if b := r.raw(1); len(b) == 1 {
		return b[0]
	}
	return 0
}

// number is one up to a most.
func (r *reader) number(most uint64) uint64 {
	n, size := binary.Uvarint(r.rest)
	if size <= 0 || n > most {
		r.torn, r.rest = true, nil
		return 0
	}
	r.rest = r.rest[size:]
	return n
}

func (r *reader) count() int64 { return int64(r.number(mostCount)) }

func (r *reader) day() quantity.Date {
	return firstDay.AddDays(int(r.number(mostDays)))
}

// mostDays ends in the year 2273.
const mostDays = 100000

func (r *reader) text() string {
	return string(r.raw(int(r.number(MostBytes))))
}

func (r *reader) word(table []string) string {
	n := r.number(mostSmall)
	switch {
	case n == 0:
		return r.text()
	case int(n) > len(table):
		r.torn = true
		return ""
	}
	return table[n-1]
}

func (r *reader) units() Units {
	b := r.byte()
	u := Units{quantity.Lb, quantity.Lb, quantity.Bushel}
	if b&unitScaleKg != 0 {
		u.Scale = quantity.Kg
	}
	if b&unitWeightKg != 0 {
		u.Weight = quantity.Kg
	}
	switch {
	case b&unitTonne != 0:
		u.Quantity = quantity.Tonne
	case b&unitCwt != 0:
		u.Quantity = quantity.Cwt
	}
	return u
}

func (r *reader) figure(unit quantity.Unit) quantity.Amount {
	n := r.number(mostFigure)
	zigzag := n >> 3
	m := int64(zigzag>>1) ^ -int64(zigzag&1)
	return quantity.Int(m, quantity.Plain).Mul(places[n&mostDecimals].In(unit))
}

// places are the decimals of a figure.
var places = [mostDecimals + 1]quantity.Amount{
	quantity.Of("1", quantity.Plain), quantity.Of("0.1", quantity.Plain), quantity.Of("0.01", quantity.Plain), quantity.Of("0.001", quantity.Plain),
	quantity.Of("0.0001", quantity.Plain), quantity.Of("0.00001", quantity.Plain), quantity.Of("0.000001", quantity.Plain), quantity.Of("0.0000001", quantity.Plain),
}

// mostFigure is more than any figure as a number.
const mostFigure = mostDigits << 5

// listed reads a list; no list has more entries than there are bytes.
func listed[T any](r *reader, one func() T) (out []T) {
	n := r.number(uint64(len(r.rest)))
	for range n {
		out = append(out, one())
		if r.torn {
			return nil
		}
	}
	return out
}

func (r *reader) result() Result {
	out := Result{Factor: grain.FactorID(r.word(factors))}
	switch word := r.word(units); word {
	case absent, present:
		out.IsSeen, out.Present = true, word == present
	default:
		unit, err := quantity.ParseUnit(word)
		if err != nil {
			r.torn = true
		}
		out.Amount = r.figure(unit)
	}
	return out
}

func (r *reader) deal(price quantity.Unit) (d Deal) {
	b := r.byte()
	if int(b>>1) >= len(held) {
		r.torn = true
		return d
	}
	d.Under = held[b>>1]
	if b&1 != 0 {
		a := r.figure(price)
		d.Price = &a
	}
	return d
}

func (r *reader) owner(price quantity.Unit) Owner {
	o := Owner{Parts: r.figure(quantity.Plain), Of: r.figure(quantity.Plain)}
	marks := r.byte()
	if marks&ownerDriesApart != 0 {
		o.Drying = &quantity.Portion{Parts: r.figure(quantity.Plain), Of: r.figure(quantity.Plain)}
	}
	if marks&ownerHasDeal != 0 {
		own := r.deal(price)
		o.Own = &own
	}
	return o
}

func (r *reader) line() (l Line) {
	n := r.number(mostSmall)
	if n&1 != 0 {
		l.Owner = int(r.number(mostSmall))
	}
	switch number := int(n >> 1); {
	case number >= firstDiscount && number < firstDiscount+mostDiscounts:
		l.Discount = number - firstDiscount + 1
	case number >= 1 && number <= len(lines):
		l.Name = lines[number-1]
	default:
		r.torn = true
	}
	l.Figure = r.figure(quantity.Plain)
	return l
}
