package sheets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/internal/entry/settling"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paperview"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
	"tenthpoint/ui/widgets/status"
)

// SettleScreen is the screen on which tickets are settled: the form over the tickets that are left,
// and beside them the sheet as it will print.
type SettleScreen struct {
	window *shell.Window
	Settle *Settle
	Form   *shell.FieldForm
	List   *widgets.Table
	Paper  *paperview.SlipView

	figures []*widgets.Figure
	remark  *status.Text
	pane    *shell.FormAndPaper
	content *fyne.Container
	toggle  *widgets.Button
}

// NewSettleScreen makes the screen of a session.
func NewSettleScreen(f *session.Session) shell.Screen {
	return &SettleScreen{Settle: NewSettle(f)}
}

// Acts are the commands of the tickets and the sheet.
func (s *SettleScreen) Acts() []shell.Act {
	f := s.Settle.session
	return shell.ActsOf(f.Language, s, f.Say("Settle"), settleActs)
}

var settleActs = []shell.ActRow[*SettleScreen]{
	{ID: "settle.issue", Title: "Issue and print", Icon: apptheme.IconPrint, Key: widgets.Bare(fyne.KeyF12),
		When: func(s *SettleScreen) bool { return s.Settle.CanIssue() }, WhyNot: func(s *SettleScreen) string { return s.Settle.WhyNotIssue() },
		Do: func(s *SettleScreen) { s.Settle.Issue(); s.Show() }},
	{ID: "settle.choose", Title: "Choose", Key: widgets.Ctrl(fyne.KeyK), When: hasTicket, Why: noTicket, Do: func(s *SettleScreen) { s.Settle.Toggle(); s.show(false) }},
	{ID: "settle.all", Title: "All", Key: widgets.Ctrl(fyne.KeyE), When: hasTicket, Why: noTicket, Do: func(s *SettleScreen) { s.Settle.ToggleAll(); s.show(false) }},
	{ID: "settle.part", Title: "A part", Key: widgets.Ctrl(fyne.KeyT), When: hasTicket, Why: noTicket, Do: func(s *SettleScreen) { s.Settle.AskPart() }},
	{ID: "settle.posted", Title: "Posted price", Key: widgets.Ctrl(fyne.KeyU), When: hasTicket, Why: noTicket, Do: func(s *SettleScreen) { s.Settle.TakePosted(); s.show(true) }},
	{ID: "settle.turn", Title: "Form or sheet", Key: widgets.Ctrl(fyne.KeyW), Do: (*SettleScreen).turn},
}

func hasTicket(s *SettleScreen) bool { return s.Settle.HasTicket() }

const noTicket = "No ticket is left. Name a grower who has one."

// Build makes the screen's widgets.
func (s *SettleScreen) Build(w *shell.Window) fyne.CanvasObject {
	s.window = w
	s.Settle.Reload()
	s.Paper, s.remark = paperview.NewSlipView(), status.NewText()
	s.remark.Lines = 3
	s.buildList()
	c := w.Commands
	issue := c.Button("settle.issue")
	issue.Importance = shell.HighImportance
	s.toggle = c.Button("settle.turn")
	s.Form = shell.NewFieldForm(w, s.Settle, s.showDraft)
	s.Form.Columns, s.Form.Leave = inColumns, s.left
	s.Form.AddLast(ticketsText, s.List)
	s.Form.AddLast("issue", issue)
	s.Form.AddLast("sheet", s.Paper)
	s.pane = &shell.FormAndPaper{
		Fields: s.Form.Sheet, Form: container.New(overTickets{s.Form.Sheet}, container.NewVScroll(container.New(shell.Slim(), s.Form.Sheet.Content)), s.List),
		Paper: s.Paper, Share: sheetShare, Most: shell.MostPaper, Head: s.head(),
		Buttons:  container.New(&shell.Endings{Rows: []int{4, 2}}, issue, c.Button("settle.choose"), c.Button("settle.all"), c.Button("settle.part"), s.toggle, c.Button("settle.posted"), c.Button("go.payments")),
		OnNarrow: s.nameToggle,
	}
	s.content = container.New(s.pane, s.pane.Objects()...)
	s.Form.Sheet.Hint = w.ShowHint
	s.Form.Grown, s.Form.ToForm = s.content.Refresh, s.toForm
	s.show(true)
	return s.content
}

// sheetShare is the sheet's part of the width, in percent.
const sheetShare = 46

func (s *SettleScreen) buildList() {
	s.List = widgets.NewTable(s.Settle.Columns())
	s.List.Small = true
	s.List.OnChoose = func(_ int, key string) { s.Settle.Choose(key); s.show(false) }
	s.List.OnOpen = func(int, string) { s.Settle.Toggle(); s.show(false) }
	s.List.OnLetter = func(letter rune) {
		if letter == ' ' {
			s.Settle.Toggle()
			s.show(false)
			return
		}
		s.Form.Focus(settling.Price)
		s.Form.Rows[settling.Price].Entry.TypedRune(letter)
	}
}

// head is the large figures, with what is still to be done.
func (s *SettleScreen) head() fyne.CanvasObject {
	row := container.New(shell.Fitting{})
	for i, f := range s.Settle.Now.Figures {
		figure := widgets.NewFigure(f.Caption, f.Unit)
		figure.Chars = figureChars[i]
		s.figures = append(s.figures, figure)
		row.Add(figure)
	}
	row.Add(s.remark)
	return container.NewStack(shell.NewGround(apptheme.ColorPanel), container.New(shell.Slim(), row))
}

// figureChars is the room for quantity, net value and payable, in figures.
var figureChars = []int{9, 10, 10}

// inColumns sets who, price and terms at the left, and what is seldom typed at the right.
func inColumns(fields []model.Field, rows map[string]*shell.FormRow) (left, right []fyne.CanvasObject) {
	for _, f := range fields {
		switch f.ID {
		case settling.Grower, settling.Price, settling.Contract, settling.Sale, settling.Levies, managerField:
			left = append(left, rows[f.ID])
		default:
			right = append(right, rows[f.ID])
		}
	}
	return left, right
}

// left passes on letters that name nothing on a list, so that they are told to be wrong.
func (s *SettleScreen) left(id, text string, unfound bool) {
	if unfound && text != "" {
		s.Form.Typed(id, text)
	}
}

// Show moves the focus to where work begins: the grower, or with one named the tickets.
func (s *SettleScreen) Show() {
	s.Settle.Reload()
	s.show(true)
	if s.Settle.HasTicket() {
		s.Form.FocusOrder.Focus(ticketsText)
		return
	}
	s.Form.Focus(settling.Grower)
}

// Refresh shows the facts as they now are.
func (s *SettleScreen) Refresh() { s.show(false) }

// show updates every row; all sets the texts of all entries too.
func (s *SettleScreen) show(all bool) { s.Form.Show(all) }

// showDraft follows every keystroke: tickets, figures, sheet.
func (s *SettleScreen) showDraft() {
	now := s.Settle.Now
	for i, f := range now.Figures {
		s.figures[i].SetCaption(f.Caption, f.Unit)
		s.figures[i].Set(model.Plain, f.Value)
	}
	s.remark.Say(now.Remark.State, now.Remark.Text)
	s.List.Empty = s.Settle.Empty()
	s.List.SetColumns(s.Settle.Columns())
	s.List.SetRows(s.Settle.Rows())
	if s.List.ChosenKey() != s.Settle.Chosen() {
		s.List.SetChosen(s.Settle.Chosen())
	}
	if now.Paper != nil {
		s.Paper.SetPages(*now.Paper)
	} else {
		s.Paper.SetLines(nil)
	}
	s.window.Commands.Refresh()
}

// turn brings the sheet to the front, or the form, where only one of them has room.
func (s *SettleScreen) turn() {
	if !s.pane.Narrow {
		s.Form.FocusOrder.Focus("sheet")
		return
	}
	s.pane.Turned = !s.pane.Turned
	s.turned()
	if s.pane.Turned {
		s.Form.FocusOrder.Focus("sheet")
	} else {
		s.Form.FocusOrder.Focus(ticketsText)
	}
}

// toForm brings the form to the front, and reports whether that changed anything.
func (s *SettleScreen) toForm() bool {
	if !s.pane.ToForm() {
		return false
	}
	s.turned()
	return true
}

func (s *SettleScreen) turned() {
	s.content.Refresh()
	s.nameToggle()
}

// nameToggle labels the button with the part it brings to the front.
func (s *SettleScreen) nameToggle() {
	f := s.Settle.session
	if s.pane.Narrow && s.pane.Turned {
		s.toggle.SetText(f.Say("Form"))
		return
	}
	s.toggle.SetText(f.Say("Sheet"))
}

// Hint returns the main keys of the screen.
func (s *SettleScreen) Hint() string {
	return s.Settle.session.Say("Space chooses a ticket, figures go to the price, F12 issues the sheet and prints it.")
}

// FocusOrder returns the tab order: the fields, the tickets, the sheet.
func (s *SettleScreen) FocusOrder() *widgets.FocusOrder { return s.Form.FocusOrder }

// overTickets sets the form over the list of tickets: the form as wide apart as leaves room for some
// of them.
type overTickets struct{ form *shell.FieldSheet }

func (l overTickets) MinSize(objects []fyne.CanvasObject) fyne.Size {
	list := objects[1].MinSize()
	return fyne.NewSize(max(l.form.MinSize(nil).Width, list.Width), l.form.MinSize(nil).Height/2+list.Height)
}

// Layout gives the form what it needs in the widest setting that leaves the list its least height.
func (l overTickets) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	list := objects[1].MinSize().Height
	high := l.form.Height(shell.Airy) + 2*shell.SlimGap
	for _, set := range []shell.Setting{shell.Airy, shell.Snug, shell.Lean} {
		if high = l.form.Height(set) + 2*shell.SlimGap; high+ticketsShare*list <= size.Height {
			break
		}
	}
	high = min(high, size.Height-list)
	shell.Put(objects[0], 0, 0, size.Width, high)
	shell.Put(objects[1], 0, high, size.Width, size.Height-high)
}

// ticketsShare is the share of the list of tickets, in multiples of its least height.
const ticketsShare = 2
