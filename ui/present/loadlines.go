package present

import (
	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
)

// appearances are how the fields stand that every load has; results and weights have
// appearances of their kind.
func (f *LoadForm) appearances() map[string]appearance {
	known := f.frame.known()
	return map[string]appearance{
		"grower":    {chars: 24, options: func() []model.Option { return known.growerOptions }, hint: sharesText, reading: f.growerReading},
		"consignee": {chars: 24, hint: func(*load.Load) string { return Say("who receives the grain") }},
		"commodity": {chars: 24, options: func() []model.Option { return known.commodityOptions }, hint: f.ratesHint},
		"truck":     {chars: 24, options: func() []model.Option { return known.truckOptions }, reading: f.truckReading},
		"moisture":  {chars: 6, hint: f.moistureHint, reading: f.moistureReading},
		"bin":       {chars: 12, options: func() []model.Option { return known.binOptions }},
		"terms":     {chars: 12, options: f.termsOptions, reading: f.termsReading},
		"price":     {chars: 7, hint: priceHint},
		"remark":    {chars: 24},
	}
}

// growerReading names the grower of whom only a part of the name was typed.
func (f *LoadForm) growerReading(text string, l *load.Load) string {
	if g := l.Details.Grower; text != "" && text != g.ID && sharesText(l) == "" {
		return join(" ", g.ID, g.Name)
	}
	return ""
}

// partyText is a grower as the field holds it: by code, or by name alone.
func partyText(p load.Party) string {
	if p.ID != "" {
		return p.ID
	}
	return p.Name
}

// ratesHint names the rates the load will be settled under.
func (f *LoadForm) ratesHint(l *load.Load) string {
	e := f.now.edition
	if e == nil || l.Details.Commodity == "" {
		return ""
	}
	return Say("rates %s", e.ID)
}

func (f *LoadForm) truckReading(text string, l *load.Load) string {
	if _, known := f.frame.known().truck(l.Details.Truck.ID); known || text == "" {
		return ""
	}
	return Say("not seen before")
}

func truckText(t load.Truck) string {
	if t.ID != "" {
		return t.ID
	}
	return t.Plate
}

// weightID is the field of one side of a draft.
func weightID(which load.Which, draft string) string { return entry.WeightID(which, draft) }

// sideOf is the side and the draft of a weight's field.
func sideOf(id string) (which load.Which, draft string, isWeight bool) { return entry.SideOf(id) }

// bare is a figure as it was written, without its unit.
func bare(a quantity.Amount) string { return a.In(quantity.Plain).Written() }
