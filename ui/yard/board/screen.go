package board

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// Screen is the board: the trucks of the yard in columns by what they wait for, to be read from the
// door of the scale house.
type Screen struct {
	session    *session.Session
	window     *shell.Window
	Cards      *widgets.Cards
	focusOrder *widgets.FocusOrder
}

// NewScreen makes the board of a session.
func NewScreen(f *session.Session) shell.Screen { return &Screen{session: f} }

// Acts are none: those of the yard work here too.
func (s *Screen) Acts() []shell.Act { return nil }

// Build makes the board.
func (s *Screen) Build(w *shell.Window) fyne.CanvasObject {
	s.window, s.Cards = w, widgets.NewCards(s.session.Say("Open the truck"))
	s.Cards.OnOpen = func(id string) { w.Yard().TakeTruck(id) }
	s.focusOrder = widgets.NewFocusOrder(w.UI)
	s.focusOrder.Add("cards", s.Cards)
	return container.NewStack(s.Cards)
}

// Show moves the focus to the board.
func (s *Screen) Show() { s.focusOrder.FocusFirst() }

// Refresh shows the trucks as they now stand.
func (s *Screen) Refresh() { s.Cards.Set(Columns(s.session.Language, s.window.Yard().Trucks())) }

// FocusOrder has one stop.
func (s *Screen) FocusOrder() *widgets.FocusOrder { return s.focusOrder }

// Hint returns the main keys of the screen.
func (s *Screen) Hint() string {
	return s.session.Say("Arrows go from truck to truck, Enter opens one. Ctrl+Shift+J sorts, Escape goes back to the yard.")
}
