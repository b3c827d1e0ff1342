package view

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/kit"
	"tenthpoint/ui/present"
)

// growersScreen is the list of those who bring grain, with the card of the one
// chosen beside it.
type growersScreen struct {
	window  *Window
	growers *present.Growers

	line    *kit.FieldEntry
	counted *label
	table   *kit.Table
	card    *kit.SlipView
	ring    *kit.Ring
}

func newGrowersScreen(f *present.Frame) Screen {
	return &growersScreen{growers: present.NewGrowers(f)}
}

// growerSheet is the least width of the card, in figures.
const growerSheet = 46

func growerColumns() []kit.Column {
	name := wordsColumn(present.Say("Name"), 16)
	name.Grow = true
	shares := wordsColumn(present.Say("Shares"), 8)
	shares.Wish, shares.Spare = 15, 2
	look := wordsColumn(present.Say("Note"), 11)
	look.State, look.Wish = true, 14
	return []kit.Column{
		wordsColumn(present.Say("Code"), 4), name, shares, spare(wordsColumn(present.Say("Trucks"), 7), 1), look,
	}
}

// Build makes the list and the card.
func (s *growersScreen) Build(w *Window) fyne.CanvasObject {
	s.window = w
	s.counted = newLabel("", atRight)
	s.line = kit.NewFieldEntry()
	s.line.OnEdit = func(text string) { s.growers.Type(text); s.Refresh(); w.commands.Refresh() }
	s.line.OnDown = func() { s.ring.Focus("table") }
	s.line.OnCommit = func(string) string { return "table" }
	s.table = kit.NewTable(growerColumns())
	s.table.Small = true
	s.table.OnChoose = func(_ int, key string) { s.growers.Choose(key); s.Refresh(); w.commands.Refresh() }
	s.table.OnOpen = func(int, string) { s.ring.Focus("card") }
	s.table.OnLetter = func(letter rune) {
		s.ring.Focus("line")
		s.line.TypedRune(letter)
	}
	s.card = kit.NewSlipView()
	s.ring = kit.NewRing(w.stage)
	s.ring.OnEscape = s.escape
	s.ring.Add("line", s.line)
	s.ring.Add("table", s.table)
	s.ring.Add("card", s.card)
	tip := newLabel(present.Say("A code, part of a name, a truck, or a plate."), quiet)
	head := container.NewVBox(titled(present.Say("Growers"), s.line), container.New(beforeCount{figures: 14, whole: true}, tip, s.counted))
	list := container.NewBorder(head, nil, nil, nil, s.table)
	return container.NewBorder(nil, buttonRow(w, s.ring, growerButtons), nil, nil, container.New(listAndSheet{growerSheet}, list, s.card))
}

// growerButtons are the acts under the list, in their order.
var growerButtons = []string{
	"growers.add", "growers.change", "growers.shares", "growers.truck",
	"growers.otherTruck", "growers.contract", "growers.tickets", "growers.account",
}

// Acts are what can be done with a grower.
func (s *growersScreen) Acts() []Act {
	g, group := s.growers, present.Say("Growers")
	nobody := func() string { return present.Say("No grower is in hand.") }
	of := func(id, title string, key kit.Key, do func()) Act {
		return Act{Command: kit.Command{ID: id, Title: title, Group: group, Keys: []kit.Key{key}, EnabledWhen: g.HasChosen, WhyNot: nobody, Do: do}}
	}
	other := of("growers.otherTruck", present.Say("Change a truck"), kit.Ctrl(fyne.KeyU), g.ChangeTruck)
	other.EnabledWhen = g.HasTruck
	other.WhyNot = func() string { return present.Say("No truck is written down for this grower.") }
	return []Act{
		{Command: kit.Command{ID: "growers.add", Title: present.Say("Add a grower"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyG)}, Do: g.Add}},
		of("growers.change", present.Say("Change"), kit.Ctrl(fyne.KeyE), g.Change),
		of("growers.shares", present.Say("Shares"), kit.Ctrl(fyne.KeyH), g.Shares),
		of("growers.truck", present.Say("Add a truck"), kit.Ctrl(fyne.KeyT), g.AddTruck),
		other,
		of("growers.contract", present.Say("Contract"), kit.Ctrl(fyne.KeyK), g.AddContract),
		of("growers.tickets", present.Say("Tickets"), kit.Ctrl(fyne.KeyI), g.TicketsOf),
		of("growers.account", present.Say("Print account"), kit.Ctrl(fyne.KeyP), g.PrintAccount),
	}
}

// escape empties the line first; an empty one leaves the screen.
func (s *growersScreen) escape() bool {
	if !s.growers.Clear() {
		return false
	}
	s.ring.Focus("line")
	s.Refresh()
	return true
}

// Show takes the book's word anew and puts the keyboard in the line.
func (s *growersScreen) Show() {
	s.growers.Reload()
	s.Refresh()
	s.window.commands.Refresh()
	s.ring.Focus("line")
	s.line.SelectAll()
}

// Refresh shows the list and the card as they now are.
func (s *growersScreen) Refresh() {
	g := s.growers
	s.line.SetText(g.Line())
	s.counted.say(g.Counted())
	s.table.Empty = g.Empty()
	s.table.SetRows(g.Rows())
	if s.table.ChosenKey() != g.Chosen() {
		s.table.SetChosen(g.Chosen())
	}
	s.card.SetLines(g.Card())
	setVisible(s.card, g.HasChosen())
}

// Ring is the order of the keyboard: the line, the list, the card, the acts.
func (s *growersScreen) Ring() *kit.Ring { return s.ring }

// Hint says what keys carry the work.
func (s *growersScreen) Hint() string {
	return present.Say("Type a code or a few letters. Down goes into the list, Enter to the card, Ctrl+G adds a grower.")
}
