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
	return listdetail.New(listdetail.Spec{
		Title: f.Say("Retained samples"), List: s, Read: s.Refresh,
		Head: listdetail.Head{Counted: s.Counted, Figures: 25}, Arrange: listdetail.Alone,
		Acts: shell.ActsOf(f.Language, s, f.Say("Samples"), sampleActs),
		Hint: func() string {
			return f.Say("F12 writes down that a sample was thrown out. One that a dispute needs stays. Escape goes back.")
		},
	})
}

// sampleActs are the actions of a retained sample.
var sampleActs = []shell.ActRow[*Samples]{
	{ID: "samples.discard", Title: "Throw it out", Key: widgets.Bare(fyne.KeyF12), When: (*Samples).CanDiscard, WhyNot: (*Samples).WhyNotDiscard, Do: (*Samples).Discard},
	{ID: "samples.label", Title: "Print its label", Icon: apptheme.IconPrint, Key: widgets.Ctrl(fyne.KeyP), When: (*Samples).HasSample, Why: "No sample is chosen.", Do: (*Samples).PrintLabel},
}
