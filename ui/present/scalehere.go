package present

// A house may have several scales, and a desk at each. Which one a desk weighs on
// belongs to its computer, not to the book.

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
