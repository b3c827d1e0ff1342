package settling

import (
	"tenthpoint/internal/entry"
	"tenthpoint/internal/entry/typed"
	"tenthpoint/internal/message"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/quantity"
)

// handing is a handover while its fields are read.
type handing struct {
	today quantity.Date
	paysheet.Handover
}

var handoverFields = []typed.Reader[*handing]{
	typed.As(typed.Field{ID: "levy", Label: message.New("Levy")}, func(h *handing, text string) error { h.Levy = text; return nil }),
	typed.As(typed.Field{ID: "through", Label: message.New("Of sheets up to"), Form: typed.OneDate, Hint: message.New("without it, today")},
		func(h *handing, text string) (err error) { h.Through, err = dayOr(text, h.today); return err }),
	typed.As(typed.Field{ID: "amount", Label: message.New("Amount"), Form: typed.Figure, Unit: quantity.Dollar, Hint: message.New("without it, all that is left")},
		func(h *handing, text string) (err error) {
			if text != "" {
				h.Amount, err = money("Amount").Parse(text)
			}
			return err
		}),
	typed.As(typed.Field{ID: "reference", Label: message.New("Number"), Hint: message.New("of the check or the transfer")},
		func(h *handing, text string) error { h.Reference = text; return nil }),
	typed.As(typed.Field{ID: "day", Label: message.New("Day"), Form: typed.OneDate, Hint: message.New("without it, today")},
		func(h *handing, text string) (err error) { h.Day, err = dayOr(text, h.today); return err }),
}

func dayOr(text string, today quantity.Date) (quantity.Date, error) {
	day, err := entry.ParseDay("Day", text, today)
	if err == nil && day.IsZero() {
		day = today
	}
	return day, err
}

// HandoverFields are the fields of a handover of a levy.
func HandoverFields() []typed.Field { return typed.FieldsOf(handoverFields) }

// ReadHandover makes a handover of what is typed, by the ids of the fields.
func ReadHandover(texts map[string]string, today quantity.Date) (paysheet.Handover, typed.Problems) {
	h := &handing{today: today, Handover: paysheet.Handover{Amount: quantity.Zero(quantity.Dollar)}}
	problems := typed.Read(h, handoverFields, texts)
	return h.Handover, problems
}
