package growers

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/listdetail"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// Screen is the list of those who bring grain, with the card of the one chosen
// beside it.
type Screen struct {
	*listdetail.Screen
	Growers *Growers
	Card    *listdetail.Paper
}

// cardFigures is the least width of the card beside the list.
const cardFigures = 46

// NewScreen makes the screen of a session.
func NewScreen(f *session.Session) shell.Screen {
	g := NewGrowers(f)
	card := &listdetail.Paper{Stop: "card", Lines: g.Card, Shown: g.HasChosen}
	return &Screen{Growers: g, Card: card, Screen: listdetail.New(listdetail.Spec{
		Title: session.Say("Growers"), List: g, Small: true, Reload: g.Reload,
		Filter: g, Head: listdetail.Head{Tip: session.Say("A code, part of a name, a truck, or a plate."), Counted: g.Counted, Figures: 14},
		Detail: card, Arrange: listdetail.Beside(listdetail.Sheet{Figures: cardFigures}),
		Group: session.Say("Growers"), Acts: acts(g),
		Hint: func() string {
			return session.Say("Type a code or a few letters. Down goes into the list, Enter to the card, Ctrl+G adds a grower.")
		},
	})}
}

// acts are what can be done with a grower.
func acts(g *Growers) []shell.ActRow {
	nobody := func() string { return session.Say("No grower is in hand.") }
	noTruck := func() string { return session.Say("No truck is written down for this grower.") }
	return []shell.ActRow{
		{ID: "growers.add", Title: session.Say("Add a grower"), Key: widgets.Ctrl(fyne.KeyG), Do: g.Add},
		{ID: "growers.change", Title: session.Say("Change"), Key: widgets.Ctrl(fyne.KeyE), When: g.HasChosen, WhyNot: nobody, Do: g.Change},
		{ID: "growers.shares", Title: session.Say("Shares"), Key: widgets.Ctrl(fyne.KeyH), When: g.HasChosen, WhyNot: nobody, Do: g.Shares},
		{ID: "growers.truck", Title: session.Say("Add a truck"), Key: widgets.Ctrl(fyne.KeyT), When: g.HasChosen, WhyNot: nobody, Do: g.AddTruck},
		{ID: "growers.otherTruck", Title: session.Say("Change a truck"), Key: widgets.Ctrl(fyne.KeyU), When: g.HasTruck, WhyNot: noTruck, Do: g.ChangeTruck},
		{ID: "growers.contract", Title: session.Say("Contract"), Key: widgets.Ctrl(fyne.KeyK), When: g.HasChosen, WhyNot: nobody, Do: g.AddContract},
		{ID: "growers.tickets", Title: session.Say("Tickets"), Key: widgets.Ctrl(fyne.KeyI), When: g.HasChosen, WhyNot: nobody, Do: g.TicketsOf},
		{ID: "growers.account", Title: session.Say("Print account"), Key: widgets.Ctrl(fyne.KeyP), When: g.HasChosen, WhyNot: nobody, Do: g.PrintAccount},
	}
}
