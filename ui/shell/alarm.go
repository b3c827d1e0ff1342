package shell

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/widgets"
	"tenthpoint/ui/widgets/status"
)

// alarm is the red bar over every screen while the book keeps nothing of what is entered. It stays
// until the cause has gone: a sentence on the status line is soon followed by another.
type alarm struct {
	window *Window
	Bar    *fyne.Container
	Save   *widgets.Button
	note   *status.Text
}

func newAlarm(w *Window) *alarm {
	a := &alarm{window: w, note: status.NewText()}
	a.note.Lines = 2
	a.Save = widgets.NewButton(w.Session.Say("Save a copy"), a.saveCopy)
	a.Save.Importance = widget.DangerImportance
	a.Bar = container.NewStack(NewGround(apptheme.ColorStopGround), container.New(Margin{}, container.NewBorder(nil, nil, nil, container.NewCenter(a.Save), a.note)))
	a.Bar.Hide()
	return a
}

// Text is the text of the bar; empty while it is hidden.
func (a *alarm) Text() string { return a.note.Text() }

// alarmPause is the time between two looks at the book's file.
const alarmPause = time.Second

// Watch shows the bar while the book is in trouble.
func (a *alarm) Watch() {
	said := begun(session.Trouble(a.window.Session))
	if said == a.Text() {
		return
	}
	a.note.Say(model.Stop, said)
	SetVisible(a.Bar, said != "")
	a.window.Window.Content().Refresh()
}

// saveCopy asks where a copy of the open book is to be saved.
func (a *alarm) saveCopy() {
	a.window.Go("gear")
	a.window.Commands.Run("gear.backup")
}
