package settling

import (
	"tenthpoint/internal/entry"
	"tenthpoint/internal/entry/typed"
	"tenthpoint/internal/message"
	"tenthpoint/internal/paysheet"
)

// noting is a notice of lien while its fields are read.
type noting struct {
	house entry.House
	paysheet.Lien
}

var lienFields = []typed.Reader[*noting]{
	typed.As(typed.Field{ID: Grower, Label: message.New("Grower"), Form: typed.OneGrower, Required: true},
		func(n *noting, text string) error {
			one, err := entry.Grower(n.house, text)
			n.Grower = one.ID
			return err
		}),
	typed.As(typed.Field{ID: "holder", Label: message.New("Lender"), Required: true},
		func(n *noting, text string) error { n.Holder = text; return nil }),
	typed.As(typed.Field{ID: "commodity", Label: message.New("Grain"), Form: typed.OneGrain, Hint: message.New("without it, every grain")},
		func(n *noting, text string) error {
			if text == "" {
				return nil
			}
			c, err := entry.Commodity(text)
			n.Commodity = c.ID
			return err
		}),
	typed.As(typed.Field{ID: "crop-year", Label: message.New("Crop year"), Hint: message.New("without it, every year")},
		func(n *noting, text string) error { n.CropYear = text; return nil }),
	typed.As(typed.Field{ID: "county", Label: message.New("County")},
		func(n *noting, text string) error { n.County = text; return nil }),
	typed.As(typed.Field{ID: "filed", Label: message.New("Received"), Form: typed.OneDate, Hint: message.New("without it, today")},
		func(n *noting, text string) (err error) { n.Filed, err = dayOr(text, n.house.Today()); return err }),
	typed.As(typed.Field{ID: "until", Label: message.New("Last day"), Form: typed.OneDate, Required: true},
		func(n *noting, text string) (err error) {
			n.Until, err = entry.ParseDay("Last day", text, n.house.Today())
			return err
		}),
	typed.As(typed.Field{ID: "reference", Label: message.New("Number"), Hint: message.New("of the filing")},
		func(n *noting, text string) error { n.Reference = text; return nil }),
}

// LienFields are the fields of a notice of lien.
func LienFields() []typed.Field { return typed.FieldsOf(lienFields) }

// ReadLien makes a notice of lien of what is typed, by the ids of the fields.
func ReadLien(texts map[string]string, house entry.House) (paysheet.Lien, typed.Problems) {
	n := &noting{house: house}
	problems := typed.Read(n, lienFields, texts)
	return n.Lien, problems
}
