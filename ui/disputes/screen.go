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
		Title: f.Say("Disputes"), List: d, Small: true, Read: d.Refresh,
		Detail: &listdetail.Story{Stop: "says", Says: d.History}, Arrange: listdetail.Under(shell.PictureAndSays),
		Acts: shell.ActsOf(f.Language, d, f.Say("Disputes"), disputeActs),
		Hint: func() string {
			return f.Say("Ctrl+E raises a dispute, F12 decides one. Nothing of a dispute is ever deleted. Escape goes back.")
		},
	})
}

// disputeActs are the steps of a dispute.
var disputeActs = []shell.ActRow[*Disputes]{
	{ID: "disputes.raise", Title: "Raise", Key: widgets.Ctrl(fyne.KeyE), Do: (*Disputes).Raise},
	{ID: "disputes.sent", Title: "Sample sent", Key: widgets.Ctrl(fyne.KeyK), When: (*Disputes).CanSend, WhyNot: (*Disputes).WhyNot, Do: (*Disputes).AskSent},
	{ID: "disputes.result", Title: "Result", Key: widgets.Ctrl(fyne.KeyO), When: (*Disputes).CanResult, WhyNot: (*Disputes).WhyNot, Do: (*Disputes).AskResult},
	{ID: "disputes.decide", Title: "Decide", Key: widgets.Bare(fyne.KeyF12), When: (*Disputes).CanDecide, WhyNot: (*Disputes).WhyNot, Do: (*Disputes).AskDecide},
	{ID: "disputes.file", Title: "Print file", Key: widgets.Ctrl(fyne.KeyP), Icon: apptheme.IconPrint, When: (*Disputes).HasDispute, WhyNot: (*Disputes).WhyNot, Do: (*Disputes).PrintFile},
	{ID: "disputes.proof", Title: "Print proof", Key: widgets.Ctrl(fyne.KeyI), Icon: apptheme.IconPrint, When: (*Disputes).HasDispute, WhyNot: (*Disputes).WhyNot, Do: (*Disputes).PrintProof},
}
