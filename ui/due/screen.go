package due

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/listdetail"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// Screen is the list of what falls due, with the chosen line whole beside it.
type Screen struct {
	*listdetail.Screen
	List *List
}

// NewScreen makes the screen of a session.
func NewScreen(f *session.Session) shell.Screen {
	l := NewList(f)
	return &Screen{List: l, Screen: listdetail.New(listdetail.Spec{
		Title: f.Say("What falls due"), List: l, Small: true, Reload: l.Reload,
		Head:   listdetail.Head{Counted: l.Counted, Figures: 16},
		Detail: &listdetail.Story{Stop: "says", Says: l.Story}, Arrange: listdetail.Under(shell.Split{Left: 66}),
		Acts: shell.ActsOf(f.Language, l, f.Say("What falls due"), dueActs),
		Hint: func() string {
			return f.Say("What has passed stands first. Ctrl+K goes to where it is dealt with, Ctrl+T looks further ahead.")
		},
	})}
}

// dueActs are the commands of the list.
var dueActs = []shell.ActRow[*List]{
	{ID: "due.open", Title: "Go there", Key: widgets.Ctrl(fyne.KeyK), When: (*List).HasChosen, Why: "Nothing falls due.", Do: (*List).Open},
	{ID: "due.further", Title: "Further ahead", Key: widgets.Ctrl(fyne.KeyT), Do: (*List).Further},
}
