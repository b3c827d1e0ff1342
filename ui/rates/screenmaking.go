package rates

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/charts"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paperview"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
	"tenthpoint/ui/widgets/status"
)

// MakingScreen is the figures of an edition at the left, with a field for the chosen one, and at the
// right what they take and what is wrong with them.
type MakingScreen struct {
	window *shell.Window
	making *Making

	headline   *status.Text
	table      *widgets.Table
	value      *widgets.Autocomplete
	field      *widgets.Field
	curves     []*charts.Curves
	beside     *paperview.SlipView
	focusOrder *widgets.FocusOrder
}

// NewMakingScreen makes the screen of a session.
func NewMakingScreen(f *session.Session) shell.Screen { return &MakingScreen{making: NewMaking(f)} }

var makingActs = []shell.ActRow[*MakingScreen]{
	{ID: "making.save", Title: "Make it ours", Key: widgets.Bare(fyne.KeyF12), When: func(s *MakingScreen) bool { return s.making.CanSave() }, WhyNot: func(s *MakingScreen) string { return s.making.WhyNotSave() }, Do: func(s *MakingScreen) { s.making.AskSave() }},
	{ID: "making.row", Title: "Add a row", Key: widgets.Ctrl(fyne.KeyE), When: inRow, Why: "Choose a figure in a row of a table first.", Do: func(s *MakingScreen) { s.making.AddRow(); s.show() }},
	{ID: "making.norow", Title: "Remove the row", Key: widgets.Ctrl(fyne.KeyR), When: inRow, Why: "Choose a figure in a row of a table first.", Do: func(s *MakingScreen) { s.making.RemoveRow(); s.show() }, Destroys: true},
}

func inRow(s *MakingScreen) bool { return s.making.CanChangeRows() }

// Acts are the actions on the edition being made.
func (s *MakingScreen) Acts() []shell.Act {
	return shell.ActsOf(s.making.session.Language, s, s.making.session.Say("Own rates"), makingActs)
}

// Build makes the screen's widgets.
func (s *MakingScreen) Build(w *shell.Window) fyne.CanvasObject {
	s.window = w
	s.focusOrder = widgets.NewFocusOrder(w.UI)
	s.headline = status.NewText()
	s.headline.Lines = 2
	s.table = widgets.NewTable(s.making.Columns())
	s.table.Small, s.table.Empty = true, s.making.Empty()
	s.table.OnChoose = func(_ int, key string) { s.making.Choose(key); s.showField() }
	s.table.OnOpen = func(int, string) { s.focusOrder.Focus("value") }
	s.value = widgets.NewAutocomplete(nil)
	s.value.FreeText = true
	s.value.OnCommit = s.typed
	s.field = widgets.NewField(s.making.session.Say("Value"), "", s.value)
	s.field.Chars = 18
	s.beside = paperview.NewSlipView()
	right := []fyne.CanvasObject{}
	for range 2 {
		c := charts.NewCurves()
		s.curves = append(s.curves, c)
		right = append(right, c)
	}
	s.focusOrder.Add("list", s.table)
	s.focusOrder.Add("value", s.value)
	s.focusOrder.Name("value", s.making.session.Say("Value"))
	s.focusOrder.Add("beside", s.beside)
	buttons := shell.ButtonRow(w, s.focusOrder, shell.ButtonsOf(s.Acts()))
	left := container.NewBorder(nil, s.field, nil, nil, s.table)
	pictures := container.NewGridWithRows(3, append(right, s.beside)...)
	head := shell.Titled(w.Session.Say("Own rates"), s.headline)
	return container.NewBorder(head, buttons, nil, nil, container.NewGridWithColumns(2, left, container.New(shell.Margin{}, pictures)))
}

// typed takes a value and goes on to the next figure.
func (s *MakingScreen) typed(text string) string {
	s.making.Type(text)
	if s.making.Field().State == model.Stop {
		s.show()
		return "value"
	}
	s.making.Next()
	s.show()
	return "value"
}

// Show moves the keyboard to the list.
func (s *MakingScreen) Show() { s.focusOrder.Focus("list") }

// Hint returns the main keys of the screen.
func (s *MakingScreen) Hint() string {
	return s.making.session.Say("Up and Down choose a figure, Enter changes it and goes to the next. Ctrl+E adds a row, F12 makes the edition the house's own.")
}

// FocusOrder returns the tab order.
func (s *MakingScreen) FocusOrder() *widgets.FocusOrder { return s.focusOrder }

// Refresh shows the edition being made.
func (s *MakingScreen) Refresh() {
	s.making.Refresh()
	s.show()
}

func (s *MakingScreen) show() {
	h := s.making.Headline()
	s.headline.Say(h.State, h.Text)
	s.table.SetRows(s.making.Rows())
	s.table.SetChosen(s.making.Chosen())
	s.showField()
	for i, c := range s.making.Curves() {
		s.curves[i].Set(c)
	}
	s.beside.SetLines(s.making.Beside())
	s.window.Commands.Refresh()
}

func (s *MakingScreen) showField() {
	f := s.making.Field()
	s.value.SetChosen("")
	s.value.SetChosen(f.Value)
	s.field.SetNote(f.State, f.Note)
	s.window.Commands.Refresh()
}
