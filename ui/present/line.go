package present

import (
	"slices"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
)

// line is how one field of a load stands on its form.
type line struct {
	entry.Field
	id, label, unit string
	kind            model.FieldKind
	appearance
}

// appearance is what only the form knows of a field: its width, the list it is chosen
// from, and what is said beside it while nothing is wrong.
type appearance struct {
	chars   int
	options func() []model.Option
	hint    func(*load.Load) string
	// reading says how a text was understood, where that is not plain.
	reading func(text string, l *load.Load) string
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

// makeLines lists the fields of the form in working order.
func (f *LoadForm) makeLines() []line {
	var out []line
	appearances := f.appearances()
	for _, field := range f.form.Fields() {
		if field.Seldom {
			continue
		}
		out = append(out, line{
			Field: field, id: field.ID, label: labelOf(field), unit: f.unitOf(field), kind: kinds[field.Kind], appearance: f.appearanceOf(field, appearances),
		})
	}
	return out
}

func (f *LoadForm) appearanceOf(field entry.Field, appearances map[string]appearance) appearance {
	if which, draft, isWeight := entry.SideOf(field.ID); isWeight {
		return appearance{chars: 8, hint: func(l *load.Load) string { return f.weightHint(l, which, draft) }}
	}
	if l, known := appearances[field.ID]; known {
		return l
	}
	return appearance{chars: 6, reading: func(_ string, l *load.Load) string { return resultReading(field.Factor, l) }}
}

// labelOf is what a field is called where room is short.
func labelOf(field entry.Field) string {
	which, draft, isWeight := entry.SideOf(field.ID)
	switch {
	case field.Factor.ID != "":
		return Say(shortName(field.Factor))
	case isWeight && draft != "":
		side := map[load.Which]string{load.Gross: Say("Gross"), load.Tare: Say("Tare")}[which]
		return Say("%s, %s", side, Say(draft))
	}
	return Say(field.Label)
}

func (f *LoadForm) unitOf(field entry.Field) string {
	switch {
	case field.Kind == entry.YesNo:
		return Say("y/n")
	case field.ID == "price":
		return f.form.PriceUnit().String()
	case field.Unit == quantity.Plain:
		return ""
	}
	return field.Unit.String()
}

// Shown is the field's text for a load, in the language of the desk.
func (l line) shown(of *load.Load) string {
	text := l.Field.Shown(of)
	if l.Kind == entry.YesNo && text != "" {
		return yesOrNo(text == "yes")
	}
	return text
}

// typedAs is a text as the form reads it: yes and no may be typed in the language
// of the desk.
func typedAs(field, text string) string {
	for _, c := range grain.All() {
		if factor, ok := c.Factor(grain.FactorID(field)); ok {
			return plainText(factor, text)
		}
	}
	return text
}

// isOnForm reports whether a factor has a field.
func (f *LoadForm) isOnForm(id grain.FactorID) bool {
	return slices.ContainsFunc(f.lines, func(l line) bool { return l.Factor.ID == id })
}
