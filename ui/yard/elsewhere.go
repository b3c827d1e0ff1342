package yard

import (
	"context"
	"maps"
	"slices"
	"strings"

	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/ui/model"
)

// Where a house has several desks, two people may be at one load. Both are told: who is on a form
// learns that somebody else has written on its load, and keeps what is typed.

// sayWritten tells that somebody else has written on the load of the current form.
func sayWritten(y *Yard, form *LoadForm, now *load.Load) {
	if form != y.current || form.Book.SameFacts(now) {
		return
	}
	if who, some := lastWriter(y, form.id); some {
		y.session.Notify(model.Warn, y.session.Say("%s has written on load %s just now; what is typed here stays.", who, form.id))
	}
}

// sayFinished tells that somebody else has finished a load on whose form something was typed, and
// what that was.
func sayFinished(y *Yard, form *LoadForm) {
	var typed []string
	for _, id := range slices.Sorted(maps.Keys(form.typed.texts)) {
		if text := strings.TrimSpace(form.typed.texts[id]); text != "" {
			typed = append(typed, text)
		}
	}
	if len(typed) == 0 {
		return
	}
	who, some := lastWriter(y, form.id)
	if !some {
		return
	}
	y.session.Notify(model.Warn, y.session.Say("%s has finished load %s meanwhile. What was typed here is not on it: %s.", who, form.id, strings.Join(typed, ", ")))
}

// lastWriter is the author of the last fact of a load, unless that is who is at this desk.
func lastWriter(y *Yard, id string) (who string, some bool) {
	facts, err := y.session.Desk.Reader().FactsOf(context.Background(), office.LoadSubject(id))
	if err != nil || len(facts) == 0 {
		return "", false
	}
	who = facts[len(facts)-1].Who
	return who, who != y.session.Desk.Signature()
}
