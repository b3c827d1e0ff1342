package settling

import (
	"tenthpoint/internal/entry/typed"
	"tenthpoint/internal/message"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/quantity"
)

// OpenOn is a settlement sheet that is paid: how much is open on it, and today.
type OpenOn struct {
	Sheet int64
	Left  quantity.Amount
	Today quantity.Date
}

// paying is a payment while its fields are read.
type paying struct {
	on OpenOn
	paysheet.Payment
}

var paymentFields = []typed.Reader[*paying]{
	typed.As(typed.Field{ID: "amount", Label: message.New("Amount"), Form: typed.Figure, Unit: quantity.Dollar, Hint: message.New("without it, all that is open")}, readAmount),
	typed.As(typed.Field{ID: "how", Label: message.New("How it was paid"), Form: typed.OneOf, Choices: ways()}, readHow),
	typed.As(typed.Field{ID: "reference", Label: message.New("Number"), Hint: message.New("of the check or the transfer")},
		func(p *paying, text string) error { p.Reference = text; return nil }),
	typed.As(typed.Field{ID: "day", Label: message.New("Day"), Form: typed.OneDate, Hint: message.New("without it, today")}, readPaidOn),
}

func ways() []typed.Choice {
	var out []typed.Choice
	for _, how := range []paysheet.How{paysheet.Check, paysheet.Transfer, paysheet.Cash} {
		out = append(out, typed.Choice{Word: string(how), Says: how.Said()})
	}
	return out
}

// PaymentFields are the fields of a payment on a sheet.
func PaymentFields() []typed.Field { return typed.FieldsOf(paymentFields) }

// ReadPayment makes a payment on a sheet of what is typed, by the ids of the fields.
func ReadPayment(texts map[string]string, on OpenOn) (paysheet.Payment, typed.Problems) {
	p := &paying{on: on}
	p.Sheet = on.Sheet
	problems := typed.Read(p, paymentFields, texts)
	return p.Payment, problems
}

func readAmount(p *paying, text string) (err error) {
	switch {
	case text != "":
		p.Amount, err = money("Amount").Parse(text)
	case p.on.Left.Sign() <= 0:
		err = message.Refused.Errorf("nothing is open on settlement sheet %d", p.Sheet)
	default:
		p.Amount = p.on.Left
	}
	return err
}

// readHow takes a check where nothing is said.
func readHow(p *paying, text string) error {
	p.How = paysheet.How(text)
	if text == "" {
		p.How = paysheet.Check
	}
	return nil
}

func readPaidOn(p *paying, text string) (err error) {
	p.Day, err = dayOr(text, p.on.Today)
	return err
}
