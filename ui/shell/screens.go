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
	Group     string // the heading it is listed under, which names the key that is held
	Hidden    bool   // reached by a command, not listed
}

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
	// Acts returns the actions of the screen. It is called once, before Build.
	Acts() []Act
	// Build makes the screen's widgets.
	Build(w *Window) fyne.CanvasObject
	// Show is called when the screen comes to the front: it moves the focus to where work begins.
	Show()
	// Refresh shows the current facts, without moving the keyboard.
	Refresh()
	// FocusOrder returns the tab order of the screen.
	FocusOrder() *widgets.FocusOrder
}

// Act is a command of a screen. Without Everywhere it works only while the
// screen is in front.
type Act struct {
	widgets.Command
	Everywhere bool
	MenuOnly   bool // it has no button in the row under the screen
}

// ActRow is one row in the table of acts of a screen S. Its texts are English.
type ActRow[S any] struct {
	ID, Title  string
	Icon       fyne.Resource
	Key        widgets.Key
	Everywhere bool // works whichever screen is in front
	Break      bool // begins a part of the menu
	MenuOnly   bool // no button in the row under the screen
	Destroys   bool // takes something away
	// When says whether the act makes sense now; nil: always. Why is the sentence
	// for when it does not; WhyNot finds it, where it depends on the work.
	When   func(S) bool
	Why    string
	WhyNot func(S) string
	Do     func(S)
}

// ActsOf are the acts of a table for one screen, in a group of its menu.
func ActsOf[S any](in session.Language, screen S, group string, table []ActRow[S]) []Act {
	acts := make([]Act, len(table))
	for i, row := range table {
		acts[i] = row.act(in, screen, group)
	}
	return acts
}

func (r ActRow[S]) act(in session.Language, screen S, group string) Act {
	c := widgets.Command{
		ID: r.ID, Title: in.Say(r.Title), Group: group, Icon: r.Icon, Break: r.Break, Destroys: r.Destroys,
		Keys: []widgets.Key{r.Key}, Do: func() { r.Do(screen) },
	}
	if r.When != nil {
		c.EnabledWhen = func() bool { return r.When(screen) }
	}
	switch {
	case r.WhyNot != nil:
		c.WhyNot = func() string { return r.WhyNot(screen) }
	case r.Why != "":
		c.WhyNot = func() string { return in.Say(r.Why) }
	}
	return Act{Command: c, Everywhere: r.Everywhere, MenuOnly: r.MenuOnly}
}

// ButtonsOf are the acts that have a button, by id, in their order.
func ButtonsOf(acts []Act) []string {
	var out []string
	for _, a := range acts {
		if !a.MenuOnly {
			out = append(out, a.ID)
		}
	}
	return out
}
