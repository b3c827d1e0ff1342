package session

import (
	"context"
	"fmt"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
)

// Condition is the state of a truck scale's display. Only a weight at rest may go on a ticket.
type Condition int

// The conditions.
const (
	AtRest    Condition = iota
	Moving              // or the indicator does not tell
	Net                 // a tare is held in the indicator
	Over                // above its range, or its capacity
	Under               // below its range
	BelowZero           //
	Faulty              // the indicator reports a fault
	OtherUnit           // than the scale is set up in
	Undivided           // no whole number of divisions
)

// word returns the sidebar's word for a condition, and its state.
func (c Condition) word(in Language) (string, model.State) {
	switch c {
	case AtRest:
		return "", model.OK
	case Moving:
		return in.Say("MOTION"), model.Wait
	case Net:
		return in.Say("NET"), model.Stop
	case Over:
		return in.Say("OVER"), model.Stop
	case Under:
		return in.Say("UNDER"), model.Stop
	case BelowZero:
		return in.Say("BELOW ZERO"), model.Stop
	case OtherUnit:
		return in.Say("OTHER UNIT"), model.Stop
	case Undivided:
		return in.Say("NO DIVISION"), model.Stop
	}
	return in.Say("FAULT"), model.Stop
}

// Display is the reading of a truck scale's indicator. Over, under and with a fault the digits mean
// nothing and the weight is zero.
type Display struct {
	Weight    quantity.Amount
	Condition Condition
}

// IsAtRest reports whether the display shows a weight that may go on a ticket.
func (d Display) IsAtRest() bool { return d.Condition == AtRest }

// isBlind reports whether the digits mean nothing.
func (d Display) isBlind() bool {
	return d.Weight.IsZero() && d.Condition != AtRest && d.Condition != Moving
}

// Says describes the display: the weight with its condition, and its state.
func (d Display) Says(in Language) model.Status {
	word, state := d.Condition.word(in)
	switch {
	case d.IsAtRest():
		return model.Status{State: state, Text: in.Say("%s, at rest", d.Weight)}
	case d.isBlind():
		return model.Status{State: state, Text: word}
	}
	return model.Status{State: state, Text: Join(", ", d.Weight.String(), word)}
}

// Indicator is the truck scale's display, where the program can read it.
type Indicator interface {
	// Latest returns the current reading. The error says why there is none.
	Latest() (Display, error)
	// Weigh waits for a weight at rest that may go on a ticket.
	Weigh(ctx context.Context) (quantity.Amount, error)
}

// Live returns the current reading for the sidebar: the weight, and over it in a word what keeps it
// from a ticket. Shown is false where weights are typed.
func (f *Session) Live() (live model.Figure, shown bool) {
	if f.Indicator == nil {
		return model.Figure{}, false
	}
	s, _ := f.Scale()
	live = model.Figure{Caption: f.Say("Scale %s", s.ID), Unit: f.Desk.Profile().WeightUnit().String()}
	display, err := f.Indicator.Latest()
	if err != nil {
		live.Caption, live.State = f.Say("Scale %s: no reading", s.ID), model.Stop
		return live, true
	}
	word, state := display.Condition.word(f.Language)
	live.State = state
	if display.isBlind() {
		live.Value, live.Unit = word, ""
		return live, true
	}
	if word != "" {
		live.Caption = f.Say("Scale %s: %s", s.ID, word)
	}
	live.Value, live.Unit = display.Weight.Figure(), display.Weight.Unit().String()
	return live, true
}

// ScaleMemory is the name under which the station remembers its scale.
const ScaleMemory = "scale"

// Scale returns the scale of this desk: the one chosen here, else the first of the elevator.
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

// ReadTare parses a tare as a weight of the elevator's scale.
func ReadTare(f *Session, text string) (quantity.Amount, error) {
	s, ok := f.Scale()
	if !ok {
		return quantity.Amount{}, fmt.Errorf("%s", f.Say("No scale is set up. Add one in the set-up"))
	}
	return entry.ParseScaleWeight(f.Say("Tare"), text, s)
}
