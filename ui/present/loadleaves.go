package present

import (
	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
)

// direction is which way the grain of the load moves.
func (f *LoadForm) direction() load.Direction {
	switch {
	case f.book != nil:
		return f.book.Details.Direction
	case f.leaves:
		return load.Outbound
	}
	return load.Inbound
}

// Leaves reports whether the truck takes grain away. Such a load is only
// weighed: what it is sold on is the buyer's test.
func (f *LoadForm) Leaves() bool { return f.direction() == load.Outbound }

// TurnRound makes a truck that brings grain one that takes it away, and back.
func (f *LoadForm) TurnRound() error {
	if f.book == nil {
		f.leaves = !f.leaves
		f.work()
		f.jot()
	} else if err := f.turnInBook(); err != nil {
		return err
	}
	said := Say("the truck brings grain.")
	if f.Leaves() {
		said = Say("the truck takes grain away: say who receives it. It is only weighed.")
	}
	f.frame.Say(model.OK, said)
	f.frame.window.Redraw()
	return nil
}

// turnInBook writes the other direction down, after what is typed.
func (f *LoadForm) turnInBook() error {
	if err := f.Commit(); err != nil {
		return err
	}
	way := load.Outbound
	if f.Leaves() {
		way = load.Inbound
	}
	return f.writeDown(map[string]string{"direction": string(way)})
}

// leavingFigures are the large figures of a load that is only weighed.
func (f *LoadForm) leavingFigures(net model.Figure) []model.Figure {
	bushels := model.Figure{Caption: Say("By legal weight"), Value: notYet, Unit: "bu"}
	if s := f.now.settlement; s != nil && s.Bushels != nil {
		bushels.Value = figureOf(s.Bushels)
	}
	return []model.Figure{net, bushels, {Caption: Say("Only weighed")}}
}
