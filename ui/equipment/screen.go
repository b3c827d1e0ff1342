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
	"tenthpoint/ui/widgets/status"
)

// Screen shows the equipment: the scales and the book's file at the left, the people, pits and bins
// at the right.
type Screen struct {
	window *shell.Window
	gear   *Equipment

	Scales, People, Bins *widgets.Table
	said                 *status.Text
	card                 *paperview.SlipView
	focusOrder           *widgets.FocusOrder
}

func NewScreen(f *session.Session) shell.Screen {
	gear := NewEquipment(f)
	f.OfferTruck = func() { offerTruck(gear) }
	return &Screen{gear: gear}
}

// livePause is the interval at which the scale's reading is refreshed.
const livePause = 500 * time.Millisecond

// Build makes the tables and the card.
func (s *Screen) Build(w *shell.Window) fyne.CanvasObject {
	s.window = w
	s.said = status.NewText()
	s.said.Lines = 2
	s.Scales = newTable(s.gear.scaleColumns().Heads(), w.Session.Say("No scale is set up. Ctrl+H adds one."))
	s.People = newTable(personColumns(w.Session.Language).Heads(), w.Session.Say("Nobody is written down. Ctrl+U adds the first."))
	s.Bins = newTable(binColumns(w.Session.Language).Heads(), w.Session.Say("No pit or bin is written down. Ctrl+I adds one."))
	s.Scales.OnOpen = func(_ int, key string) { s.gear.AskScale(key) }
	s.People.OnOpen = func(_ int, key string) { s.gear.AskPerson(key) }
	s.Bins.OnOpen = func(_ int, key string) { s.gear.AskBin(key) }
	s.card = paperview.NewSlipView()
	s.focusOrder = widgets.NewFocusOrder(w.UI)
	s.focusOrder.Add("scales", s.Scales)
	s.focusOrder.Add("card", s.card)
	s.focusOrder.Add("people", s.People)
	s.focusOrder.Add("bins", s.Bins)
	top := container.NewVBox(shell.NewLabel(w.Session.Say("Equipment"), shell.Heading), container.New(shell.High{Lines: 2.5}, s.Scales), s.said)
	left := container.NewBorder(top, nil, nil, nil, s.card)
	right := container.New(oneOverOther{}, s.People, s.Bins)
	w.Runner.Every(livePause, s.live)
	return container.NewBorder(nil, shell.ButtonRow(w, s.focusOrder, append(shell.ButtonsOf(s.Acts()), "go.meters", "go.samples")), nil, nil, container.New(shell.Split{Left: 60}, left, right))
}

// newTable makes a table with a text for when it is empty.
func newTable(columns []model.Column, empty string) *widgets.Table {
	t := widgets.NewTable(columns)
	t.Empty = empty
	return t
}

// Acts are the actions of the equipment.
func (s *Screen) Acts() []shell.Act {
	return shell.ActsOf(s.gear.session.Language, s, s.gear.session.Say("Equipment"), gearActs)
}

var gearActs = []shell.ActRow[*Screen]{
	{ID: "gear.scale", Title: "Scale", Key: widgets.Ctrl(fyne.KeyE), Do: func(s *Screen) { s.gear.AskScale(s.chosenScale()) }},
	{ID: "gear.add", Title: "Add a scale", Key: widgets.Ctrl(fyne.KeyH), Do: func(s *Screen) { s.gear.AskScale("") }, MenuOnly: true},
	{ID: "gear.here", Title: "Weigh on it", Key: widgets.Ctrl(fyne.KeyG), When: can((*Equipment).CanWeighOn), Why: "There is one scale only. Ctrl+H adds another.", Do: func(s *Screen) { s.gear.WeighOn(s.chosenScale()) }},
	{ID: "gear.log", Title: "Log of the scale", Key: widgets.Bare(fyne.KeyF12), When: hasScale, Why: "No scale is set up. Ctrl+H adds one; its division and capacity are on its plate.", Do: func(s *Screen) { s.gear.Logs.Ask(s.chosenScale()) }},
	{ID: "gear.printlog", Title: "Print its log", Key: widgets.Ctrl(fyne.KeyT), Icon: apptheme.IconPrint, When: hasScale, Why: "No scale is set up. Ctrl+H adds one; its division and capacity are on its plate.", Do: func(s *Screen) { s.gear.Logs.Print(s.chosenScale()) }, MenuOnly: true},
	{ID: "gear.simulate", Title: "Simulate", Key: widgets.CtrlShift(fyne.KeyO), When: can((*Equipment).CanSimulate), Why: "Only the invented elevator may weigh on a simulated scale.", Do: act((*Equipment).Simulate)},
	{ID: "gear.roll", Title: "Roll on or off", Key: widgets.Ctrl(fyne.KeyO), When: can((*Equipment).CanRoll), Why: "There is no simulated scale to roll on to.", Do: act((*Equipment).Roll)},
	{ID: "gear.papers", Title: "Papers", Key: widgets.Ctrl(fyne.KeyP), Icon: apptheme.IconPrint, Do: act((*Equipment).AskPapers)},
	{ID: "gear.backup", Title: "Back up", Key: widgets.Ctrl(fyne.KeyK), Do: act((*Equipment).AskBackup), Break: true},
	{ID: "gear.verify", Title: "Check the book", Key: widgets.Ctrl(fyne.KeyJ), Do: act((*Equipment).Verify)},
	{ID: "gear.person", Title: "Add a person", Key: widgets.Ctrl(fyne.KeyU), Do: func(s *Screen) { s.gear.AskPerson("") }, Break: true, MenuOnly: true},
	{ID: "gear.compulsory", Title: "What is asked", Key: widgets.Ctrl(fyne.KeyW), Do: func(s *Screen) { AskCompulsory(s.gear.session) }, MenuOnly: true},
	{ID: "gear.pins", Title: "What asks for a PIN", Key: widgets.CtrlShift(fyne.KeyL), Do: func(s *Screen) { askPINActs(s.gear.session) }, MenuOnly: true},
	{ID: "gear.bin", Title: "Add a bin", Key: widgets.Ctrl(fyne.KeyI), Do: func(s *Screen) { s.gear.AskBin("") }, MenuOnly: true},
}

// hasScale reports whether there is a scale that may have a log.
func hasScale(s *Screen) bool { return s.gear.Logs.HasScale() }

// act does something with the gear, and can asks it.
func act(do func(*Equipment)) func(*Screen) { return func(s *Screen) { do(s.gear) } }

func can(may func(*Equipment) bool) func(*Screen) bool {
	return func(s *Screen) bool { return may(s.gear) }
}

// chosenScale is the chosen scale, the first when none was chosen.
func (s *Screen) chosenScale() string {
	if key := s.Scales.ChosenKey(); key != "" {
		return key
	}
	if rows := s.Scales.Rows(); len(rows) > 0 {
		return rows[0].Key
	}
	return ""
}

// live shows the scale's reading, while the screen is in front.
func (s *Screen) live() {
	if s.window.Front() == "gear" && s.gear.IsListening() {
		s.showScales()
	}
}

func (s *Screen) showScales() {
	s.Scales.SetRows(s.gear.Scales())
	said := s.gear.ScaleSaid()
	if len(s.Scales.Rows()) == 0 {
		said = model.Status{} // the empty table shows it
	}
	s.said.Say(said.State, said.Text)
}

// Show moves the focus to the scales.
func (s *Screen) Show() { s.focusOrder.Focus("scales") }

// Refresh shows everything as it now is.
func (s *Screen) Refresh() {
	s.gear.Logs.Read()
	s.showScales()
	s.People.SetRows(s.gear.People())
	s.Bins.SetRows(s.gear.Bins())
	s.card.SetLines(s.gear.Card())
}

// FocusOrder returns the tab order: scales, the card, people, bins, the acts.
func (s *Screen) FocusOrder() *widgets.FocusOrder { return s.focusOrder }

// Hint returns the main keys of the screen.
func (s *Screen) Hint() string {
	return s.gear.session.Say("Enter on a line changes it. Ctrl+K backs the book up, Ctrl+J checks it, F1 helps.")
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
