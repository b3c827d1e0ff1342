package view

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/kit"
	"tenthpoint/ui/model"
	"tenthpoint/ui/present"
)

// ticketsScreen is the list of all tickets under one line to find them by, with
// the paper of the chosen one beside it.
type ticketsScreen struct {
	window  *Window
	tickets *present.Tickets

	line     *kit.FieldEntry
	counted  *label
	reading  *kit.Note
	table    *kit.Table
	headline *kit.Note
	paper    *kit.SlipView
	ring     *kit.Ring
}

func newTicketsScreen(f *present.Frame) Screen {
	return &ticketsScreen{tickets: present.NewTickets(f)}
}

// ticketSheet is the least width of the slip beside the list, in figures.
const ticketSheet = 36

// ticketColumns are the columns in the order of the presenter's cells.
func ticketColumns(unit string) []kit.Column {
	grower := wordsColumn(present.Say("Grower"), 12)
	grower.Grow, grower.Wish = true, 18
	grain := wordsColumn(present.Say("Grain"), 8)
	grain.Wish, grain.Spare = 20, 2
	state := wordsColumn(present.Say("State"), 11)
	state.State, state.Wish = true, 13
	return []kit.Column{
		figuresColumn(present.Say("Ticket"), 5), wordsColumn(present.Say("Day"), 5), spare(wordsColumn(present.Say("Time"), 5), 7), grower,
		grain, spare(wordsColumn(present.Say("Truck"), 4), 6), spare(figuresColumn(present.Say("Net %s", unit), 6), 3),
		spare(figuresColumn(present.Say("Moist"), 4), 5), spare(figuresColumn(present.Say("Bushels"), 8), 1), spare(figuresColumn(present.Say("Payable $"), 8), 4), state,
	}
}

// Build makes the screen's widgets.
func (s *ticketsScreen) Build(w *Window) fyne.CanvasObject {
	s.window = w
	s.buildLine()
	s.buildTable()
	s.headline, s.paper = kit.NewNote(), kit.NewSlipView()
	s.headline.Lines = 2
	s.ring = kit.NewRing(w.stage)
	s.ring.OnEscape = s.escape
	s.ring.Add("line", s.line)
	s.ring.Add("table", s.table)
	s.ring.Add("paper", s.paper)
	buttons := buttonRow(w, s.ring, ticketButtons)
	list := container.NewBorder(s.head(), nil, nil, nil, s.table)
	sheet := container.NewBorder(s.headline, nil, nil, nil, s.paper)
	return container.NewBorder(nil, buttons, nil, nil, container.New(listAndSheet{ticketSheet}, list, sheet))
}

// head is the line to find by, and beneath it how it was understood.
func (s *ticketsScreen) head() fyne.CanvasObject {
	read := container.New(beforeCount{figures: 25}, s.reading, s.counted)
	return container.NewVBox(titled(present.Say("Tickets"), s.line), read)
}

func (s *ticketsScreen) buildLine() {
	s.counted, s.reading = newLabel("", atRight), kit.NewNote()
	s.line = kit.NewFieldEntry()
	s.line.OnEdit = s.tickets.Type
	s.line.OnDown = func() { s.ring.Focus("table") }
	s.line.OnCommit = func(string) string { return "table" }
}

func (s *ticketsScreen) buildTable() {
	s.table = kit.NewTable(ticketColumns(""))
	s.table.Small = true
	s.table.OnChoose = func(_ int, key string) { s.tickets.Choose(key); s.Refresh(); s.window.commands.Refresh() }
	s.table.OnOpen = func(int, string) { s.ring.Focus("paper") }
	s.table.OnLetter = func(letter rune) {
		s.ring.Focus("line")
		s.line.TypedRune(letter)
	}
}

// ticketButtons are the acts under the list, in their order.
var ticketButtons = []string{"tickets.print", "tickets.working", "tickets.difference", "tickets.correct", "tickets.void", "tickets.reissue", "tickets.code"}

// Acts are what can be done with a ticket.
func (s *ticketsScreen) Acts() []Act {
	group := present.Say("Tickets")
	t := s.tickets
	turn := func(to present.PaperOf) func() { return func() { t.Turn(to); s.Refresh() } }
	noTicket := func() string { return present.Say("There is no ticket in hand.") }
	return []Act{
		{Everywhere: true, Command: kit.Command{
			ID: "tickets.find", Title: present.Say("Find a ticket"), Group: group, Icon: kit.IconFind, Keys: []kit.Key{kit.Ctrl(fyne.KeyF)},
			Do: s.find,
		}},
		{Command: kit.Command{
			ID: "tickets.print", Title: present.Say("Print again"), Group: group, Icon: kit.IconPrint, Keys: []kit.Key{kit.Ctrl(fyne.KeyP)},
			EnabledWhen: t.CanReprint, WhyNot: noTicket, Do: t.Reprint,
		}},
		{Command: kit.Command{
			ID: "tickets.working", Title: present.Say("Working"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyW)},
			EnabledWhen: func() bool { return t.Load() != nil }, WhyNot: noTicket, Do: turn(present.WorkingPaper),
		}},
		{Command: kit.Command{
			ID: "tickets.difference", Title: present.Say("What changed"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyI)},
			EnabledWhen: t.HasDifference,
			WhyNot:      func() string { return present.Say("This ticket is in no other's place, and no other in its.") },
			Do:          turn(present.DifferencePaper),
		}},
		{Command: kit.Command{
			ID: "tickets.correct", Title: present.Say("Correct"), Group: group, Break: true, Keys: []kit.Key{kit.Ctrl(fyne.KeyE)},
			EnabledWhen: t.CanChange, WhyNot: t.WhyNotChange, Do: t.Correct,
		}},
		{Command: kit.Command{
			ID: "tickets.void", Title: present.Say("Void"), Group: group, Keys: []kit.Key{kit.CtrlShift(fyne.KeyV)},
			EnabledWhen: t.CanChange, WhyNot: t.WhyNotChange, Do: t.Void,
		}},
		{Command: kit.Command{
			ID: "tickets.reissue", Title: present.Say("Reissue"), Group: group, Keys: []kit.Key{kit.CtrlShift(fyne.KeyR)},
			EnabledWhen: t.CanReissue, WhyNot: t.WhyNotReissue, Do: t.Reissue,
		}},
		{Command: kit.Command{
			ID: "tickets.code", Title: present.Say("Check a code"), Group: group, Break: true, Keys: []kit.Key{kit.Ctrl(fyne.KeyK)},
			Do: t.CheckCode,
		}},
	}
}

// find brings the list to the front with an empty line.
func (s *ticketsScreen) find() {
	s.tickets.Clear()
	s.window.Go("tickets")
}

// escape empties the line first; an empty one leaves the screen.
func (s *ticketsScreen) escape() bool {
	if !s.tickets.Clear() {
		return false
	}
	s.ring.Focus("line")
	s.Refresh()
	return true
}

// Show reads the list anew and puts the keyboard in the line.
func (s *ticketsScreen) Show() {
	s.tickets.Reload()
	s.ring.Focus("line")
	s.line.SelectAll()
}

// Refresh shows the list and the paper as they now are.
func (s *ticketsScreen) Refresh() {
	t := s.tickets
	s.line.SetText(t.Line())
	s.counted.say(t.Counted())
	s.reading.Say(model.Plain, t.Reading())
	s.table.Empty = t.Empty()
	s.table.SetColumns(ticketColumns(t.Unit()))
	s.table.SetRows(t.Rows())
	if s.table.ChosenKey() != t.Chosen() {
		s.table.SetChosen(t.Chosen())
	}
	h := t.Headline()
	s.headline.Say(h.State, h.Text)
	s.paper.SetLines(t.Paper())
	setVisible(s.paper, t.Load() != nil)
}

// Ring is the order of the keyboard: the line, the list, the slip, the acts.
func (s *ticketsScreen) Ring() *kit.Ring { return s.ring }

// Hint says what keys carry the work.
func (s *ticketsScreen) Hint() string {
	return present.Say("Type to narrow the list, Down goes into it, Enter to the slip. F1 tells what can be typed.")
}
