package loadfields

import (
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/title"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// appearance is the form's own data of a field: its width, its list, and its message while nothing
// is wrong.
type appearance struct {
	chars   int
	words   []string // taken in place of a figure
	options func() []model.Option
	hint    func(*load.Load) string
	// reading describes how a text was parsed, where that is not obvious.
	reading func(text string, l *load.Load) string
}

// appearances are those of one load's fields.
type appearances struct {
	session *session.Session
	book    *load.Load // as the book has it; nil before anything is written
	tried   entry.Tried
}

// of is the appearance of a field. Weights and results have that of their kind,
// the others their own.
func (a appearances) of(field entry.Field, always map[string]appearance) appearance {
	if which, draft, isWeight := entry.SideOf(field.ID); isWeight {
		return appearance{chars: 8, hint: func(l *load.Load) string { return a.weightHint(l, which, draft) }}
	}
	own, known := always[field.ID]
	switch {
	case field.ID == "moisture":
		return appearance{chars: 6, hint: a.moistureHint, reading: func(_ string, l *load.Load) string { return a.moistureReading(field.Factor, l) }}
	case known:
		return own
	}
	return appearance{chars: 6, reading: func(_ string, l *load.Load) string {
		return session.Join(", ", resultReading(a.session.Language, field.Factor, l), a.bushel(field.Factor, l))
	}}
}

// bushel names the bushel of a test weight in Canada, where it may be a Winchester bushel or Avery's.
func (a appearances) bushel(factor grain.Factor, l *load.Load) string {
	found, tested := session.Find(l.Sample.Findings, func(one load.Finding) bool { return one.Factor == factor.ID })
	if !tested || found.Amount == nil || found.Amount.Unit() != quantity.LbPerBushel || a.session.Desk.Profile().Rules != "canada" {
		return ""
	}
	return a.session.Say("Winchester bushel")
}

// always are the appearances of the fields that every load has.
func (a appearances) always() map[string]appearance {
	known := a.session.Known()
	return map[string]appearance{
		"grower":    {chars: 24, options: func() []model.Option { return known.GrowerOptions }, hint: func(l *load.Load) string { return session.SharesText(a.session.Language, l) }, reading: a.growerReading},
		"consignee": {chars: 24, hint: func(*load.Load) string { return a.session.Say("who receives the grain") }},
		"commodity": {chars: 24, options: func() []model.Option { return known.CommodityOptions }, hint: a.ratesHint},
		"truck":     {chars: 24, options: func() []model.Option { return known.TruckOptions }, reading: a.truckReading},
		"bin":       {chars: 12, options: func() []model.Option { return known.BinOptions }},
		"terms":     {chars: 12, options: a.termsOptions, reading: a.termsReading},
		"price":     {chars: 7, words: []string{entry.PostedText, entry.LaterText}, hint: a.priceHint},
		"remark":    {chars: 24},
	}
}

// growerReading names the grower of whom only a part of the name was typed.
func (a appearances) growerReading(text string, l *load.Load) string {
	if g := l.Details.Grower; text != "" && text != g.ID && session.SharesText(a.session.Language, l) == "" {
		return session.Join(" ", g.ID, g.Name)
	}
	return ""
}

// ratesHint names the rates the load will be settled under.
func (a appearances) ratesHint(l *load.Load) string {
	e := a.tried.Edition
	if e == nil || l.Details.Commodity == "" {
		return ""
	}
	return a.session.Say("rates %s", e.ID)
}

func (a appearances) truckReading(text string, l *load.Load) string {
	if _, known := a.session.Known().Truck(l.Details.Truck.ID); known || text == "" {
		return ""
	}
	return a.session.Say("not seen before")
}

// weightHint describes the source of a weight, or offers a stored tare.
func (a appearances) weightHint(l *load.Load, which load.Which, of string) string {
	w, ok := l.Weight(which, of)
	switch {
	case ok && w.Source == load.ByHand:
		return a.session.Say("typed by hand")
	case ok && w.Source == load.StoredTare:
		return a.session.Say("stored tare of %s", w.Weighing.Taken)
	case ok:
		return a.session.Say("from scale %s", w.Scale)
	}
	if which == load.Tare && of == "" {
		if t, stored := StoredTare(a.session, a.tried.Load); stored {
			return a.storedHint(t)
		}
	}
	return ""
}

// storedHint offers a stored tare by its key, with its age: nobody takes one of last season unseen.
func (a appearances) storedHint(t elevator.Truck) string {
	switch days := t.Taken.DaysUntil(a.session.Desk.Today()); days {
	case 0:
		return a.session.Say("Ctrl+T: %s, of today", t.Tare.Figure())
	case 1:
		return a.session.Say("Ctrl+T: %s, of yesterday", t.Tare.Figure())
	default:
		return a.session.Say("Ctrl+T: %s, %d days old", t.Tare.Figure(), days)
	}
}

// moistureReading says how a typed moisture is rounded, and which result of the bench it replaces.
func (a appearances) moistureReading(factor grain.Factor, l *load.Load) string {
	m := l.Sample.Moisture
	if m == nil {
		return ""
	}
	reading := recordedAs(a.session.Language, factor, m.Percent)
	if a.book == nil {
		return reading
	}
	if was := a.book.Sample.Moisture; was != nil && was.Bench != nil {
		reading = session.Join(", ", reading, a.session.Say("in place of %s from the bench", was.Percent))
	}
	return reading
}

// moistureHint describes the meter or method of the moisture.
func (a appearances) moistureHint(l *load.Load) string {
	m := l.Sample.Moisture
	switch {
	case m == nil:
		return ""
	case m.Meter != "":
		return a.session.Say("meter %s", m.Meter)
	}
	return a.session.Say(m.Method)
}

// resultReading describes how another typed result was parsed.
func resultReading(in session.Language, factor grain.Factor, l *load.Load) string {
	found, tested := session.Find(l.Sample.Findings, func(one load.Finding) bool { return one.Factor == factor.ID })
	switch {
	case !tested:
		return ""
	case factor.YesNo && found.Present:
		return in.Say("present")
	case factor.YesNo:
		return in.Say("not present")
	case found.Amount == nil || found.Amount.Unit() != factor.Unit:
		return ""
	}
	return recordedAs(in, factor, *found.Amount)
}

// recordedAs returns the rounded figure, if it differs from the typed one.
func recordedAs(in session.Language, factor grain.Factor, measured quantity.Amount) string {
	recorded := factor.Recorded(measured)
	if recorded.Equal(measured) {
		return ""
	}
	return in.Say("recorded as %s", recorded.FixedString(factor.Record.Places()))
}

// The codes under which grain is sold at once or stored; a contract has its own
// number.
const (
	soldCode   = "sold"
	storedCode = "stored"
)

// termsReading describes a contract.
func (a appearances) termsReading(_ string, l *load.Load) string {
	c, ok := a.session.Known().Contract(l.Details.Terms.No)
	if !ok {
		return ""
	}
	return a.session.Say("%s at %s", c.Quantity, c.PriceText())
}

// termsOptions are sale, storage, and the grower's contracts for the grain.
func (a appearances) termsOptions() []model.Option {
	out := []model.Option{
		{Code: soldCode, Name: a.session.Say("sold")},
		{Code: storedCode, Name: a.session.Say("stored for the owner")},
		{Code: string(title.Undecided), Name: a.session.Say("not decided")},
		{Code: string(title.GrainBank), Name: a.session.Say("in the grain bank")},
		{Code: string(title.Receipt) + " ", Name: a.session.Say("on a warehouse receipt"), Detail: a.session.Say("with its number: receipt 1042")},
		{Code: string(title.DelayedPrice) + " ", Name: a.session.Say("on a delayed-price contract"), Detail: a.session.Say("with its number: delayed 17")},
	}
	d := a.tried.Load.Details
	for _, c := range a.session.Known().Contracts {
		if c.Grower == d.Grower.ID && c.Commodity == d.Commodity {
			out = append(out, model.Option{Code: c.Number, Name: a.session.Say("contract"), Detail: a.session.Say("%s at %s until %s", c.Quantity, c.PriceText(), c.Until)})
		}
	}
	return out
}

func (a appearances) priceHint(l *load.Load) string {
	if l.Details.Price == nil {
		if posted, err := session.House(a.session).Posted(l.Details.Commodity, a.session.Desk.Today()); err == nil && posted != nil {
			return a.session.Say("P takes the posted %s", posted.Price.Figure())
		}
		return a.session.Text(l.Details.Under.Unpriced())
	}
	return a.session.Text(l.Details.Deal().PriceText())
}

// StoredTare is the truck of a load, if it has a tare stored in the unit of the
// scale.
func StoredTare(f *session.Session, l *load.Load) (elevator.Truck, bool) {
	t, ok, _ := entry.StoredTare(session.House(f), l.Details.Truck) // the lists are read already
	return t, ok
}
