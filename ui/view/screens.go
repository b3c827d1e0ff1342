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

// yard is the screen of the yard, whose trucks the sidebar shows too.
type yard interface {
	Screen
	Trucks() []present.YardRow
	Here() string
	Advice() string
	TakeTruck(id string)
	WatchScale()
	EndWait()
}

// yard is the first screen with trucks.
func (w *Window) yard() yard {
	for _, s := range w.screens {
		if y, ok := s.(yard); ok {
			return y
		}
	}
	panic("no screen of the window is the yard")
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
