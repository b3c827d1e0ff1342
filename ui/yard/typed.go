package yard

import (
	"maps"
	"slices"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// typed holds what is typed on a form but not in the book.
type typed struct {
	texts    map[string]string            // by field
	reasons  map[string]string            // why weights were typed though the scale can be read, by field
	factors  map[grain.FactorID]bool      // results asked for beyond the usual ones
	driverOn string                       // whether the driver is on the truck for the next weights: "on", "off" or ""
	split    bool                         // the trailer is weighed apart from its truck
	outbound bool                         // the truck takes grain away; only while nothing is in the book
	search   struct{ field, text string } // letters typed to find something for a field, before a choice
}

func newTyped() typed {
	return typed{texts: map[string]string{}, reasons: map[string]string{}, factors: map[grain.FactorID]bool{}}
}

// has reports whether a text was typed into a field.
func (t *typed) has(field string) bool {
	_, there := t.texts[field]
	return there
}

// forget removes the texts of fields.
func (t *typed) forget(fields ...string) {
	for _, id := range fields {
		delete(t.texts, id)
	}
}

// look notes the letters of a search; empty letters end it.
func (t *typed) look(field, letters string) { t.search.field, t.search.text = field, letters }

// trailer is the second draft of a truck and its trailer weighed apart; the
// truck's own draft has no name.
const trailer = "trailer"

// drafts returns the weighings on the form: the truck's own, and that of its trailer.
func (t *typed) drafts() []string {
	if t.split {
		return []string{"", trailer}
	}
	return []string{""}
}

// direction returns the direction of the grain: the book's, else the one chosen here.
func (t *typed) direction(book *load.Load) load.Direction {
	switch {
	case book != nil:
		return book.Details.Direction
	case t.outbound:
		return load.Outbound
	}
	return load.Inbound
}

// start returns the initial state of an entry form for a load of the book.
func (t *typed) start(book *load.Load) entry.Start {
	return entry.Start{
		Book: book, Direction: t.direction(book), Origin: entry.Origin{Moisture: typedAtDesk, Price: typedAtDesk},
		Drafts: t.drafts(), Factors: slices.Collect(maps.Keys(t.factors)), DriverOn: t.driverOn,
	}
}

// The names of a load form's texts in its draft. They are stored in books and
// never change.
const (
	fieldText  = "field."  // the text of a field that is not in the book
	reasonText = "reason." // why the weight in a field was typed
	factorText = "factor." // a result asked for beyond the usual ones
	splitText  = "split"
	driverText = "driver"
	leavesText = "leaves"
)

// draft is everything typed, as the texts of a draft. What the book has already is
// left out.
func (t *typed) draft(book *load.Load) map[string]string {
	out := map[string]string{}
	for id, text := range t.texts {
		out[fieldText+id] = text
		if reason := t.reasons[id]; reason != "" {
			out[reasonText+id] = reason
		}
	}
	if t.search.text != "" {
		out[fieldText+t.search.field] = t.search.text
	}
	if book == nil {
		if t.outbound {
			out[leavesText] = model.TickOn
		}
		book = &load.Load{}
	}
	maps.Copy(out, factorTexts(t.factors, book.Sample))
	if t.split && len(book.Drafts()) < 2 {
		out[splitText] = model.TickOn
	}
	if t.driverOn != "" {
		out[driverText] = t.driverOn
	}
	return out
}

// restore reads the texts of a draft.
func (t *typed) restore(in session.Language, texts map[string]string) {
	t.outbound, t.split = texts[leavesText] != "", texts[splitText] != ""
	if isOneOf(driverOptions(in), texts[driverText]) {
		t.driverOn = texts[driverText]
	}
	maps.Copy(t.factors, factorsOf(texts))
	maps.Copy(t.reasons, session.CutAll(texts, reasonText))
	t.texts = session.CutAll(texts, fieldText)
}

func isOneOf(options []model.Option, code string) bool {
	return slices.ContainsFunc(options, func(o model.Option) bool { return o.Code == code })
}

// factorTexts returns the factors added and not yet in a sample, as texts of a draft; factorsOf
// reads them.
func factorTexts(factors map[grain.FactorID]bool, s load.Sample) map[string]string {
	out := map[string]string{}
	for id := range factors {
		if _, found := session.Find(s.Findings, func(f load.Finding) bool { return f.Factor == id }); !found {
			out[factorText+string(id)] = model.TickOn
		}
	}
	return out
}

func factorsOf(texts map[string]string) map[grain.FactorID]bool {
	out := map[grain.FactorID]bool{}
	for id := range session.CutAll(texts, factorText) {
		out[grain.FactorID(id)] = true
	}
	return out
}
