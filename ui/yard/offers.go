package yard

import (
	"context"
	"errors"
	"maps"
	"slices"
	"tenthpoint/internal/book"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/title"
	"tenthpoint/ui/session"
)

// offers are defaults from a grower or a truck: the other of the two, the commodity that came last
// time, and the posted price where that was sold at it. Only empty fields get defaults.
type offers struct {
	session *session.Session
	text    func(field string) string // on the form
	fills   map[string]string         // by field
}

// offersAfter are the texts to fill in once a text was typed into a field.
func offersAfter(field string, f *session.Session, text func(field string) string) map[string]string {
	o := offers{session: f, text: text, fills: map[string]string{}}
	switch field {
	case "grower":
		o.fill("truck", o.onlyTruck(text("grower")))
	case "truck":
		if t, ok := f.Known().Truck(text("truck")); ok {
			o.fill("grower", t.Grower)
		}
	default:
		return nil
	}
	if o.now("commodity") == "" {
		o.fill("commodity", o.lastCommodity())
	}
	o.fill("price", o.postedAgain())
	return o.fills
}

// now returns the text of a field, with its default applied.
func (o offers) now(field string) string {
	if text, offered := o.fills[field]; offered {
		return text
	}
	return o.text(field)
}

// fill offers a text for a field that is empty.
func (o offers) fill(field, text string) {
	if text != "" && o.now(field) == "" {
		o.fills[field] = text
	}
}

// onlyTruck is the truck of a grower who has only one.
func (o offers) onlyTruck(grower string) string {
	only := ""
	for _, t := range o.session.Known().Trucks {
		if t.Grower == grower && grower != "" {
			if only != "" {
				return ""
			}
			only = t.ID
		}
	}
	return only
}

// last is the load that this grower or truck brought last; nil where neither was here.
func (o offers) last() *load.Load {
	last, found, err := office.LastLoad(context.Background(), o.session.Desk, o.now("grower"), o.now("truck"))
	if err != nil || !found {
		return nil
	}
	return last
}

// postedAgain takes the posted price of the day for grain that this grower or truck sold at the
// posted price last time.
func (o offers) postedAgain() string {
	last := o.last()
	if last == nil || last.Details.PriceSource != entry.PostedText || last.Details.Under != title.CashSale || last.Details.Commodity != o.now("commodity") {
		return ""
	}
	posted, err := session.House(o.session).Posted(last.Details.Commodity, o.session.Desk.Today())
	if err != nil || posted == nil {
		return ""
	}
	return entry.PostedText
}

// lastCommodity returns the grain that this grower or truck brought last, if the elevator buys it.
func (o offers) lastCommodity() string {
	last := o.last()
	if last == nil {
		return ""
	}
	if _, taken := o.session.Desk.Profile().Schedule(last.Details.Commodity); !taken {
		return ""
	}
	return last.Details.Commodity
}

// loadBefore is the load that the one on a form is like.
type loadBefore struct{ form *LoadForm }

// repeat takes over what a load usually shares with the one before it: grower, grain, field, bin and,
// on the same day, the price. The one before is the last of the grower or truck that is typed, else
// the last that came. What is typed already stays.
func (b loadBefore) repeat() error {
	f := b.form
	last, found, err := office.LastReceived(context.Background(), f.session.Desk, book.LoadFilter{Grower: f.Text("grower"), Truck: f.Text("truck")})
	if err != nil {
		return err
	}
	if !found {
		return errors.New(f.session.Say("No load has come yet that could be repeated"))
	}
	texts := entry.Repeated(session.House(f.session), last)
	if isHere(last) { // its truck cannot be this one
		for _, id := range []string{"truck", "plate", "trailer"} {
			delete(texts, id)
		}
	}
	for _, id := range slices.Sorted(maps.Keys(texts)) {
		if f.Text(id) == "" {
			f.put(id, texts[id])
			f.offered[id] = true
		}
	}
	f.read()
	return f.Commit()
}

// isHere reports whether a load's truck still stands on the yard.
func isHere(l *load.Load) bool { return l.Phase == load.OnYard || l.Phase == load.Ready }
