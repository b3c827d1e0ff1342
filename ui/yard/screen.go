package yard

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// Screen is the screen that receives trucks: the form of the current load, and beside it the slip
// as it will print.
type Screen struct {
	window  *shell.Window
	Yard    *Yard
	Load    *loadView
	Papers  *papers
	Figures *figureHead
	Fields  *fieldPane
	Pane    *shell.FormAndPaper
	content *fyne.Container
	shown   *LoadForm // the form that the entries hold

	issueButton, Toggle, stored, refuse, withdraw *widgets.Button
}

// NewScreen makes the screen with the yard as it was before the program stopped.
func NewScreen(f *session.Session) shell.Screen { return &Screen{Yard: NewYard(f)} }

// Trucks, Here and Advice are the sidebar's texts about the yard.
func (s *Screen) Trucks() []model.TruckRow { return s.Yard.Rows() }
func (s *Screen) Here() string             { return s.Yard.Here() }
func (s *Screen) Advice() string           { return s.Yard.Advice() }

// WatchScale ends a wait for the scale that is in vain, EndWait any wait.
func (s *Screen) WatchScale() { s.Yard.Scale.Watch() }
func (s *Screen) EndWait()    { s.Yard.Scale.End() }

// Form is the current form.
func (s *Screen) Form() *LoadForm { return s.Yard.Form() }

// Build makes the screen's widgets.
func (s *Screen) Build(w *shell.Window) fyne.CanvasObject {
	s.window, s.Papers = w, newPapers()
	s.issueButton, s.Toggle = w.Commands.Button("load.issue"), w.Commands.Button("load.working")
	s.issueButton.Importance = shell.HighImportance
	s.Load = newLoadView(w, s.Yard, s.showLoad, s.reveal)
	s.Load.AddLast("issue", s.issueButton)
	s.Load.AddLast("slip", s.Papers.Slip)
	s.Fields, s.Figures = newFieldPane(s.Load.Sheet), newFigureHead(s.Load.now)
	s.Pane = &shell.FormAndPaper{
		Fields: s.Load.Sheet, Form: s.Fields.all, Paper: s.Papers.Slip, Second: s.Papers.beside, Share: paperShare, Most: shell.MostPaper,
		Head: s.Figures.all, Buttons: s.buttons(), OnNarrow: s.nameToggle,
	}
	s.content = container.New(s.Pane, s.Pane.Objects()...)
	s.Load.Sheet.Hint = s.window.ShowHint
	s.Load.Grown, s.Load.ToForm = s.content.Refresh, s.toForm
	s.Load.Show(true)
	return s.content
}

// paperShare is the slip's part of the width, in percent.
const paperShare = 40

// buttons are the acts that end a load, under the slip.
func (s *Screen) buttons() *fyne.Container {
	c := s.window.Commands
	s.stored = c.Button("load.tare")
	s.refuse, s.withdraw = c.Button("load.refuse"), c.Button("load.withdraw")
	s.withdraw.Hide()
	for _, b := range []*widgets.Button{s.stored, s.Toggle, s.refuse, s.withdraw} {
		b.Key = "" // there is no room for it in large letters
	}
	return container.New(&shell.Endings{Rows: []int{4}}, s.issueButton, s.stored, s.Toggle, s.refuse, s.withdraw)
}

// showButtons shows the stored tare where there is one to use, and for a load that was never weighed
// its withdrawal in the place of a refusal.
func (s *Screen) showButtons(now Preview) {
	if now.CanUseTare == s.stored.Visible() && now.CanWithdraw == s.withdraw.Visible() {
		return
	}
	shell.SetVisible(s.stored, now.CanUseTare)
	shell.SetVisible(s.withdraw, now.CanWithdraw)
	shell.SetVisible(s.refuse, !now.CanWithdraw)
	s.Pane.Buttons.Refresh()
}

// Show moves the focus to the first field still to be filled.
func (s *Screen) Show() { s.Load.focus() }

// Hint returns the main keys of the screen.
func (s *Screen) Hint() string {
	return s.Yard.session.Say("Enter goes on. F12 issues the ticket, Ctrl+N takes the next truck, F1 helps.")
}

// FocusOrder returns the tab order: the fields as the work goes, the ticket,
// the slip.
func (s *Screen) FocusOrder() *widgets.FocusOrder { return s.Load.FocusOrder }

// Refresh shows the current facts. When another load has become current, as after a refusal, the
// focus follows it.
func (s *Screen) Refresh() {
	s.Yard.Refresh()
	other := s.shown != s.Form()
	if other {
		s.Papers.Slip.ToTop()
	}
	s.Load.Show(other)
	if other {
		s.shown = s.Form()
		s.Load.focus()
	}
	s.Load.goOn()
}

// showLoad follows every keystroke: figures, papers, ruler.
func (s *Screen) showLoad() {
	now := s.Load.now
	s.Figures.show(now)
	s.Papers.show(now, s.Pane.Working)
	s.reveal(s.Load.FocusOrder.Current())
	s.Fields.show(now.Ruler)
	s.window.Commands.Refresh()
	s.showButtons(now)
	s.window.Sidebar.ShowTrucks(s.Trucks())
}

// turnPaper shows the working in place of the slip, or the slip again. Where the
// window is narrow, the form is the third in turn.
func (s *Screen) turnPaper() { s.turned(s.Pane.Turn) }

// readSlip shows the slip in large letters, with the form behind it, or both beside each other again.
func (s *Screen) readSlip() { s.turned(s.Pane.Read) }

// turned shows the slip and the form after one of them was brought to the front.
func (s *Screen) turned(turn func()) {
	inTurn := s.Pane.Narrow
	turn()
	s.Papers.Slip.ToTop()
	s.showLoad()
	s.content.Refresh()
	s.nameToggle()
	if s.Pane.Narrow && s.Pane.Turned {
		s.Load.FocusOrder.Focus("slip")
	} else if inTurn {
		s.Load.focus()
	}
}

// toForm brings the form to the front, and reports whether that changed anything.
func (s *Screen) toForm() bool {
	if !s.Pane.ToForm() {
		return false
	}
	s.content.Refresh()
	s.nameToggle()
	return true
}

// nameToggle labels the button with the part it brings to the front.
func (s *Screen) nameToggle() {
	s.Toggle.SetText(s.Pane.Next(s.Yard.session.Language, s.Yard.session.Say("Slip")))
}

// reveal scrolls to the slip's line of the focused field, and where the text is large to the field
// itself.
func (s *Screen) reveal(field string) {
	s.Papers.reveal(field)
	if row := s.Load.Rows[field]; row != nil {
		s.Fields.scrollTo(row)
	}
}

// TakeTruck makes a truck current, whether chosen on the yard or on another screen.
func (s *Screen) TakeTruck(id string) {
	s.Yard.Take(id)
	s.showCurrent()
}

// showCurrent shows the current form and moves the focus to it.
func (s *Screen) showCurrent() {
	if !s.window.IsFront(0) {
		s.window.Go("yard")
	}
	s.Load.Show(true)
	s.shown = s.Form()
	s.Load.focus()
	s.window.Sidebar.Show()
}

// turnTo makes another truck current. The message on the status line was about the
// one before.
func (s *Screen) turnTo(take func()) {
	take()
	s.window.Say(model.Plain, "")
	s.showCurrent()
}
