package ask

import (
	"tenthpoint/internal/entry/typed"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// The widths of fields whose table does not say one, in figures.
const (
	pickWidth, figureWidth, wordsWidth = 24, 12, 30
)

// Filled are the initial texts of the fields in a dialog.
type Filled struct {
	Values map[string]string
	// Options are those of a form of field beside growers, grains and its own choices; nil for none.
	Options func(form typed.Form) []model.Option
	// Unit is that of a figure whose table leaves it to the house.
	Unit quantity.Unit
}

// Fields are the fields of a table as a box asks them.
func Fields(f *session.Session, fields []typed.Field, with Filled) []model.AskField {
	out := make([]model.AskField, len(fields))
	for i, one := range fields {
		out[i] = askField(f, one, with)
	}
	return out
}

func askField(f *session.Session, one typed.Field, with Filled) model.AskField {
	field := model.AskField{ID: one.ID, Label: f.Text(one.Label), Hint: f.Text(one.Hint), Required: one.Required, Value: with.Values[one.ID], Chars: wordsWidth}
	switch one.Form {
	case typed.Words:
	case typed.Figure:
		field.Chars, field.Unit = figureWidth, unitText(one.Unit, with.Unit)
	case typed.Tick:
		field.Checkbox = true
	case typed.OneDate:
		field.Chars = figureWidth
	case typed.OneOf:
		for _, c := range one.Choices {
			field.Options = append(field.Options, model.Option{Code: c.Word, Name: f.Text(c.Says), ByName: true})
		}
	case typed.OneGrower:
		field.Options, field.Chars = f.Known().GrowerOptions, pickWidth
	case typed.OneGrain:
		field.Options, field.Chars = f.Known().CommodityOptions, pickWidth
	default:
		field.Options, field.Chars = with.Options(one.Form), pickWidth
		field.FreeText = one.Form == typed.OneLevy // several may be typed
	}
	return field
}

// unitText is the unit shown beside a figure; one that its table leaves open is that of the house.
func unitText(unit, house quantity.Unit) string {
	if unit == quantity.Plain {
		return house.String()
	}
	return unit.String()
}

// Sentences are the problems of a table by field, as people read them.
func Sentences(f *session.Session, problems typed.Problems) map[string]string {
	out := map[string]string{}
	for id, err := range problems {
		out[id] = f.Sentence(err)
	}
	return out
}
