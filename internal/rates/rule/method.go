package rule

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/tomlfile"
)

// Method is one method of a kind of rule, with everything particular to it: how it is read, posted,
// settled, worded on the ticket and explained. R is the type of the rule, W the function that
// settles a load.
//
// All engines of a settlement share it. A method that a new engine calculates differently is a
// second method under its own id, or the engine's own stage in settle decides; what has settled a
// load is never changed.
type Method[R, W any] struct {
	// ID names the method in an edition, as in method = "water".
	ID string
	// Said describes the method in a sentence, in posted rates.
	Said string
	// Read reads the keys of the method.
	Read func(t *tomlfile.Table, h *Head, r *R)
	// Lines posts the keys of Read.
	Lines func(w *Lines, r R)
	// Work settles a load. For a method that takes nothing, Nothing is the reason.
	Work    W
	Nothing message.Text
	// Ticket returns the ticket's description of the method beside its figures.
	Ticket func(r R) message.Text
	// Caution returns a warning about a rule of this method, or nothing; it may be nil.
	Caution func(r R) message.Text
	// Explained is the method's paragraph in the handbook.
	Explained string
}

// Figures is the Ticket function of a method whose figures need no description.
func Figures[R any](R) message.Text { return message.Text{} }

// NoKeys is the Read function of a method without keys of its own.
func NoKeys[R any](*tomlfile.Table, *Head, *R) {}

// NoLines is the Lines of a method that NoKeys reads.
func NoLines[R any](*Lines, R) {}

// Choose reads which of the methods an edition has chosen; nil when it names
// none of them, which has then been reported.
func Choose[R, W any](t *tomlfile.Table, key string, methods []*Method[R, W]) *Method[R, W] {
	ids := make([]string, len(methods))
	for i, m := range methods {
		ids[i] = m.ID
	}
	chosen := t.Choice(key, ids...)
	for _, m := range methods {
		if m.ID == chosen {
			return m
		}
	}
	return nil
}

// Description is a method for people who look it up.
type Description struct{ ID, Explained string }

// Describe lists the methods of a table.
func Describe[R, W any](methods []*Method[R, W]) []Description {
	out := make([]Description, len(methods))
	for i, m := range methods {
		out[i] = Description{ID: m.ID, Explained: m.Explained}
	}
	return out
}
