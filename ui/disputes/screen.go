package disputes

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/listdetail"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// NewScreen makes the list of doubted tickets with the story of the one chosen.
func NewScreen(f *session.Session) shell.Screen {
	d := NewDisputes(f)
	return listdetail.New(listdetail.Spec{
		Title: session.Say("Disputes"), List: d, Small: true, Read: d.Refresh,
		Detail: &listdetail.Story{Stop: "says", Says: d.Sayings}, Arrange: listdetail.Under(shell.PictureAndSays{}),
		Group: session.Say("Disputes"), Acts: acts(d),
		Hint: func() string {
			return session.Say("Ctrl+E raises a dispute, F12 decides one. Nothing of a dispute is ever deleted. Escape goes back.")
		},
	})
}

// acts are the steps of a dispute.
func acts(d *Disputes) []shell.ActRow {
	may := func(step string) func() bool { return func() bool { return d.May(step) } }
	return []shell.ActRow{
		{ID: "disputes.raise", Title: session.Say("Raise"), Key: widgets.Ctrl(fyne.KeyE), Do: d.Raise},
		{ID: "disputes.sent", Title: session.Say("Sample sent"), Key: widgets.Ctrl(fyne.KeyK), When: may("sent"), WhyNot: d.WhyNot, Do: d.AskSent},
		{ID: "disputes.result", Title: session.Say("Result"), Key: widgets.Ctrl(fyne.KeyO), When: may("result"), WhyNot: d.WhyNot, Do: d.AskResult},
		{ID: "disputes.decide", Title: session.Say("Decide"), Key: widgets.Bare(fyne.KeyF12), When: may("decide"), WhyNot: d.WhyNot, Do: d.AskDecide},
		{ID: "disputes.file", Title: session.Say("Print file"), Key: widgets.Ctrl(fyne.KeyP), Icon: apptheme.IconPrint, When: d.HasDispute, WhyNot: d.WhyNot, Do: d.PrintFile},
		{ID: "disputes.proof", Title: session.Say("Print proof"), Key: widgets.Ctrl(fyne.KeyI), Icon: apptheme.IconPrint, When: d.HasDispute, WhyNot: d.WhyNot, Do: d.PrintProof},
	}
}
