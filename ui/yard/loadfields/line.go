// Package loadfields shows the fields of package entry on the form of a load: which of them, in what
// order, and how each looks to a clerk while it is typed.
package loadfields

import (
	"tenthpoint/internal/entry"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Line is one field of a load as its form shows it.
type Line struct {
	Field           entry.Field
	ID, Label, Unit string
	Kind            model.FieldKind
	Part            model.Part
	appearance
}

var (
	kinds = map[entry.Kind]model.FieldKind{
		entry.Words: model.WordsField, entry.Figure: model.FigureField, entry.Find: model.FindField,
		entry.Open: model.OpenField, entry.YesNo: model.WordsField, entry.Day: model.WordsField,
	}
	parts = map[entry.Part]model.Part{
		entry.WhoPart: model.WhoPart, entry.WeightPart: model.WeightPart, entry.SamplePart: model.SamplePart, entry.TermsPart: model.ClosePart,
	}
)

// Of returns the fields of a form in working order, without those that few loads need. The load is
// shown as tried, and beside what the book has of it, nil before anything is written.
func Of(in *session.Session, form *entry.Form, book *load.Load, tried entry.Tried) []Line {
	look := appearances{in, book, tried}
	var out []Line
	always := look.always()
	for _, field := range form.Fields() {
		if field.Seldom {
			continue
		}
		out = append(out, Line{
			Field: field, ID: field.ID, Label: labelOf(in.Language, field), Unit: unitOf(in.Language, form, field), Kind: kinds[field.Kind],
			Part: parts[field.Part], appearance: look.of(field, always),
		})
	}
	return out
}

// labelOf is a field's name where room is short.
func labelOf(in session.Language, field entry.Field) string {
	which, draft, isWeight := entry.SideOf(field.ID)
	switch {
	case field.Factor.ID != "":
		return in.Say(session.ShortName(field.Factor))
	case isWeight && draft != "":
		side := map[load.Which]string{load.Gross: in.Say("Gross"), load.Tare: in.Say("Tare")}[which]
		return in.Say("%s, %s", side, in.Say(draft))
	}
	return in.Say(field.Label)
}

func unitOf(in session.Language, form *entry.Form, field entry.Field) string {
	switch {
	case field.Kind == entry.YesNo:
		return in.Say("y/n")
	case field.ID == "price":
		return form.PriceUnit().String()
	case field.Unit == quantity.Plain:
		return ""
	}
	return field.Unit.String()
}

// Shown is the field's text for a load, in the language of the desk.
func (l Line) Shown(in session.Language, of *load.Load) string {
	text := l.Field.Shown(of)
	if l.Field.Kind == entry.YesNo && text != "" {
		return in.YesOrNo(text == "yes")
	}
	return text
}

// TypedAs is a text as package entry reads it: yes and no may be typed in the
// language of the desk.
func TypedAs(in session.Language, field, text string) string {
	for _, c := range grain.All() {
		if factor, ok := c.Factor(grain.FactorID(field)); ok {
			return session.PlainText(in, factor, text)
		}
	}
	return text
}

// Model is the field with its text, as the form draws it for a load. What it says beside the text is
// the reading of that text, where there is one, or its hint.
func (l Line) Model(of *load.Load, text, reading string) model.Field {
	out := model.Field{ID: l.ID, Label: l.Label, Unit: l.Unit, Kind: l.Kind, Part: l.Part, Chars: l.chars, Words: l.words, Value: text, Reading: reading}
	if l.options != nil {
		out.Options = l.options()
	}
	if l.hint != nil && reading == "" {
		out.Reading = l.hint(of)
	}
	return out
}

// Reading describes how a text was understood, where that is not obvious.
func (l Line) Reading(text string, of *load.Load) string {
	if l.reading == nil {
		return ""
	}
	return l.reading(text, of)
}
