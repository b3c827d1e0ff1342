package session

import (
	"context"
	"fmt"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
)

// Indicator is the truck scale's display, where the program can read it.
type Indicator interface {
	// Latest is what the display shows now, and whether it is at rest. The
	// error says in a sentence why nothing is known.
	Latest() (weight quantity.Amount, atRest bool, err error)
	// Weigh waits for a weight at rest that may go on a ticket.
	Weigh(ctx context.Context) (quantity.Amount, error)
}

// Live is what the scale shows now, for the rail; shown is false where weights
// are typed.
func (f *Session) Live() (live model.Figure, shown bool) {
	if f.Indicator == nil {
		return model.Figure{}, false
	}
	s, _ := f.Scale()
	live = model.Figure{Caption: Say("Scale %s", s.ID), Unit: f.Desk.Profile().WeightUnit().String(), State: model.Wait}
	weight, atRest, err := f.Indicator.Latest()
	switch {
	case err != nil:
		live.Caption, live.State = Say("Scale %s: no reading", s.ID), model.Stop
		return live, true
	case atRest:
		live.State = model.OK
	}
	live.Value, live.Unit = weight.Figure(), weight.Unit().String()
	return live, true
}

// ScaleMemory is the name under which the station remembers its scale.
const ScaleMemory = "scale"

// Scale is the scale that this desk weighs on: the one chosen here, else the
// first of the house.
func (f *Session) Scale() (elevator.Scale, bool) {
	p := f.Desk.Profile()
	if chosen, known := p.Scale(f.Recall(ScaleMemory)); known {
		return chosen, true
	}
	if len(p.Scales) == 0 {
		return elevator.Scale{}, false
	}
	return p.Scales[0], true
}

// ReadTare reads a tare as a weight of the house's scale.
func ReadTare(f *Session, text string) (quantity.Amount, error) {
	s, ok := f.Scale()
	if !ok {
		return quantity.Amount{}, fmt.Errorf("%s", Say("No scale is set up. Add one in the set-up"))
	}
	return entry.ParseScaleWeight(Say("Tare"), text, s)
}
