package equipment

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paperview"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// Screen is what stands in the scale house: the scales and how the book is
// kept at the left, the people, pits and bins at the right.
type Screen struct {
	window *shell.Window
	gear   *Equipment

	Scales, People, Bins *widgets.Table
	said                 *widgets.Note
	card                 *paperview.SlipView
	ring                 *widgets.FocusOrder
}

func NewScreen(f *session.Session) shell.Screen { return &Screen{gear: NewEquipment(f)} }

// livePause is how often what the scale shows is read again.
const livePause = 500 * time.Millisecond

// Build makes the tables and the card.
func (s *Screen) Build(w *shell.Window) fyne.CanvasObject {
	s.window = w
	s.said = widgets.NewNote()
	s.said.Lines = 2
	s.Scales = gearTable(session.Say("No scale is set up. Ctrl+H adds one."), shell.WordsColumn(session.Say("Scale"), 4), shell.Spare(shell.FiguresColumn(session.Say("Division"), 5), 2),
		shell.Spare(shell.FiguresColumn(session.Say("Capacity"), 9), 1), shell.Spare(growing(shell.WordsColumn(session.Say("Link"), 8)), 3), stated(shell.WordsColumn(session.Say("Shows"), 14)))
	s.People = gearTable(session.Say("Nobody is written down. Ctrl+U adds the first."), growing(shell.WordsColumn(session.Say("At the desk"), 14)), shell.WordsColumn(session.Say("Role"), 8))
	s.Bins = gearTable(session.Say("No pit or bin is written down. Ctrl+I adds one."), shell.WordsColumn(session.Say("Code"), 5),
		growing(shell.WordsColumn(session.Say("Pit or bin"), 12)), shell.Spare(shell.WordsColumn(session.Say("Grain"), 14), 1))
	s.Scales.OnOpen = func(_ int, key string) { s.gear.AskScale(key) }
	s.People.OnOpen = func(_ int, key string) { s.gear.AskPerson(key) }
	s.Bins.OnOpen = func(_ int, key string) { s.gear.AskBin(key) }
	s.card = paperview.NewSlipView()
	s.ring = widgets.NewFocusOrder(w.Stage)
	s.ring.Add("scales", s.Scales)
	s.ring.Add("card", s.card)
	s.ring.Add("people", s.People)
	s.ring.Add("bins", s.Bins)
	top := container.NewVBox(shell.NewLabel(session.Say("Gear"), shell.Heading), container.New(shell.High{Lines: 2.5}, s.Scales), s.said)
	left := container.NewBorder(top, nil, nil, nil, s.card)
	right := container.New(oneOverOther{}, s.People, s.Bins)
	w.Runner.Every(livePause, s.live)
	return container.NewBorder(nil, shell.ButtonRow(w, s.ring, gearButtons), nil, nil, container.New(sideBySide{}, left, right))
}

// gearTable is a table with the sentence it shows while it is empty.
func gearTable(empty string, columns ...widgets.Column) *widgets.Table {
	t := widgets.NewTable(columns)
	t.Empty = empty
	return t
}

func growing(c widgets.Column) widgets.Column { c.Grow = true; return c }
func stated(c widgets.Column) widgets.Column  { c.State = true; return c }

// gearButtons are the acts under the tables, in their order.
var gearButtons = []string{
	"gear.scale", "gear.add", "gear.here", "gear.simulate", "gear.roll", "gear.papers", "gear.backup",
	"gear.verify", "gear.person", "gear.bin", "go.meters", "go.samples",
}

// Acts are what can be done with the gear.
func (s *Screen) Acts() []shell.Act {
	g, group := s.gear, session.Say("Gear")
	return []shell.Act{
		{Command: widgets.Command{ID: "gear.scale", Title: session.Say("Scale"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyE)}, Do: func() { g.AskScale(s.chosenScale()) }}},
		{Command: widgets.Command{ID: "gear.add", Title: session.Say("Add a scale"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyH)}, Do: func() { g.AskScale("") }}},
		{Command: widgets.Command{
			ID: "gear.here", Title: session.Say("Weigh on it"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyG)}, EnabledWhen: g.CanWeighOn,
			WhyNot: func() string { return session.Say("There is one scale only. Ctrl+H adds another.") },
			Do:     func() { g.WeighOn(s.chosenScale()) },
		}},
		{Command: widgets.Command{
			ID: "gear.simulate", Title: session.Say("Simulate"), Group: group, Keys: []widgets.Key{widgets.CtrlShift(fyne.KeyO)}, EnabledWhen: g.CanSimulate,
			WhyNot: func() string { return session.Say("Only the invented elevator may weigh on a simulated scale.") }, Do: g.Simulate,
		}},
		{Command: widgets.Command{
			ID: "gear.roll", Title: session.Say("Roll on or off"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyO)}, EnabledWhen: g.CanRoll,
			WhyNot: func() string { return session.Say("There is no simulated scale to roll on to.") }, Do: g.Roll,
		}},
		{Command: widgets.Command{ID: "gear.papers", Title: session.Say("Papers"), Group: group, Icon: apptheme.IconPrint, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyP)}, Do: g.AskPapers}},
		{Command: widgets.Command{ID: "gear.backup", Title: session.Say("Back up"), Group: group, Break: true, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyK)}, Do: g.AskBackup}},
		{Command: widgets.Command{ID: "gear.verify", Title: session.Say("Check the book"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyJ)}, Do: g.Verify}},
		{Command: widgets.Command{ID: "gear.person", Title: session.Say("Add a person"), Group: group, Break: true, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyU)}, Do: func() { g.AskPerson("") }}},
		{Command: widgets.Command{ID: "gear.bin", Title: session.Say("Add a bin"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyI)}, Do: func() { g.AskBin("") }}},
	}
}

// chosenScale is the scale in hand, the first when none was chosen.
func (s *Screen) chosenScale() string {
	if key := s.Scales.ChosenKey(); key != "" {
		return key
	}
	if rows := s.Scales.Rows(); len(rows) > 0 {
		return rows[0].Key
	}
	return ""
}

// live shows what the scale shows, while the screen is in front.
func (s *Screen) live() {
	if s.window.Front() == "gear" && s.gear.IsListening() {
		s.showScales()
	}
}

func (s *Screen) showScales() {
	s.Scales.SetRows(s.gear.Scales())
	said := s.gear.ScaleSaid()
	if len(s.Scales.Rows()) == 0 {
		said = model.Remark{} // the empty table says it
	}
	s.said.Say(said.State, said.Text)
}

// Show puts the keyboard on the scales.
func (s *Screen) Show() { s.ring.Focus("scales") }

// Refresh shows everything as it now is.
func (s *Screen) Refresh() {
	s.showScales()
	s.People.SetRows(s.gear.People())
	s.Bins.SetRows(s.gear.Bins())
	s.card.SetLines(s.gear.Card())
}

// Ring is the order of the keyboard: scales, the card, people, bins, the acts.
func (s *Screen) Ring() *widgets.FocusOrder { return s.ring }

// Hint says what keys carry the work.
func (s *Screen) Hint() string {
	return session.Say("Enter on a line changes it. Ctrl+K backs the book up, Ctrl+J checks it, F1 helps.")
}

// sideBySide gives the left part three fifths of the width.
type sideBySide struct{}

func (sideBySide) MinSize(objects []fyne.CanvasObject) fyne.Size {
	left, right := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(left.Width+shell.PaperGap()+right.Width, max(left.Height, right.Height))
}

func (sideBySide) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	left, gap := size.Width*3/5, shell.PaperGap()/2
	objects[0].Resize(fyne.NewSize(left, size.Height))
	objects[1].Move(fyne.NewPos(left+gap, 0))
	objects[1].Resize(fyne.NewSize(size.Width-left-gap, size.Height))
}

// oneOverOther sets two tables one over the other, the lower one larger.
type oneOverOther struct{}

func (oneOverOther) MinSize(objects []fyne.CanvasObject) fyne.Size {
	upper, lower := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(max(upper.Width, lower.Width), upper.Height+shell.PaperGap()+lower.Height)
}

func (oneOverOther) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	upper, gap := size.Height*2/5, shell.PaperGap()/2
	objects[0].Resize(fyne.NewSize(size.Width, upper))
	objects[1].Move(fyne.NewPos(0, upper+gap))
	objects[1].Resize(fyne.NewSize(size.Width, size.Height-upper-gap))
}
