package desktop

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/bins"
	"tenthpoint/ui/day"
	"tenthpoint/ui/disputes"
	"tenthpoint/ui/equipment"
	"tenthpoint/ui/growers"
	"tenthpoint/ui/help"
	"tenthpoint/ui/lab"
	"tenthpoint/ui/lab/shelf"
	"tenthpoint/ui/rates"
	"tenthpoint/ui/season"
	"tenthpoint/ui/setup"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/tickets"
	"tenthpoint/ui/widgets"
	"tenthpoint/ui/yard"
	"tenthpoint/ui/yard/board"
)

// Screens is the table of screens, in the order of the list.
var Screens = []shell.ScreenRow{
	{ID: "yard", Title: "Yard", Menu: "Load", Key: widgets.Ctrl(fyne.Key1), Open: yard.NewScreen},
	{ID: "bench", Title: "Bench", Menu: "Bench", Key: widgets.Ctrl(fyne.Key2), Open: lab.NewBenchScreen},
	{ID: "tickets", Title: "Tickets", Menu: "Tickets", Key: widgets.Ctrl(fyne.Key3), Open: tickets.NewScreen},
	{ID: "day", Title: "screen|Day sheet", Menu: "Day", Key: widgets.Ctrl(fyne.Key4), Open: day.NewScreen},
	{ID: "rates", Title: "Rates", Menu: "Elevator", Key: widgets.Ctrl(fyne.Key5), Open: rates.NewScreen},
	{ID: "growers", Title: "Growers", Menu: "Elevator", Key: widgets.Ctrl(fyne.Key6), Open: growers.NewScreen},
	{ID: "gear", Title: "Equipment", Menu: "Elevator", Key: widgets.Ctrl(fyne.Key7), Open: equipment.NewScreen},
	{ID: "handbook", Title: "Handbook", Menu: "Go to", Key: widgets.Ctrl(fyne.Key8), Open: help.NewHandbookScreen},
	{ID: "bins", Title: "Bins", Menu: "Elevator", Key: widgets.Ctrl(fyne.Key9), Open: bins.NewScreen},
	{ID: "setup", Title: "Set-up", Menu: "Elevator", Key: widgets.Ctrl(fyne.Key0), Open: setup.NewScreen},
	{ID: "meters", Title: "Meters", Menu: "Bench", Key: widgets.CtrlShift(fyne.KeyM), Open: lab.NewMetersScreen, Hidden: true},
	{ID: "samples", Title: "Samples kept", Menu: "Bench", Key: widgets.CtrlShift(fyne.KeyS), Open: shelf.NewScreen, Hidden: true},
	{ID: "making", Title: "Own rates", Menu: "Elevator", Key: widgets.CtrlShift(fyne.KeyQ), Open: rates.NewMakingScreen, Hidden: true},
	{ID: "season", Title: "Season", Menu: "Day", Key: widgets.CtrlShift(fyne.KeyI), Open: season.NewScreen, Hidden: true},
	{ID: "disputes", Title: "Disputes", Menu: "Tickets", Key: widgets.CtrlShift(fyne.KeyD), Open: disputes.NewScreen, Hidden: true},
	{ID: "board", Title: "Board", Menu: "Load", Key: widgets.CtrlShift(fyne.KeyY), Open: board.NewScreen, Hidden: true},
	{ID: "keys", Title: "Keys", Menu: "Go to", Key: widgets.Ctrl(fyne.KeyF1), Open: help.NewKeysScreen, Hidden: true},
}
