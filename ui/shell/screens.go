package shell

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/widgets"
)

// ScreenRow is one screen in the list at the left and under its key.
type ScreenRow struct {
	ID, Title string
	Menu      string // the menu on the bar that holds its acts
	Key       widgets.Key
	Open      func(*session.Session) Screen
	Hidden    bool // reached by a command, not listed
}

// name is what the screen is called.
func (r ScreenRow) name() string { return session.Say(r.Title) }

// Yard is the screen of the yard, whose trucks the sidebar shows too.
type Yard interface {
	Screen
	Trucks() []model.TruckRow
	Here() string
	Advice() string
	TakeTruck(id string)
	WatchScale()
	EndWait()
}

// Yard is the first screen with trucks.
func (w *Window) Yard() Yard {
	for _, s := range w.Screens {
		if y, ok := s.(Yard); ok {
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
	Ring() *widgets.FocusOrder
}

// Act is a command of a screen. Without Everywhere it works only while the
// screen is in front.
type Act struct {
	widgets.Command
	Everywhere bool
}

// ActRow is one act of a screen as a row of a table: what it is called, by which
// key, when it is possible, and what it does.
type ActRow struct {
	ID, Title string
	Key       widgets.Key
	Icon      fyne.Resource
	When      func() bool   // whether it is possible now; nil: always
	WhyNot    func() string // the sentence to say when it is not
	Do        func()

	Break      bool // a line above it in the menu
	MenuOnly   bool // no button in the row under the screen
	Everywhere bool // it works whatever screen is in front
}

// Acts makes the acts of a screen from their table; group is the part of the menu
// they stand in.
func Acts(group string, rows []ActRow) []Act {
	out := make([]Act, len(rows))
	for i, r := range rows {
		out[i] = Act{Everywhere: r.Everywhere, Command: widgets.Command{
			ID: r.ID, Title: r.Title, Group: group, Icon: r.Icon, Keys: []widgets.Key{r.Key}, Break: r.Break,
			EnabledWhen: r.When, WhyNot: r.WhyNot, Do: r.Do,
		}}
	}
	return out
}

// ButtonsOf are the acts of a table that have a button, by id, in their order.
func ButtonsOf(rows []ActRow) []string {
	var out []string
	for _, r := range rows {
		if !r.MenuOnly {
			out = append(out, r.ID)
		}
	}
	return out
}
