// Package barcode has the codes printed on tickets and labels: a text as a QR code ([Square]), the
// [Payload] of the first format of a ticket's code, and sample numbers as Code 128. What tickets carry
// today is in package slipcode.
package barcode

import (
	"strconv"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Payload is enough to find a ticket again and to compare its figures with the book. It is what the
// first format of the code on a slip says.
//
// Its text is six fields separated by single blanks, in the QR code's alphanumeric mode (A to Z, 0
// to 9, blank, $ % * + - . / :):
//
//	TENTHPOINT/1 1042 52300LB 18.4% 857.99BU 3FA9C01D22E4
//
// the mark and version of this format, the ticket's number, net weight,
// moisture, dry quantity, each figure with its unit and no comma, and the
// ticket's code in capitals.
type Payload struct {
	Ticket   int64
	Net      quantity.Amount
	Moisture quantity.Amount
	// Dry is dry bushels, or hundredweight or tonnes where bushels are not used.
	Dry  quantity.Amount
	Code string // 12 hexadecimal digits, lower case
}

// payloadMark begins every payload; the digit is the version of the format.
const payloadMark = "TENTHPOINT/1"

// codeDigits is the length of a ticket's code.
const codeDigits = 12

// String is the payload's text.
func (p Payload) String() string {
	fields := []string{payloadMark, strconv.FormatInt(p.Ticket, 10)}
	for _, a := range []quantity.Amount{p.Net, p.Moisture, p.Dry} {
		figure := strings.NewReplacer(",", "", "…", "").Replace(a.Figure())
		fields = append(fields, figure+strings.ToUpper(a.Unit().String()))
	}
	return strings.Join(append(fields, strings.ToUpper(p.Code)), " ")
}

// payloadUnits are the units a payload may hold, by their capitals.
var payloadUnits = map[string]quantity.Unit{
	"LB": quantity.Lb, "KG": quantity.Kg, "%": quantity.Percent,
	"BU": quantity.Bushel, "CWT": quantity.Cwt, "T": quantity.Tonne,
}

// ParsePayload reads the text of a scanned code.
func ParsePayload(text string) (Payload, error) {
	fields := strings.Split(text, " ")
	if len(fields) != 6 || fields[0] != payloadMark {
		return Payload{}, message.Invalid.Errorf("this code is not from a ticket: it holds %.40q, a ticket's begins with %q and has 6 fields", text, payloadMark)
	}
	number, err := strconv.ParseInt(fields[1], 10, 64)
	if err != nil || number < 1 {
		return Payload{}, message.Invalid.Errorf("%.20q in the code is not a ticket number; scan it again", fields[1])
	}
	p := Payload{Ticket: number, Code: strings.ToLower(fields[5])}
	if len(p.Code) != codeDigits || strings.Trim(p.Code, "0123456789abcdef") != "" {
		return Payload{}, message.Invalid.Errorf("%.20q in the code of ticket %d is not %d hexadecimal digits; scan it again", fields[5], number, codeDigits)
	}
	for i, into := range []*quantity.Amount{&p.Net, &p.Moisture, &p.Dry} {
		if *into, err = packedAmount(fields[i+2]); err != nil {
			return Payload{}, message.Errorf("the code of ticket %d: %w", number, err)
		}
	}
	return p, nil
}

// packedAmount reads "52300LB".
func packedAmount(text string) (quantity.Amount, error) {
	at := strings.IndexFunc(text, func(r rune) bool { return !strings.ContainsRune("0123456789.-", r) })
	if at < 0 {
		return quantity.Amount{}, message.Invalid.Errorf("%.20q has no unit", text)
	}
	unit, ok := payloadUnits[text[at:]]
	if !ok {
		return quantity.Amount{}, message.Invalid.Errorf("%.20q is in no unit of a ticket", text)
	}
	return quantity.ParseAmount(text[:at] + " " + unit.String())
}
