package desktop

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/bins"
	"tenthpoint/ui/contracts"
	"tenthpoint/ui/day"
	"tenthpoint/ui/disputes"
	"tenthpoint/ui/due"
	"tenthpoint/ui/equipment"
	"tenthpoint/ui/growers"
	"tenthpoint/ui/help"
	"tenthpoint/ui/lab"
	"tenthpoint/ui/lab/shelf"
	"tenthpoint/ui/prices"
	"tenthpoint/ui/rates"
	"tenthpoint/ui/season"
	"tenthpoint/ui/setup"
	"tenthpoint/ui/sheets"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/tickets"
	"tenthpoint/ui/widgets"
	"tenthpoint/ui/yard"
	"tenthpoint/ui/yard/board"
)

// The headings of the list of screens. Alt with 1 to 4 turns the parts of the day sheet.
const (
	withCtrl = "Go to, with Ctrl"
	withAlt  = "The money, with Alt"
)

// Screens is the table of screens, in the order of the list.
var Screens = []shell.ScreenRow{
	{ID: "yard", Title: "Yard", Menu: "Load", Key: widgets.Ctrl(fyne.Key1), Group: withCtrl, Open: yard.NewScreen},
	{ID: "bench", Title: "Bench", Menu: "Bench", Key: widgets.Ctrl(fyne.Key2), Group: withCtrl, Open: lab.NewBenchScreen},
	{ID: "tickets", Title: "Tickets", Menu: "Tickets", Key: widgets.Ctrl(fyne.Key3), Group: withCtrl, Open: tickets.NewScreen},
	{ID: "day", Title: "screen|Day sheet", Menu: "Day", Key: widgets.Ctrl(fyne.Key4), Group: withCtrl, Open: day.NewScreen},
	{ID: "rates", Title: "Rates", Menu: "Elevator", Key: widgets.Ctrl(fyne.Key5), Group: withCtrl, Open: rates.NewScreen},
	{ID: "growers", Title: "Growers", Menu: "Elevator", Key: widgets.Ctrl(fyne.Key6), Group: withCtrl, Open: growers.NewScreen},
	{ID: "gear", Title: "Equipment", Menu: "Elevator", Key: widgets.Ctrl(fyne.Key7), Group: withCtrl, Open: equipment.NewScreen},
	{ID: "handbook", Title: "Handbook", Menu: "Go to", Key: widgets.Ctrl(fyne.Key8), Group: withCtrl, Open: help.NewHandbookScreen},
	{ID: "bins", Title: "Bins", Menu: "Elevator", Key: widgets.Ctrl(fyne.Key9), Group: withCtrl, Open: bins.NewScreen},
	{ID: "setup", Title: "Set-up", Menu: "Elevator", Key: widgets.Ctrl(fyne.Key0), Group: withCtrl, Open: setup.NewScreen},
	{ID: "settle", Title: "screen|Settle", Menu: "Money", Key: widgets.Alt(fyne.Key5), Group: withAlt, Open: sheets.NewSettleScreen},
	{ID: "contracts", Title: "Contracts", Menu: "Money", Key: widgets.Alt(fyne.Key6), Group: withAlt, Open: contracts.NewScreen},
	{ID: "payments", Title: "Payments", Menu: "Money", Key: widgets.Alt(fyne.Key7), Group: withAlt, Open: sheets.NewPaymentsScreen},
	{ID: "prices", Title: "Prices", Menu: "Money", Key: widgets.Alt(fyne.Key8), Group: withAlt, Open: prices.NewScreen},
	{ID: "due", Title: "screen|Due", Menu: "Money", Key: widgets.Alt(fyne.Key9), Group: withAlt, Open: due.NewScreen},
	{ID: "meters", Title: "Meters", Menu: "Bench", Key: widgets.CtrlShift(fyne.KeyM), Open: lab.NewMetersScreen, Hidden: true},
	{ID: "samples", Title: "Samples kept", Menu: "Bench", Key: widgets.CtrlShift(fyne.KeyS), Open: shelf.NewScreen, Hidden: true},
	{ID: "making", Title: "Own rates", Menu: "Elevator", Key: widgets.CtrlShift(fyne.KeyQ), Open: rates.NewMakingScreen, Hidden: true},
	{ID: "season", Title: "Season", Menu: "Day", Key: widgets.CtrlShift(fyne.KeyI), Open: season.NewScreen, Hidden: true},
	{ID: "disputes", Title: "Disputes", Menu: "Tickets", Key: widgets.CtrlShift(fyne.KeyD), Open: disputes.NewScreen, Hidden: true},
	{ID: "board", Title: "Board", Menu: "Load", Key: widgets.CtrlShift(fyne.KeyY), Open: board.NewScreen, Hidden: true},
	{ID: "keys", Title: "Keys", Menu: "Go to", Key: widgets.Ctrl(fyne.KeyF1), Open: help.NewKeysScreen, Hidden: true},
}
