// Package typed is what people type of a matter, as data: its fields with their labels, hints and
// choices, and how the text of each is read. A box of the window asks the fields of a table and the
// terminal has a flag for each, so that both take the same texts and say the same of them.
package typed

import (
	"errors"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Form says how a field is typed.
type Form int

const (
	Words       Form = iota
	Figure           // a figure, with the unit in the field
	Tick             // yes when it has any text
	OneOf            // one of the choices
	OneDate          // a day
	OneBin           // the short name of a bin
	OneGrower        // a grower, by code or name
	OneGrain         // a grain, by id or name
	OneContract      // the number of a contract
	OneTariff        // a tariff, by id
	OneLevy          // levies, by id
)

// Field is one thing that is typed.
type Field struct {
	ID       string
	Label    message.Text
	Form     Form
	Unit     quantity.Unit // the unit a figure has when it says none; plain where that depends on the house
	Required bool
	Hint     message.Text
	Choices  []Choice
}

// Choice is one of the words of a field.
type Choice struct {
	Word string
	Says message.Text
}

// Reader is a field with how its text is read into R. An empty text is read too: it may take something
// else in its place.
type Reader[R any] struct {
	Field
	Read func(into R, text string) error
}

// As is a field that is read in a way.
func As[R any](f Field, read func(into R, text string) error) Reader[R] { return Reader[R]{f, read} }

// Must is the field required.
func (f Reader[R]) Must() Reader[R] { f.Required = true; return f }

// Called is the field under another label.
func (f Reader[R]) Called(label message.Text) Reader[R] { f.Label = label; return f }

// Hinted is the field with a hint.
func (f Reader[R]) Hinted(hint message.Text) Reader[R] { f.Hint = hint; return f }

// FieldsOf are the fields of a table, without how they are read.
func FieldsOf[R any](table []Reader[R]) []Field {
	out := make([]Field, len(table))
	for i, f := range table {
		out[i] = f.Field
	}
	return out
}

// Read reads texts by the ids of their fields. Whatever is wrong is told by its field, all of it at once.
func Read[R any](into R, table []Reader[R], texts map[string]string) Problems {
	problems := Problems{}
	for _, f := range table {
		text := strings.TrimSpace(texts[f.ID])
		if text == "" && f.Required {
			problems[f.ID] = message.Invalid.Errorf("%s is needed here", f.Label)
		}
		if err := f.Read(into, text); err != nil && problems[f.ID] == nil {
			problems[f.ID] = err
		}
	}
	return problems
}

// Problems are the errors of texts, by field.
type Problems map[string]error

// Err is all that is wrong in the order of the fields; nil for nothing.
func (p Problems) Err(fields []Field) error {
	var all []error
	for _, f := range fields {
		if err := p[f.ID]; err != nil {
			all = append(all, err)
		}
	}
	return errors.Join(all...)
}

// List is the texts of a field that takes several, parted by semicolons.
func List(text string) []string {
	var out []string
	for _, one := range strings.Split(text, ";") {
		if one = strings.TrimSpace(one); one != "" {
			out = append(out, one)
		}
	}
	return out
}
