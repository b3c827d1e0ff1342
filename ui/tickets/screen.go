package tickets

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/listdetail"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// Screen is the list of all tickets under one line to find them by, with the
// paper of the chosen one beside it.
type Screen struct {
	*listdetail.Screen
	Tickets *Tickets
	Paper   *listdetail.Paper
}

// sheetFigures is the least width of the paper beside the list.
const sheetFigures = 36

// NewScreen makes the screen of a session.
func NewScreen(f *session.Session) shell.Screen {
	t := NewTickets(f)
	s := &Screen{Tickets: t, Paper: &listdetail.Paper{
		Stop: "paper", Lines: t.Ticket.Paper, Shown: func() bool { return t.Load() != nil }, Headline: t.Ticket.Headline,
	}}
	s.Screen = listdetail.New(listdetail.Spec{
		Title: session.Say("Tickets"), List: t, Small: true, Reload: t.Reload,
		Filter: t, Head: listdetail.Head{Reading: t.Reading, Counted: t.Counted, Figures: 25},
		Detail: s.Paper, Arrange: listdetail.Beside(listdetail.Sheet{Figures: sheetFigures}),
		Group: session.Say("Tickets"), Acts: s.acts(),
		Hint: func() string {
			return session.Say("Type to narrow the list, Down goes into it, Enter to the slip. F1 tells what can be typed.")
		},
	})
	return s
}

// acts are what can be done with a ticket.
func (s *Screen) acts() []shell.ActRow {
	t, one := s.Tickets, s.Tickets.Ticket
	none := func() string { return session.Say("There is no ticket in hand.") }
	noOther := func() string { return session.Say("This ticket is in no other's place, and no other in its.") }
	turn := func(to PaperOf) func() { return func() { one.Turn(to); s.Refresh() } }
	return []shell.ActRow{
		{ID: "tickets.find", Title: session.Say("Find a ticket"), Key: widgets.Ctrl(fyne.KeyF), Icon: apptheme.IconFind, Do: t.Find, MenuOnly: true, Everywhere: true},
		{ID: "tickets.print", Title: session.Say("Print again"), Key: widgets.Ctrl(fyne.KeyP), Icon: apptheme.IconPrint, When: one.CanReprint, WhyNot: none, Do: t.Reprint},
		{ID: "tickets.working", Title: session.Say("Working"), Key: widgets.Ctrl(fyne.KeyW), When: one.IsOpen, WhyNot: none, Do: turn(WorkingPaper)},
		{ID: "tickets.difference", Title: session.Say("What changed"), Key: widgets.Ctrl(fyne.KeyI), When: one.HasDifference, WhyNot: noOther, Do: turn(DifferencePaper)},
		{ID: "tickets.correct", Title: session.Say("Correct"), Key: widgets.Ctrl(fyne.KeyE), When: one.CanChange, WhyNot: one.WhyNotChange, Do: t.Correct, Break: true},
		{ID: "tickets.void", Title: session.Say("Void"), Key: widgets.CtrlShift(fyne.KeyV), When: one.CanChange, WhyNot: one.WhyNotChange, Do: t.Void},
		{ID: "tickets.reissue", Title: session.Say("Reissue"), Key: widgets.CtrlShift(fyne.KeyR), When: one.CanReissue, WhyNot: one.WhyNotReissue, Do: t.Reissue},
		{ID: "tickets.code", Title: session.Say("Check a code"), Key: widgets.Ctrl(fyne.KeyK), Do: t.CheckCode, Break: true},
	}
}
