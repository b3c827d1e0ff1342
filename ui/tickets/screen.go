package tickets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paperview"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// Screen is the list of all tickets under one line to find them by, with
// the paper of the chosen one beside it.
type Screen struct {
	window  *shell.Window
	Tickets *Tickets

	Line     *widgets.FieldEntry
	counted  *shell.Label
	reading  *widgets.Note
	table    *widgets.Table
	headline *widgets.Note
	Paper    *paperview.SlipView
	ring     *widgets.FocusOrder
}

func NewScreen(f *session.Session) shell.Screen {
	return &Screen{Tickets: NewTickets(f)}
}

// ticketSheet is the least width of the slip beside the list, in figures.
const ticketSheet = 36

// ticketColumns are the columns in the order of the presenter's cells.
func ticketColumns(unit string) []widgets.Column {
	grower := shell.WordsColumn(session.Say("Grower"), 12)
	grower.Grow, grower.Wish = true, 18
	grain := shell.WordsColumn(session.Say("Grain"), 8)
	grain.Wish, grain.Spare = 20, 2
	state := shell.WordsColumn(session.Say("State"), 11)
	state.State, state.Wish = true, 13
	return []widgets.Column{
		shell.FiguresColumn(session.Say("Ticket"), 5), shell.WordsColumn(session.Say("Day"), 5), shell.Spare(shell.WordsColumn(session.Say("Time"), 5), 7), grower,
		grain, shell.Spare(shell.WordsColumn(session.Say("Truck"), 4), 6), shell.Spare(shell.FiguresColumn(session.Say("Net %s", unit), 6), 3),
		shell.Spare(shell.FiguresColumn(session.Say("Moist"), 4), 5), shell.Spare(shell.FiguresColumn(session.Say("Bushels"), 8), 1), shell.Spare(shell.FiguresColumn(session.Say("Payable $"), 8), 4), state,
	}
}

// Build makes the screen's widgets.
func (s *Screen) Build(w *shell.Window) fyne.CanvasObject {
	s.window = w
	s.buildLine()
	s.buildTable()
	s.headline, s.Paper = widgets.NewNote(), paperview.NewSlipView()
	s.headline.Lines = 2
	s.ring = widgets.NewFocusOrder(w.Stage)
	s.ring.OnEscape = s.escape
	s.ring.Add("line", s.Line)
	s.ring.Add("table", s.table)
	s.ring.Add("paper", s.Paper)
	buttons := shell.ButtonRow(w, s.ring, ticketButtons)
	list := container.NewBorder(s.head(), nil, nil, nil, s.table)
	sheet := container.NewBorder(s.headline, nil, nil, nil, s.Paper)
	return container.NewBorder(nil, buttons, nil, nil, container.New(shell.ListAndSheet{Figures: ticketSheet}, list, sheet))
}

// head is the line to find by, and beneath it how it was understood.
func (s *Screen) head() fyne.CanvasObject {
	read := container.New(shell.BeforeCount{Figures: 25}, s.reading, s.counted)
	return container.NewVBox(shell.Titled(session.Say("Tickets"), s.Line), read)
}

func (s *Screen) buildLine() {
	s.counted, s.reading = shell.NewLabel("", shell.AtRight), widgets.NewNote()
	s.Line = widgets.NewFieldEntry()
	s.Line.OnEdit = s.Tickets.Type
	s.Line.OnDown = func() { s.ring.Focus("table") }
	s.Line.OnCommit = func(string) string { return "table" }
}

func (s *Screen) buildTable() {
	s.table = widgets.NewTable(ticketColumns(""))
	s.table.Small = true
	s.table.OnChoose = func(_ int, key string) { s.Tickets.Choose(key); s.Refresh(); s.window.Commands.Refresh() }
	s.table.OnOpen = func(int, string) { s.ring.Focus("paper") }
	s.table.OnLetter = func(letter rune) {
		s.ring.Focus("line")
		s.Line.TypedRune(letter)
	}
}

// ticketButtons are the acts under the list, in their order.
var ticketButtons = []string{"tickets.print", "tickets.working", "tickets.difference", "tickets.correct", "tickets.void", "tickets.reissue", "tickets.code"}

// Acts are what can be done with a ticket.
func (s *Screen) Acts() []shell.Act {
	group := session.Say("Tickets")
	t := s.Tickets
	turn := func(to PaperOf) func() { return func() { t.Turn(to); s.Refresh() } }
	noTicket := func() string { return session.Say("There is no ticket in hand.") }
	return []shell.Act{
		{Everywhere: true, Command: widgets.Command{
			ID: "tickets.find", Title: session.Say("Find a ticket"), Group: group, Icon: apptheme.IconFind, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyF)},
			Do: s.find,
		}},
		{Command: widgets.Command{
			ID: "tickets.print", Title: session.Say("Print again"), Group: group, Icon: apptheme.IconPrint, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyP)},
			EnabledWhen: t.CanReprint, WhyNot: noTicket, Do: t.Reprint,
		}},
		{Command: widgets.Command{
			ID: "tickets.working", Title: session.Say("Working"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyW)},
			EnabledWhen: func() bool { return t.Load() != nil }, WhyNot: noTicket, Do: turn(WorkingPaper),
		}},
		{Command: widgets.Command{
			ID: "tickets.difference", Title: session.Say("What changed"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyI)},
			EnabledWhen: t.HasDifference,
			WhyNot:      func() string { return session.Say("This ticket is in no other's place, and no other in its.") },
			Do:          turn(DifferencePaper),
		}},
		{Command: widgets.Command{
			ID: "tickets.correct", Title: session.Say("Correct"), Group: group, Break: true, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyE)},
			EnabledWhen: t.CanChange, WhyNot: t.WhyNotChange, Do: t.Correct,
		}},
		{Command: widgets.Command{
			ID: "tickets.void", Title: session.Say("Void"), Group: group, Keys: []widgets.Key{widgets.CtrlShift(fyne.KeyV)},
			EnabledWhen: t.CanChange, WhyNot: t.WhyNotChange, Do: t.Void,
		}},
		{Command: widgets.Command{
			ID: "tickets.reissue", Title: session.Say("Reissue"), Group: group, Keys: []widgets.Key{widgets.CtrlShift(fyne.KeyR)},
			EnabledWhen: t.CanReissue, WhyNot: t.WhyNotReissue, Do: t.Reissue,
		}},
		{Command: widgets.Command{
			ID: "tickets.code", Title: session.Say("Check a code"), Group: group, Break: true, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyK)},
			Do: t.CheckCode,
		}},
	}
}

// find brings the list to the front with an empty line.
func (s *Screen) find() {
	s.Tickets.Clear()
	s.window.Go("tickets")
}

// escape empties the line first; an empty one leaves the screen.
func (s *Screen) escape() bool {
	if !s.Tickets.Clear() {
		return false
	}
	s.ring.Focus("line")
	s.Refresh()
	return true
}

// Show reads the list anew and puts the keyboard in the line.
func (s *Screen) Show() {
	s.Tickets.Reload()
	s.ring.Focus("line")
	s.Line.SelectAll()
}

// Refresh shows the list and the paper as they now are.
func (s *Screen) Refresh() {
	t := s.Tickets
	s.Line.SetText(t.Line())
	s.counted.Say(t.Counted())
	s.reading.Say(model.Plain, t.Reading())
	s.table.Empty = t.Empty()
	s.table.SetColumns(ticketColumns(t.Unit()))
	s.table.SetRows(t.Rows())
	if s.table.ChosenKey() != t.Chosen() {
		s.table.SetChosen(t.Chosen())
	}
	h := t.Headline()
	s.headline.Say(h.State, h.Text)
	if pages, card := t.Paper(); pages != nil {
		s.Paper.SetPages(*pages)
	} else {
		s.Paper.SetLines(card)
	}
	shell.SetVisible(s.Paper, t.Load() != nil)
}

// Ring is the order of the keyboard: the line, the list, the slip, the acts.
func (s *Screen) Ring() *widgets.FocusOrder { return s.ring }

// Hint says what keys carry the work.
func (s *Screen) Hint() string {
	return session.Say("Type to narrow the list, Down goes into it, Enter to the slip. F1 tells what can be typed.")
}
