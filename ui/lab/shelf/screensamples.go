package shelf

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/listdetail"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// NewScreen makes the list of retained samples.
func NewScreen(f *session.Session) shell.Screen {
	s := NewSamples(f)
	return listdetail.New(listdetail.Spec{
		Title: f.Say("Retained samples"), List: s, Read: s.Refresh,
		Head: listdetail.Head{Counted: s.Counted, Figures: 25}, Arrange: listdetail.Alone,
		Acts: shell.ActsOf(f.Language, s, f.Say("Samples"), sampleActs),
		Hint: func() string {
			return f.Say("F12 discards a sample, Ctrl+K all that are due. One that a dispute needs stays. Escape goes back.")
		},
	})
}

// sampleActs are the actions of a retained sample.
var sampleActs = []shell.ActRow[*Samples]{
	{ID: "samples.discard", Title: "Discard it", Destroys: true, Key: widgets.Bare(fyne.KeyF12), When: (*Samples).CanDiscard, WhyNot: (*Samples).WhyNotDiscard, Do: (*Samples).Discard},
	{ID: "samples.clear", Title: "Clear the shelf", Destroys: true, Key: widgets.Ctrl(fyne.KeyK), When: (*Samples).CanClear, Why: "No sample is due to be discarded today.", Do: (*Samples).Clear},
	{ID: "samples.label", Title: "Print its label", Icon: apptheme.IconPrint, Key: widgets.Ctrl(fyne.KeyP), When: (*Samples).HasSample, Why: "No sample is chosen.", Do: (*Samples).PrintLabel},
}
