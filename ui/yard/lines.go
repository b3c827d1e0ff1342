package yard

import (
	"slices"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// line is how one field of a load stands on its form.
type line struct {
	field           entry.Field
	ID, label, unit string
	kind            model.FieldKind
	Part            model.Part
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
			field: field, ID: field.ID, label: labelOf(field), unit: f.unitOf(field), kind: kinds[field.Kind],
			Part: parts[field.Part], appearance: f.appearanceOf(field, appearances),
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
		return session.Say(session.ShortName(field.Factor))
	case isWeight && draft != "":
		side := map[load.Which]string{load.Gross: session.Say("Gross"), load.Tare: session.Say("Tare")}[which]
		return session.Say("%s, %s", side, session.Say(draft))
	}
	return session.Say(field.Label)
}

func (f *LoadForm) unitOf(field entry.Field) string {
	switch {
	case field.Kind == entry.YesNo:
		return session.Say("y/n")
	case field.ID == "price":
		return f.form.PriceUnit().String()
	case field.Unit == quantity.Plain:
		return ""
	}
	return field.Unit.String()
}

// Shown is the field's text for a load, in the language of the desk.
func (l line) Shown(of *load.Load) string {
	text := l.field.Shown(of)
	if l.field.Kind == entry.YesNo && text != "" {
		return session.YesOrNo(text == "yes")
	}
	return text
}

// typedAs is a text as the form reads it: yes and no may be typed in the language
// of the desk.
func typedAs(field, text string) string {
	for _, c := range grain.All() {
		if factor, ok := c.Factor(grain.FactorID(field)); ok {
			return session.PlainText(factor, text)
		}
	}
	return text
}

// isOnForm reports whether a factor has a field.
func (f *LoadForm) isOnForm(id grain.FactorID) bool {
	return slices.ContainsFunc(f.Lines, func(l line) bool { return l.field.Factor.ID == id })
}

// appearances are how the fields stand that every load has; results and weights have
// appearances of their kind.
func (f *LoadForm) appearances() map[string]appearance {
	known := f.session.Known()
	return map[string]appearance{
		"grower":    {chars: 24, options: func() []model.Option { return known.GrowerOptions }, hint: session.SharesText, reading: f.growerReading},
		"consignee": {chars: 24, hint: func(*load.Load) string { return session.Say("who receives the grain") }},
		"commodity": {chars: 24, options: func() []model.Option { return known.CommodityOptions }, hint: f.ratesHint},
		"truck":     {chars: 24, options: func() []model.Option { return known.TruckOptions }, reading: f.truckReading},
		"moisture":  {chars: 6, hint: f.moistureHint, reading: f.moistureReading},
		"bin":       {chars: 12, options: func() []model.Option { return known.BinOptions }},
		"terms":     {chars: 12, options: f.termsOptions, reading: f.termsReading},
		"price":     {chars: 7, hint: priceHint},
		"remark":    {chars: 24},
	}
}

// growerReading names the grower of whom only a part of the name was typed.
func (f *LoadForm) growerReading(text string, l *load.Load) string {
	if g := l.Details.Grower; text != "" && text != g.ID && session.SharesText(l) == "" {
		return session.Join(" ", g.ID, g.Name)
	}
	return ""
}

// ratesHint names the rates the load will be settled under.
func (f *LoadForm) ratesHint(l *load.Load) string {
	e := f.Now.edition
	if e == nil || l.Details.Commodity == "" {
		return ""
	}
	return session.Say("rates %s", e.ID)
}

func (f *LoadForm) truckReading(text string, l *load.Load) string {
	if _, known := f.session.Known().Truck(l.Details.Truck.ID); known || text == "" {
		return ""
	}
	return session.Say("not seen before")
}

// weightID is the field of one side of a draft.
func weightID(which load.Which, draft string) string { return entry.WeightID(which, draft) }

// sideOf is the side and the draft of a weight's field.
func sideOf(id string) (which load.Which, draft string, isWeight bool) { return entry.SideOf(id) }
