package view

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/kit"
	"tenthpoint/ui/model"
	"tenthpoint/ui/present"
)

// gearScreen is what stands in the scale house: the scales and how the book is
// kept at the left, the people, pits and bins at the right.
type gearScreen struct {
	window *Window
	gear   *present.Gear

	scales, people, bins *kit.Table
	said                 *kit.Note
	card                 *kit.SlipView
	ring                 *kit.Ring
}

func newGearScreen(f *present.Frame) Screen { return &gearScreen{gear: present.NewGear(f)} }

// livePause is how often what the scale shows is read again.
const livePause = 500 * time.Millisecond

// Build makes the tables and the card.
func (s *gearScreen) Build(w *Window) fyne.CanvasObject {
	s.window = w
	s.said = kit.NewNote()
	s.said.Lines = 2
	s.scales = gearTable(present.Say("No scale is set up. Ctrl+H adds one."), wordsColumn(present.Say("Scale"), 4), spare(figuresColumn(present.Say("Division"), 5), 2),
		spare(figuresColumn(present.Say("Capacity"), 9), 1), spare(growing(wordsColumn(present.Say("Link"), 8)), 3), stated(wordsColumn(present.Say("Shows"), 14)))
	s.people = gearTable(present.Say("Nobody is written down. Ctrl+U adds the first."), growing(wordsColumn(present.Say("At the desk"), 14)), wordsColumn(present.Say("Role"), 8))
	s.bins = gearTable(present.Say("No pit or bin is written down. Ctrl+I adds one."), wordsColumn(present.Say("Code"), 5),
		growing(wordsColumn(present.Say("Pit or bin"), 12)), spare(wordsColumn(present.Say("Grain"), 14), 1))
	s.scales.OnOpen = func(_ int, key string) { s.gear.AskScale(key) }
	s.people.OnOpen = func(_ int, key string) { s.gear.AskPerson(key) }
	s.bins.OnOpen = func(_ int, key string) { s.gear.AskBin(key) }
	s.card = kit.NewSlipView()
	s.ring = kit.NewRing(w.stage)
	s.ring.Add("scales", s.scales)
	s.ring.Add("card", s.card)
	s.ring.Add("people", s.people)
	s.ring.Add("bins", s.bins)
	top := container.NewVBox(newLabel(present.Say("Gear"), heading), container.New(high{lines: 2.5}, s.scales), s.said)
	left := container.NewBorder(top, nil, nil, nil, s.card)
	right := container.New(oneOverOther{}, s.people, s.bins)
	w.runner.Every(livePause, s.live)
	return container.NewBorder(nil, buttonRow(w, s.ring, gearButtons), nil, nil, container.New(sideBySide{}, left, right))
}

// gearTable is a table with the sentence it shows while it is empty.
func gearTable(empty string, columns ...kit.Column) *kit.Table {
	t := kit.NewTable(columns)
	t.Empty = empty
	return t
}

func growing(c kit.Column) kit.Column { c.Grow = true; return c }
func stated(c kit.Column) kit.Column  { c.State = true; return c }

// gearButtons are the acts under the tables, in their order.
var gearButtons = []string{
	"gear.scale", "gear.add", "gear.here", "gear.simulate", "gear.roll", "gear.papers", "gear.backup",
	"gear.verify", "gear.person", "gear.bin", "go.meters", "go.samples",
}

// Acts are what can be done with the gear.
func (s *gearScreen) Acts() []Act {
	g, group := s.gear, present.Say("Gear")
	return []Act{
		{Command: kit.Command{ID: "gear.scale", Title: present.Say("Scale"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyE)}, Do: func() { g.AskScale(s.chosenScale()) }}},
		{Command: kit.Command{ID: "gear.add", Title: present.Say("Add a scale"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyH)}, Do: func() { g.AskScale("") }}},
		{Command: kit.Command{
			ID: "gear.here", Title: present.Say("Weigh on it"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyG)}, EnabledWhen: g.CanWeighOn,
			WhyNot: func() string { return present.Say("There is one scale only. Ctrl+H adds another.") },
			Do:     func() { g.WeighOn(s.chosenScale()) },
		}},
		{Command: kit.Command{
			ID: "gear.simulate", Title: present.Say("Simulate"), Group: group, Keys: []kit.Key{kit.CtrlShift(fyne.KeyO)}, EnabledWhen: g.CanSimulate,
			WhyNot: func() string { return present.Say("Only the invented elevator may weigh on a simulated scale.") }, Do: g.Simulate,
		}},
		{Command: kit.Command{
			ID: "gear.roll", Title: present.Say("Roll on or off"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyO)}, EnabledWhen: g.CanRoll,
			WhyNot: func() string { return present.Say("There is no simulated scale to roll on to.") }, Do: g.Roll,
		}},
		{Command: kit.Command{ID: "gear.papers", Title: present.Say("Papers"), Group: group, Icon: kit.IconPrint, Keys: []kit.Key{kit.Ctrl(fyne.KeyP)}, Do: g.AskPapers}},
		{Command: kit.Command{ID: "gear.backup", Title: present.Say("Back up"), Group: group, Break: true, Keys: []kit.Key{kit.Ctrl(fyne.KeyK)}, Do: g.AskBackup}},
		{Command: kit.Command{ID: "gear.verify", Title: present.Say("Check the book"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyJ)}, Do: g.Verify}},
		{Command: kit.Command{ID: "gear.person", Title: present.Say("Add a person"), Group: group, Break: true, Keys: []kit.Key{kit.Ctrl(fyne.KeyU)}, Do: func() { g.AskPerson("") }}},
		{Command: kit.Command{ID: "gear.bin", Title: present.Say("Add a bin"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyI)}, Do: func() { g.AskBin("") }}},
	}
}

// chosenScale is the scale in hand, the first when none was chosen.
func (s *gearScreen) chosenScale() string {
	if key := s.scales.ChosenKey(); key != "" {
		return key
	}
	if rows := s.scales.Rows(); len(rows) > 0 {
		return rows[0].Key
	}
	return ""
}

// live shows what the scale shows, while the screen is in front.
func (s *gearScreen) live() {
	if s.window.place() == "gear" && s.gear.IsListening() {
		s.showScales()
	}
}

func (s *gearScreen) showScales() {
	s.scales.SetRows(s.gear.Scales())
	said := s.gear.ScaleSaid()
	if len(s.scales.Rows()) == 0 {
		said = model.Remark{} // the empty table says it
	}
	s.said.Say(said.State, said.Text)
}

// Show puts the keyboard on the scales.
func (s *gearScreen) Show() { s.ring.Focus("scales") }

// Refresh shows everything as it now is.
func (s *gearScreen) Refresh() {
	s.showScales()
	s.people.SetRows(s.gear.People())
	s.bins.SetRows(s.gear.Bins())
	s.card.SetLines(s.gear.Card())
}

// Ring is the order of the keyboard: scales, the card, people, bins, the acts.
func (s *gearScreen) Ring() *kit.Ring { return s.ring }

// Hint says what keys carry the work.
func (s *gearScreen) Hint() string {
	return present.Say("Enter on a line changes it. Ctrl+K backs the book up, Ctrl+J checks it, F1 helps.")
}

// sideBySide gives the left part three fifths of the width.
type sideBySide struct{}

func (sideBySide) MinSize(objects []fyne.CanvasObject) fyne.Size {
	left, right := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(left.Width+paperGap()+right.Width, max(left.Height, right.Height))
}

func (sideBySide) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	left, gap := size.Width*3/5, paperGap()/2
	objects[0].Resize(fyne.NewSize(left, size.Height))
	objects[1].Move(fyne.NewPos(left+gap, 0))
	objects[1].Resize(fyne.NewSize(size.Width-left-gap, size.Height))
}

// oneOverOther sets two tables one over the other, the lower one larger.
type oneOverOther struct{}

func (oneOverOther) MinSize(objects []fyne.CanvasObject) fyne.Size {
	upper, lower := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(max(upper.Width, lower.Width), upper.Height+paperGap()+lower.Height)
}

func (oneOverOther) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	upper, gap := size.Height*2/5, paperGap()/2
	objects[0].Resize(fyne.NewSize(size.Width, upper))
	objects[1].Move(fyne.NewPos(0, upper+gap))
	objects[1].Resize(fyne.NewSize(size.Width, size.Height-upper-gap))
}
