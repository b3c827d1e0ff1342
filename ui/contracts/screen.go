package contracts

import (
	"fyne.io/fyne/v2"

	"tenthpoint/internal/entry/contracting"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/listdetail"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// Screen is the list of contracts, with the chosen one beside it as it prints.
type Screen struct {
	*listdetail.Screen
	Contracts *Contracts
	Paper     *listdetail.Paper
}

// paperFigures is the least width of the paper beside the list.
const paperFigures = 35

// NewScreen makes the screen of a session.
func NewScreen(f *session.Session) shell.Screen {
	c := NewContracts(f)
	s := &Screen{Contracts: c, Paper: &listdetail.Paper{Stop: "paper", Pages: c.Pages, Lines: func() []model.CardLine { return nil }, Shown: c.HasChosen}}
	s.Screen = listdetail.New(listdetail.Spec{
		Title: f.Say("Contracts"), List: c, Small: true, Reload: c.Reload,
		Filter: c, Head: listdetail.Head{Tip: f.Say("A number, a grower, a type, or not signed."), Counted: c.Counted, Figures: 16},
		Detail: s.Paper, Arrange: listdetail.Beside(listdetail.Sheet{Figures: paperFigures}),
		Acts: shell.ActsOf(f.Language, c, f.Say("Contracts"), contractActs),
		Hint: func() string {
			return f.Say("Down goes through the contracts, Enter to the paper. Ctrl+K writes one down, Ctrl+U prices a part.")
		},
	})
	return s
}

// contractActs are the commands of contracts.
var contractActs = []shell.ActRow[*Contracts]{
	{ID: "contracts.add", Title: "New contract", Key: widgets.Ctrl(fyne.KeyK), Do: (*Contracts).Add},
	{ID: "contracts.sign", Title: "Signed", Key: widgets.Ctrl(fyne.KeyE), When: (*Contracts).CanSign, Why: "No contract that is still to be signed is chosen.", Do: act(contracting.Sign)},
	{ID: "contracts.price", Title: "Price a part", Key: widgets.Ctrl(fyne.KeyU), When: (*Contracts).CanPrice, Why: "Nothing of the chosen contract is priced later.", Do: act(contracting.Price)},
	{ID: "contracts.extend", Title: "Extend", Key: widgets.Ctrl(fyne.KeyT), When: (*Contracts).IsOpen, Why: noOpen, Do: act(contracting.Extend)},
	{ID: "contracts.print", Title: "Print", Icon: apptheme.IconPrint, Key: widgets.Ctrl(fyne.KeyP), When: (*Contracts).HasChosen, Why: "No contract is chosen.", Do: (*Contracts).Print},
	{ID: "contracts.settle", Title: "Settle", Key: widgets.Ctrl(fyne.KeyI), When: (*Contracts).HasChosen, Why: "No contract is chosen.", Do: (*Contracts).Settle},
	{ID: "contracts.roll", Title: "Roll", Key: widgets.Ctrl(fyne.KeyR), When: (*Contracts).CanRoll, Why: "Only basis contracts and those hedged to arrive are rolled.", Do: act(contracting.Roll), MenuOnly: true, Break: true},
	{ID: "contracts.buyOut", Title: "Buy out", Key: widgets.CtrlShift(fyne.KeyU), When: (*Contracts).IsOpen, Why: noOpen, Do: act(contracting.BuyOut), Destroys: true, MenuOnly: true},
	{ID: "contracts.cancel", Title: "Cancel the contract", Key: widgets.CtrlShift(fyne.KeyV), When: (*Contracts).IsOpen, Why: noOpen, Do: act(contracting.Cancel), Destroys: true, MenuOnly: true},
}

const noOpen = "No contract that can change is chosen."

func act(what contracting.Act) func(*Contracts) { return func(c *Contracts) { c.Act(what) } }
