package yard

import (
	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// direction is which way the grain of the load moves.
func (f *LoadForm) direction() load.Direction {
	switch {
	case f.Book != nil:
		return f.Book.Details.Direction
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
	if f.Book == nil {
		f.leaves = !f.leaves
		f.Work()
		f.jot()
	} else if err := f.turnInBook(); err != nil {
		return err
	}
	said := session.Say("the truck brings grain.")
	if f.Leaves() {
		said = session.Say("the truck takes grain away: say who receives it. It is only weighed.")
	}
	f.session.Say(model.OK, said)
	f.session.Window.Redraw()
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
	bushels := model.Figure{Caption: session.Say("By legal weight"), Value: session.NotYet, Unit: "bu"}
	if s := f.Now.settlement; s != nil && s.Bushels != nil {
		bushels.Value = session.FigureOf(s.Bushels)
	}
	return []model.Figure{net, bushels, {Caption: session.Say("Only weighed")}}
}
