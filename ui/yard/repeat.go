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
	"tenthpoint/ui/session"
)

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
