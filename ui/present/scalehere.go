package present

import (
	"tenthpoint/internal/elevator"
)

// A house may have several scales, and a desk at each. Which one a desk weighs on
// belongs to its computer, not to the book.

// scaleMemory is the name under which the station remembers its scale.
const scaleMemory = "scale"

// Scale is the scale that this desk weighs on: the one chosen here, else the
// first of the house.
func (f *Frame) Scale() (elevator.Scale, bool) {
	p := f.Desk.Profile()
	if chosen, known := p.Scale(f.recall(scaleMemory)); known {
		return chosen, true
	}
	if len(p.Scales) == 0 {
		return elevator.Scale{}, false
	}
	return p.Scales[0], true
}

// CanWeighOn reports whether there is another scale to choose from.
func (g *Gear) CanWeighOn() bool { return len(g.frame.Desk.Profile().Scales) > 1 }

// WeighOn lets this desk weigh on a scale from now on.
func (g *Gear) WeighOn(id string) {
	s, known := g.frame.Desk.Profile().Scale(id)
	if !known {
		return
	}
	g.frame.remember(scaleMemory, s.ID)
	g.frame.Changed()
	g.relink(Say("this desk weighs on scale %s.", s.ID))
}
