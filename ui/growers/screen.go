package growers

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/listdetail"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// Screen is the list of growers, with the card of the chosen one beside it.
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
		Title: f.Say("Growers"), List: g, Small: true, Reload: g.Reload,
		Filter: g, Head: listdetail.Head{Tip: f.Say("A code, part of a name, a truck, or a plate."), Counted: g.Counted, Figures: 14},
		Detail: card, Arrange: listdetail.Beside(listdetail.Sheet{Figures: cardFigures}),
		Acts: shell.ActsOf(f.Language, g, f.Say("Growers"), growerActs),
		Hint: func() string {
			return f.Say("Type a code or a few letters. Down goes into the list, Enter to the card, Ctrl+G adds a grower.")
		},
	})}
}

// growerActs are the actions of a grower.
var growerActs = []shell.ActRow[*Growers]{
	{ID: "growers.add", Title: "Add a grower", Key: widgets.Ctrl(fyne.KeyG), Do: (*Growers).Add},
	{ID: "growers.change", Title: "Change", Key: widgets.Ctrl(fyne.KeyE), When: (*Growers).HasChosen, Why: "No grower is chosen.", Do: (*Growers).Change},
	{ID: "growers.shares", Title: "Shares", Key: widgets.Ctrl(fyne.KeyH), When: (*Growers).HasChosen, Why: "No grower is chosen.", Do: (*Growers).Shares},
	{ID: "growers.truck", Title: "Add a truck", Key: widgets.Ctrl(fyne.KeyT), When: (*Growers).HasChosen, Why: "No grower is chosen.", Do: (*Growers).AddTruck},
	{ID: "growers.otherTruck", Title: "Change a truck", Key: widgets.Ctrl(fyne.KeyU), When: (*Growers).HasTruck, Why: "No truck is written down for this grower.", Do: (*Growers).ChangeTruck, MenuOnly: true},
	{ID: "growers.label", Title: "Truck label", Icon: apptheme.IconPrint, Key: widgets.CtrlShift(fyne.KeyT), When: (*Growers).HasTruck, Why: "No truck is written down for this grower.", Do: printTruckLabel, MenuOnly: true},
	{ID: "growers.contract", Title: "Contract", Key: widgets.Ctrl(fyne.KeyK), When: (*Growers).HasChosen, Why: "No grower is chosen.", Do: (*Growers).AddContract},
	{ID: "growers.tickets", Title: "Tickets", Key: widgets.Ctrl(fyne.KeyI), When: (*Growers).HasChosen, Why: "No grower is chosen.", Do: (*Growers).TicketsOf},
	{ID: "growers.settle", Title: "Settle", Key: widgets.CtrlShift(fyne.KeyO), When: (*Growers).HasChosen, Why: "No grower is chosen.", Do: (*Growers).SettleUp, MenuOnly: true},
	{ID: "growers.farm", Title: "Add a farm", Key: widgets.CtrlShift(fyne.KeyH), When: (*Growers).HasChosen, Why: "No grower is chosen.", Do: askFarm, MenuOnly: true},
	{ID: "growers.lien", Title: "Notice of lien", Key: widgets.CtrlShift(fyne.KeyN), When: (*Growers).HasChosen, Why: "No grower is chosen.", Do: addLien, MenuOnly: true},
	{ID: "growers.endLien", Title: "End a lien", Key: widgets.CtrlShift(fyne.KeyR), When: (*Growers).HasChosen, Why: "No grower is chosen.", Do: endLien, Destroys: true, MenuOnly: true},
	{ID: "growers.merge", Title: "Take over", Key: widgets.CtrlShift(fyne.KeyE), When: (*Growers).HasChosen, Why: "No grower is chosen.", Do: askTakeover, MenuOnly: true},
	{ID: "growers.sample", Title: "Letters to depositors", Key: widgets.CtrlShift(fyne.KeyW), Do: askSample, MenuOnly: true, Break: true},
	{ID: "growers.answer", Title: "Answer to a letter", Key: widgets.CtrlShift(fyne.KeyL), When: (*Growers).HasChosen, Why: "No grower is chosen.", Do: askAnswer, MenuOnly: true},
	{ID: "growers.letters", Title: "Letters not answered", Key: widgets.CtrlShift(fyne.KeyU), Do: printSample, MenuOnly: true},
	{ID: "growers.account", Title: "Print account", Key: widgets.Ctrl(fyne.KeyP), When: (*Growers).HasChosen, Why: "No grower is chosen.", Do: (*Growers).PrintAccount},
}
