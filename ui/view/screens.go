package view

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/kit"
	"tenthpoint/ui/present"
)

// screenRow is one screen in the list at the left and under its key.
type screenRow struct {
	id, title string
	menu      string // the menu on the bar that holds its acts
	key       kit.Key
	open      func(*present.Frame) Screen
	hidden    bool // reached by a command, not listed
}

// name is what the screen is called.
func (r screenRow) name() string { return present.Say(r.title) }

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

// Screen is one screen of the window. It is made once, when the window opens.
type Screen interface {
	// Acts are everything a person can do here. They are asked for once,
	// before Build.
	Acts() []Act
	// Build makes the screen's widgets.
	Build(w *Window) fyne.CanvasObject
	// Show is called when the screen comes to the front: it puts the keyboard
	// where work begins.
	Show()
	// Refresh shows the facts as they now are, without moving the keyboard.
	Refresh()
	// Ring is the order of the keyboard on the screen.
	Ring() *kit.Ring
}

// Act is a command of a screen. Without Everywhere it works only while the
// screen is in front.
type Act struct {
	kit.Command
	Everywhere bool
}
