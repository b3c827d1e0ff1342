package yard

import (
	"tenthpoint/internal/entry"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// line is one field of a load as its form shows it.
type line struct {
	field           entry.Field
	ID, label, unit string
	kind            model.FieldKind
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

// linesOf are the fields of a form in working order, without those that few loads
// need.
func linesOf(form *entry.Form, look appearances) []line {
	var out []line
	always := look.always()
	for _, field := range form.Fields() {
		if field.Seldom {
			continue
		}
		out = append(out, line{
			field: field, ID: field.ID, label: labelOf(look.session.Language, field), unit: unitOf(look.session.Language, form, field), kind: kinds[field.Kind],
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
func (l line) Shown(in session.Language, of *load.Load) string {
	text := l.field.Shown(of)
	if l.field.Kind == entry.YesNo && text != "" {
		return in.YesOrNo(text == "yes")
	}
	return text
}

// typedAs is a text as package entry reads it: yes and no may be typed in the
// language of the desk.
func typedAs(in session.Language, field, text string) string {
	for _, c := range grain.All() {
		if factor, ok := c.Factor(grain.FactorID(field)); ok {
			return session.PlainText(in, factor, text)
		}
	}
	return text
}
