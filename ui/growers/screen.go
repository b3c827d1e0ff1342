package growers

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/paperview"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// Screen is the list of those who bring grain, with the card of the one
// chosen beside it.
type Screen struct {
	window  *shell.Window
	Growers *Growers

	Line    *widgets.FieldEntry
	counted *shell.Label
	Table   *widgets.Table
	Card    *paperview.SlipView
	ring    *widgets.FocusOrder
}

func NewScreen(f *session.Session) shell.Screen {
	return &Screen{Growers: NewGrowers(f)}
}

// growerSheet is the least width of the card, in figures.
const growerSheet = 46

func growerColumns() []widgets.Column {
	name := shell.WordsColumn(session.Say("Name"), 16)
	name.Grow = true
	shares := shell.WordsColumn(session.Say("Shares"), 8)
	shares.Wish, shares.Spare = 15, 2
	look := shell.WordsColumn(session.Say("Note"), 11)
	look.State, look.Wish = true, 14
	return []widgets.Column{
		shell.WordsColumn(session.Say("Code"), 4), name, shares, shell.Spare(shell.WordsColumn(session.Say("Trucks"), 7), 1), look,
	}
}

// Build makes the list and the card.
func (s *Screen) Build(w *shell.Window) fyne.CanvasObject {
	s.window = w
	s.counted = shell.NewLabel("", shell.AtRight)
	s.Line = widgets.NewFieldEntry()
	s.Line.OnEdit = func(text string) { s.Growers.Type(text); s.Refresh(); w.Commands.Refresh() }
	s.Line.OnDown = func() { s.ring.Focus("table") }
	s.Line.OnCommit = func(string) string { return "table" }
	s.Table = widgets.NewTable(growerColumns())
	s.Table.Small = true
	s.Table.OnChoose = func(_ int, key string) { s.Growers.Choose(key); s.Refresh(); w.Commands.Refresh() }
	s.Table.OnOpen = func(int, string) { s.ring.Focus("card") }
	s.Table.OnLetter = func(letter rune) {
		s.ring.Focus("line")
		s.Line.TypedRune(letter)
	}
	s.Card = paperview.NewSlipView()
	s.ring = widgets.NewFocusOrder(w.Stage)
	s.ring.OnEscape = s.escape
	s.ring.Add("line", s.Line)
	s.ring.Add("table", s.Table)
	s.ring.Add("card", s.Card)
	tip := shell.NewLabel(session.Say("A code, part of a name, a truck, or a plate."), shell.Quiet)
	head := container.NewVBox(shell.Titled(session.Say("Growers"), s.Line), container.New(shell.BeforeCount{Figures: 14, Whole: true}, tip, s.counted))
	list := container.NewBorder(head, nil, nil, nil, s.Table)
	return container.NewBorder(nil, shell.ButtonRow(w, s.ring, growerButtons), nil, nil, container.New(shell.ListAndSheet{Figures: growerSheet}, list, s.Card))
}

// growerButtons are the acts under the list, in their order.
var growerButtons = []string{
	"growers.add", "growers.change", "growers.shares", "growers.truck",
	"growers.otherTruck", "growers.contract", "growers.tickets", "growers.account",
}

// Acts are what can be done with a grower.
func (s *Screen) Acts() []shell.Act {
	g, group := s.Growers, session.Say("Growers")
	nobody := func() string { return session.Say("No grower is in hand.") }
	of := func(id, title string, key widgets.Key, do func()) shell.Act {
		return shell.Act{Command: widgets.Command{ID: id, Title: title, Group: group, Keys: []widgets.Key{key}, EnabledWhen: g.HasChosen, WhyNot: nobody, Do: do}}
	}
	other := of("growers.otherTruck", session.Say("Change a truck"), widgets.Ctrl(fyne.KeyU), g.ChangeTruck)
	other.EnabledWhen = g.HasTruck
	other.WhyNot = func() string { return session.Say("No truck is written down for this grower.") }
	return []shell.Act{
		{Command: widgets.Command{ID: "growers.add", Title: session.Say("Add a grower"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyG)}, Do: g.Add}},
		of("growers.change", session.Say("Change"), widgets.Ctrl(fyne.KeyE), g.Change),
		of("growers.shares", session.Say("Shares"), widgets.Ctrl(fyne.KeyH), g.Shares),
		of("growers.truck", session.Say("Add a truck"), widgets.Ctrl(fyne.KeyT), g.AddTruck),
		other,
		of("growers.contract", session.Say("Contract"), widgets.Ctrl(fyne.KeyK), g.AddContract),
		of("growers.tickets", session.Say("Tickets"), widgets.Ctrl(fyne.KeyI), g.TicketsOf),
		of("growers.account", session.Say("Print account"), widgets.Ctrl(fyne.KeyP), g.PrintAccount),
	}
}

// escape empties the line first; an empty one leaves the screen.
func (s *Screen) escape() bool {
	if !s.Growers.Clear() {
		return false
	}
	s.ring.Focus("line")
	s.Refresh()
	return true
}

// Show takes the book's word anew and puts the keyboard in the line.
func (s *Screen) Show() {
	s.Growers.Reload()
	s.Refresh()
	s.window.Commands.Refresh()
	s.ring.Focus("line")
	s.Line.SelectAll()
}

// Refresh shows the list and the card as they now are.
func (s *Screen) Refresh() {
	g := s.Growers
	s.Line.SetText(g.Line())
	s.counted.Say(g.Counted())
	s.Table.Empty = g.Empty()
	s.Table.SetRows(g.Rows())
	if s.Table.ChosenKey() != g.Chosen() {
		s.Table.SetChosen(g.Chosen())
	}
	s.Card.SetLines(g.Card())
	shell.SetVisible(s.Card, g.HasChosen())
}

// Ring is the order of the keyboard: the line, the list, the card, the acts.
func (s *Screen) Ring() *widgets.FocusOrder { return s.ring }

// Hint says what keys carry the work.
func (s *Screen) Hint() string {
	return session.Say("Type a code or a few letters. Down goes into the list, Enter to the card, Ctrl+G adds a grower.")
}
