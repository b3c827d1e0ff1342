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
		Stop: "paper", Pages: t.Ticket.Pages, Lines: t.Ticket.Card, Shown: func() bool { return t.Load() != nil }, Headline: t.Ticket.Headline,
	}}
	s.Screen = listdetail.New(listdetail.Spec{
		Title: f.Say("Tickets"), List: t, Small: true, Reload: t.Reload,
		Filter: t, Head: listdetail.Head{Reading: t.Reading, Counted: t.Counted, Figures: 25},
		Detail: s.Paper, Arrange: listdetail.Beside(listdetail.Sheet{Figures: sheetFigures}),
		Acts: shell.ActsOf(f.Language, s, f.Say("Tickets"), ticketActs),
		Hint: func() string {
			return f.Say("Type to narrow the list, Down goes into it, Enter to the slip. F1 tells what can be typed.")
		},
	})
	return s
}

// ticketActs are the actions of tickets.
var ticketActs = []shell.ActRow[*Screen]{
	{ID: "tickets.find", Title: "Find a ticket", Icon: apptheme.IconFind, Key: widgets.Ctrl(fyne.KeyF), Do: act((*Tickets).Find), MenuOnly: true, Everywhere: true},
	{ID: "tickets.print", Title: "Print again", Icon: apptheme.IconPrint, Key: widgets.Ctrl(fyne.KeyP), When: can((*Ticket).CanReprint), Why: "No ticket is open.", Do: act((*Tickets).Reprint)},
	{ID: "tickets.working", Title: "Working", Key: widgets.Ctrl(fyne.KeyW), When: can((*Ticket).IsOpen), Why: "No ticket is open.", Do: turn(WorkingPaper)},
	{ID: "tickets.difference", Title: "What changed", Key: widgets.Ctrl(fyne.KeyI), When: can((*Ticket).HasDifference), Why: "This ticket is in no other's place, and no other in its.", Do: turn(DifferencePaper)},
	{ID: "tickets.correct", Title: "Correct", Key: widgets.Ctrl(fyne.KeyE), When: can((*Ticket).CanChange), WhyNot: why((*Ticket).WhyNotChange), Do: act((*Tickets).Correct), Break: true},
	{ID: "tickets.void", Title: "Void", Destroys: true, Key: widgets.CtrlShift(fyne.KeyV), When: can((*Ticket).CanChange), WhyNot: why((*Ticket).WhyNotChange), Do: act((*Tickets).Void)},
	{ID: "tickets.reissue", Title: "Reissue", Key: widgets.CtrlShift(fyne.KeyR), When: can((*Ticket).CanReissue), WhyNot: why((*Ticket).WhyNotReissue), Do: act((*Tickets).Reissue)},
	{ID: "tickets.lading", Title: "Bill of lading", Key: widgets.CtrlShift(fyne.KeyL), When: can((*Ticket).HasLeft), Why: "The ticket is not of grain that left.", Do: act((*Tickets).Lading), MenuOnly: true},
	{ID: "tickets.arrived", Title: "What the destination found", Key: widgets.CtrlShift(fyne.KeyW), When: can((*Ticket).HasLeft), Why: "The ticket is not of grain that left.", Do: act((*Tickets).Arrived), MenuOnly: true},
	{ID: "tickets.code", Title: "Check a code", Key: widgets.Ctrl(fyne.KeyK), Do: act((*Tickets).CheckCode), Break: true},
}

// act does something with the list, can and why ask the chosen ticket, and turn
// turns to one of its papers.
func act(do func(*Tickets)) func(*Screen) { return func(s *Screen) { do(s.Tickets) } }

func can(may func(*Ticket) bool) func(*Screen) bool {
	return func(s *Screen) bool { return may(s.Tickets.Ticket) }
}

func why(not func(*Ticket) string) func(*Screen) string {
	return func(s *Screen) string { return not(s.Tickets.Ticket) }
}

func turn(to PaperOf) func(*Screen) {
	return func(s *Screen) { s.Tickets.Ticket.Turn(to); s.Refresh() }
}
