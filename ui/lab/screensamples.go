package lab

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/listdetail"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// NewSamplesScreen makes the list of retained samples.
func NewSamplesScreen(f *session.Session) shell.Screen {
	s := NewSamples(f)
	none := func() string { return session.Say("No sample is chosen.") }
	return listdetail.New(listdetail.Spec{
		Title: session.Say("Retained samples"), List: s, Read: s.Refresh,
		Head: listdetail.Head{Counted: s.Counted, Figures: 25}, Arrange: listdetail.Alone,
		Group: session.Say("Samples"), Acts: []shell.ActRow{
			{ID: "samples.discard", Title: session.Say("Throw it out"), Key: widgets.Bare(fyne.KeyF12), When: s.CanDiscard, WhyNot: s.WhyNotDiscard, Do: s.Discard},
			{ID: "samples.label", Title: session.Say("Print its label"), Key: widgets.Ctrl(fyne.KeyP), Icon: apptheme.IconPrint, When: s.HasSample, WhyNot: none, Do: s.PrintLabel},
		},
		Hint: func() string {
			return session.Say("F12 writes down that a sample was thrown out. One that a dispute needs stays. Escape goes back.")
		},
	})
}
