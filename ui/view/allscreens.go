package view

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/kit"
)

// screens is the table of screens, in the order of the list.
var screens = []screenRow{
	{id: "yard", title: "Yard", menu: "Load", key: kit.Ctrl(fyne.Key1), open: newYardScreen},
	{id: "bench", title: "Bench", menu: "Bench", key: kit.Ctrl(fyne.Key2), open: newBenchScreen},
	{id: "tickets", title: "Tickets", menu: "Tickets", key: kit.Ctrl(fyne.Key3), open: newTicketsScreen},
	{id: "day", title: "Day sheet", menu: "Day", key: kit.Ctrl(fyne.Key4), open: newDayScreen},
	{id: "rates", title: "Rates", menu: "Elevator", key: kit.Ctrl(fyne.Key5), open: newRatesScreen},
	{id: "growers", title: "Growers", menu: "Elevator", key: kit.Ctrl(fyne.Key6), open: newGrowersScreen},
	{id: "gear", title: "Gear", menu: "Elevator", key: kit.Ctrl(fyne.Key7), open: newGearScreen},
	{id: "handbook", title: "Handbook", menu: "Go to", key: kit.Ctrl(fyne.Key8), open: newHandbookScreen},
	{id: "setup", title: "Set-up", menu: "Elevator", key: kit.Ctrl(fyne.Key0), open: newSetUpScreen},
	{id: "meters", title: "Meters", menu: "Bench", key: kit.CtrlShift(fyne.KeyM), open: newMetersScreen, hidden: true},
	{id: "samples", title: "Samples kept", menu: "Bench", key: kit.CtrlShift(fyne.KeyS), open: newSamplesScreen, hidden: true},
	{id: "disputes", title: "Disputes", menu: "Tickets", key: kit.CtrlShift(fyne.KeyD), open: newDisputesScreen, hidden: true},
	{id: "keys", title: "Keys", menu: "Go to", key: kit.Ctrl(fyne.KeyF1), open: newKeysScreen, hidden: true},
}
