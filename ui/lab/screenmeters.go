package lab

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/charts"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// metersScreen is the list of moisture meters with the log of the chosen one: its
// checks, its error from check to check, and what they tell.
type metersScreen struct {
	window *shell.Window
	meters *Meters

	list   *widgets.Table
	checks *widgets.Table
	chart  *charts.CheckChart
	says   *widgets.Remarks
	reader *widgets.Reader
	ring   *widgets.FocusOrder
}

func NewMetersScreen(f *session.Session) shell.Screen { return &metersScreen{meters: NewMeters(f)} }

// Acts are what can be done with meters.
func (s *metersScreen) Acts() []shell.Act { return shell.ActsOf(s, session.Say("Meters"), meterActs) }

var meterActs = []shell.ActRow[*metersScreen]{
	{ID: "meters.check", Title: "Write a check", Key: widgets.Bare(fyne.KeyF12), When: (*metersScreen).hasMeter, Why: noMeter,
		Do: func(s *metersScreen) { s.meters.AskCheck() }},
	{ID: "meters.new", Title: "New meter", Key: widgets.Ctrl(fyne.KeyE), Do: func(s *metersScreen) { s.meters.AskMeter(true) }},
	{ID: "meters.change", Title: "Change the meter", Key: widgets.Ctrl(fyne.KeyK), When: (*metersScreen).hasMeter, Why: noMeter,
		Do: func(s *metersScreen) { s.meters.AskMeter(false) }},
	{ID: "meters.policy", Title: "How we test", Key: widgets.Ctrl(fyne.KeyO), Do: func(s *metersScreen) { s.meters.AskPolicy() }},
	{ID: "meters.print", Title: "Print the log", Icon: apptheme.IconPrint, Key: widgets.Ctrl(fyne.KeyP), When: (*metersScreen).hasMeter, Why: noMeter,
		Do: func(s *metersScreen) { s.meters.PrintLog() }},
}

// noMeter is why an act on a meter is not possible.
const noMeter = "No meter is set up yet."

func (s *metersScreen) hasMeter() bool { return s.meters.HasMeter() }

// meterButtons are the acts under the list.
var meterButtons = []string{"meters.check", "meters.new", "meters.change", "meters.policy", "meters.print"}

// Build makes the screen's widgets.
func (s *metersScreen) Build(w *shell.Window) fyne.CanvasObject {
	s.window = w
	s.buildTables()
	s.chart, s.says = charts.NewCheckChart(), widgets.NewRemarks()
	s.reader = widgets.NewReader(s.says)
	s.ring = widgets.NewFocusOrder(w.Stage)
	s.ring.Add("list", s.list)
	s.ring.Add("checks", s.checks)
	s.ring.Add("says", s.reader)
	buttons := shell.ButtonRow(w, s.ring, meterButtons)
	top := container.NewVBox(shell.NewLabel(session.Say("Moisture meters"), shell.Heading), container.New(shell.High{Lines: 4}, s.list))
	picture := container.NewBorder(widgets.NewHeading(session.Say("Error from check to check, in points")), nil, nil, nil, s.chart)
	log := container.NewBorder(widgets.NewHeading(session.Say("References read on it")), nil, nil, nil, container.New(shell.High{Lines: 2.5}, s.checks))
	lower := container.New(shell.PictureAndSays{}, container.New(halves{}, picture, log), s.reader)
	return container.NewBorder(top, buttons, nil, nil, lower)
}

func (s *metersScreen) buildTables() {
	model, stand := shell.WordsColumn(session.Say("Model"), 16), shell.WordsColumn(session.Say("Stands"), 19)
	model.Grow, stand.State = true, true
	s.list = widgets.NewTable([]widgets.Column{
		shell.WordsColumn(session.Say("Meter"), 8), model, shell.WordsColumn(session.Say("Calibration"), 12),
		shell.WordsColumn(session.Say("Last check"), 11), shell.WordsColumn(session.Say("Next due"), 11), stand,
	})
	s.list.OnChoose = func(_ int, key string) { s.meters.Choose(key); s.show() }
	s.list.OnOpen = func(int, string) { s.ring.Focus("checks") }
	by := shell.WordsColumn(session.Say("Read by"), 8)
	by.Grow = true
	off := shell.FiguresColumn(session.Say("Off"), 6)
	off.State = true
	s.checks = widgets.NewTable([]widgets.Column{
		shell.WordsColumn(session.Say("Day"), 10), shell.WordsColumn(session.Say("Grain"), 9), shell.WordsColumn(session.Say("Ref."), 4),
		shell.FiguresColumn(session.Say("Oven"), 5), shell.FiguresColumn(session.Say("Meter"), 5), off, shell.FiguresColumn(session.Say("May be"), 5), by,
	})
	s.checks.Small = true
	s.checks.Empty = session.Say("No reference has been read on it. F12 writes one down.")
}

// Show puts the keyboard on the list.
func (s *metersScreen) Show() { s.ring.FocusFirst() }

// Hint says what carries the work.
func (s *metersScreen) Hint() string {
	return session.Say("F12 writes a reference sample down that was read on the meter. Escape goes back.")
}

// Refresh shows the facts as they now are.
func (s *metersScreen) Refresh() {
	s.meters.Refresh()
	s.list.Empty = s.meters.Empty()
	s.list.SetRows(s.meters.Rows())
	s.list.SetChosen(s.meters.Chosen())
	s.show()
}

// show brings the log of the chosen meter up to date.
func (s *metersScreen) show() {
	s.checks.SetRows(s.meters.Checks())
	s.says.Set(s.meters.Remarks())
	s.reader.Refresh()
	c := s.meters.Chart()
	s.chart.Empty = c.Empty
	s.chart.Set(c.Points, c.Limits)
	s.chart.SetAxes(c.Scale, c.Days)
	s.window.Commands.Refresh()
}

// Ring is the order of the keyboard.
func (s *metersScreen) Ring() *widgets.FocusOrder { return s.ring }

// halves sets one thing over another, each with half the height.
type halves struct{}

func (halves) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, o := range objects {
		size = fyne.NewSize(max(size.Width, o.MinSize().Width), size.Height+o.MinSize().Height)
	}
	return size
}

func (halves) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	each := size.Height / float32(len(objects))
	for i, o := range objects {
		o.Move(fyne.NewPos(0, float32(i)*each))
		o.Resize(fyne.NewSize(size.Width, each))
	}
}
