package entry

import (
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Kind is the input type of a field.
type Kind int

// The kinds of field.
const (
	Words  Kind = iota // running words
	Figure             // a weight, a percent, money
	Find               // one of a list, by code or a part of its name
	Open               // one of a list, or free text
	YesNo              // present or not
	Day                // year-month-day
)

// Part says where on a form a field belongs.
type Part int

// The parts of a load, in working order.
const (
	WhoPart    Part = iota // grower, commodity, truck
	WeightPart             // gross and tare
	SamplePart             // results of the bench
	TermsPart              // where it went and what becomes of it
)

// Field is one input field of a load. Its texts are in English.
type Field struct {
	ID    string
	Label string
	Unit  quantity.Unit // of a figure without a unit
	Kind  Kind
	Part  Part
	// Seldom marks a field few loads need: it may be shown apart from the others.
	Seldom bool
	// Factor is the factor the field is a result of; its ID is empty for other fields.
	Factor grain.Factor

	signs message.Figures // of the elevator's language
	shown func(*load.Load) string
	read  func(d *draft, text string) error
}

// Shown returns the field's text for a load, with figures in the format of the elevator's language,
// so that it can be typed again.
func (f Field) Shown(l *load.Load) string {
	if f.shown == nil {
		return ""
	}
	text := f.shown(l)
	if f.Kind == Figure {
		text = f.signs.Write(text)
	}
	return text
}

// plain normalizes a typed figure to the format parsers read.
func (f Field) plain(text string) (string, error) {
	if f.Kind != Figure {
		return text, nil
	}
	return quantity.WithPoint(f.Label, text, f.signs)
}

// plainIn is the same in a house whose language has signs of its own.
func (f Field) plainIn(h House, text string) (string, error) {
	f.signs = Signs(h.Profile())
	return f.plain(strings.TrimSpace(text))
}

// detail is a field about the load itself: its text changes the details.
func detail(f Field, set func(d *draft, text string) error) Field {
	f.read = func(d *draft, text string) error {
		err := set(d, text)
		d.amended = d.amended || err == nil
		return err
	}
	return f
}

// word is a detail of running words.
func word(id, label string, part Part, cell func(*load.Details) *string) Field {
	f := Field{ID: id, Label: label, Kind: Words, Part: part, shown: func(l *load.Load) string { return *cell(&l.Details) }}
	return detail(f, func(d *draft, text string) error {
		*cell(&d.details) = text
		return nil
	})
}

// found is a field about the sample.
func found(f Field, set func(d *draft, text string) error) Field {
	f.Part = SamplePart
	f.read = func(d *draft, text string) error {
		err := set(d, text)
		d.sampled = d.sampled || err == nil
		return err
	}
	return f
}

// sampleWord is a field of running words about the sample.
func sampleWord(id, label string, cell func(*load.Sample) *string) Field {
	f := Field{ID: id, Label: label, Kind: Words, Seldom: true, shown: func(l *load.Load) string { return *cell(&l.Sample) }}
	return found(f, func(d *draft, text string) error {
		*cell(&d.sample) = text
		return nil
	})
}

func seldom(f Field) Field {
	f.Seldom = true
	return f
}
