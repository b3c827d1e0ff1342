package sheets

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/listdetail"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// PaymentsScreen is the list of settlement sheets, with the chosen one beside it.
type PaymentsScreen struct {
	*listdetail.Screen
	Payments *Payments
	Sheet    *listdetail.Paper
}

// sheetFigures is the least width of a sheet beside the list.
const sheetFigures = 44

// NewPaymentsScreen makes the screen of a session.
func NewPaymentsScreen(f *session.Session) shell.Screen {
	p := NewPayments(f)
	s := &PaymentsScreen{Payments: p, Sheet: &listdetail.Paper{Stop: "sheet", Pages: p.Pages, Lines: none, Shown: p.HasChosen, Headline: p.Headline}}
	s.Screen = listdetail.New(listdetail.Spec{
		Title: f.Say("Payments"), List: p, Small: true, Reload: p.Reload,
		Filter: p, Head: listdetail.Head{Tip: f.Say("A number, a grower, or open, paid, void."), Counted: p.Counted, Figures: 24},
		Detail: s.Sheet, Arrange: listdetail.Beside(listdetail.Sheet{Figures: sheetFigures}),
		Acts: shell.ActsOf(f.Language, p, f.Say("Payments"), paymentActs), Buttons: []string{"go.settle"},
		Hint: func() string {
			return f.Say("Down goes through the sheets, Enter to the sheet. F12 records a payment, Ctrl+P prints the sheet.")
		},
	})
	return s
}

// none are the lines of a sheet that could not be worked out.
func none() []model.CardLine { return nil }

// paymentActs are the commands of sheets and payments.
var paymentActs = []shell.ActRow[*Payments]{
	{ID: "payments.pay", Title: "Record a payment", Key: widgets.Bare(fyne.KeyF12), When: (*Payments).CanPay, Why: "Nothing is open on the chosen sheet.", Do: (*Payments).Pay},
	{ID: "payments.print", Title: "Print sheet", Icon: apptheme.IconPrint, Key: widgets.Ctrl(fyne.KeyP), When: (*Payments).HasChosen, Why: noSheet, Do: (*Payments).PrintSheet},
	{ID: "payments.stub", Title: "Print payment", Icon: apptheme.IconPrint, Key: widgets.Ctrl(fyne.KeyT), When: (*Payments).HasPayment, Why: noPayment, Do: (*Payments).PrintStub},
	{ID: "payments.remit", Title: "Levies", Key: widgets.Ctrl(fyne.KeyR), Do: (*Payments).Remit},
	{ID: "payments.handOn", Title: "Hand a levy on", Key: widgets.CtrlShift(fyne.KeyO), Do: handOn, MenuOnly: true},
	{ID: "payments.takeBack", Title: "Take a handover back", Key: widgets.CtrlShift(fyne.KeyL), Do: takeBack, Destroys: true, MenuOnly: true},
	{ID: "payments.totals", Title: "Totals", Key: widgets.Ctrl(fyne.KeyO), Do: (*Payments).Totals},
	{ID: "payments.again", Title: "Settle again", Key: widgets.Ctrl(fyne.KeyE), When: (*Payments).CanSettleAgain, Why: "The chosen sheet is in force. Void it first.", Do: (*Payments).SettleAgain, MenuOnly: true},
	{ID: "payments.voidPayment", Title: "Void a payment", Key: widgets.CtrlShift(fyne.KeyU), When: (*Payments).HasPayment, Why: noPayment, Do: (*Payments).VoidPayment, Destroys: true, MenuOnly: true, Break: true},
	{ID: "payments.void", Title: "Void the sheet", Key: widgets.CtrlShift(fyne.KeyV), When: (*Payments).CanVoid, Why: "No sheet in force is chosen.", Do: (*Payments).Void, Destroys: true, MenuOnly: true},
}

const (
	noSheet   = "No sheet is chosen."
	noPayment = "Nothing is paid on the chosen sheet."
)
