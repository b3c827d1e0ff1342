package view

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/kit"
	"tenthpoint/ui/present"
)

// metersScreen is the list of moisture meters with the log of the one in hand:
// its checks, its error from check to check, and what they say.
type metersScreen struct {
	window *Window
	meters *present.Meters

	list   *kit.Table
	checks *kit.Table
	chart  *kit.CheckChart
	says   *kit.Remarks
	reader *kit.Reader
	ring   *kit.Ring
}

func newMetersScreen(f *present.Frame) Screen { return &metersScreen{meters: present.NewMeters(f)} }

// Acts are what can be done with meters.
func (s *metersScreen) Acts() []Act {
	group := present.Say("Meters")
	none := func() string { return present.Say("No meter is set up yet.") }
	return []Act{
		{Command: kit.Command{
			ID: "meters.check", Title: present.Say("Write a check"), Group: group, Keys: []kit.Key{kit.Bare(fyne.KeyF12)},
			EnabledWhen: s.meters.HasMeter, WhyNot: none, Do: s.meters.AskCheck,
		}},
		{Command: kit.Command{
			ID: "meters.new", Title: present.Say("New meter"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyE)},
			Do: func() { s.meters.AskMeter(true) },
		}},
		{Command: kit.Command{
			ID: "meters.change", Title: present.Say("Change the meter"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyK)},
			EnabledWhen: s.meters.HasMeter, WhyNot: none, Do: func() { s.meters.AskMeter(false) },
		}},
		{Command: kit.Command{
			ID: "meters.policy", Title: present.Say("How we test"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyO)},
			Do: s.meters.AskPolicy,
		}},
		{Command: kit.Command{
			ID: "meters.print", Title: present.Say("Print the log"), Group: group, Icon: kit.IconPrint, Keys: []kit.Key{kit.Ctrl(fyne.KeyP)},
			EnabledWhen: s.meters.HasMeter, WhyNot: none, Do: s.meters.PrintLog,
		}},
	}
}

// meterButtons are the acts under the list.
var meterButtons = []string{"meters.check", "meters.new", "meters.change", "meters.policy", "meters.print"}

// Build makes the screen's widgets.
func (s *metersScreen) Build(w *Window) fyne.CanvasObject {
	s.window = w
	s.buildTables()
	s.chart, s.says = kit.NewCheckChart(), kit.NewRemarks()
	s.reader = kit.NewReader(s.says)
	s.ring = kit.NewRing(w.stage)
	s.ring.Add("list", s.list)
	s.ring.Add("checks", s.checks)
	s.ring.Add("says", s.reader)
	buttons := buttonRow(w, s.ring, meterButtons)
	top := container.NewVBox(newLabel(present.Say("Moisture meters"), heading), container.New(high{lines: 4}, s.list))
	picture := container.NewBorder(kit.NewHeading(present.Say("Error from check to check, in points")), nil, nil, nil, s.chart)
	log := container.NewBorder(kit.NewHeading(present.Say("References read on it")), nil, nil, nil, container.New(high{lines: 2.5}, s.checks))
	lower := container.New(pictureAndSays{}, container.New(halves{}, picture, log), s.reader)
	return container.NewBorder(top, buttons, nil, nil, lower)
}

func (s *metersScreen) buildTables() {
	model, stand := wordsColumn(present.Say("Model"), 16), wordsColumn(present.Say("Stands"), 19)
	model.Grow, stand.State = true, true
	s.list = kit.NewTable([]kit.Column{
		wordsColumn(present.Say("Meter"), 8), model, wordsColumn(present.Say("Calibration"), 12),
		wordsColumn(present.Say("Last check"), 11), wordsColumn(present.Say("Next due"), 11), stand,
	})
	s.list.OnChoose = func(_ int, key string) { s.meters.Choose(key); s.show() }
	s.list.OnOpen = func(int, string) { s.ring.Focus("checks") }
	by := wordsColumn(present.Say("Read by"), 8)
	by.Grow = true
	off := figuresColumn(present.Say("Off"), 6)
	off.State = true
	s.checks = kit.NewTable([]kit.Column{
		wordsColumn(present.Say("Day"), 10), wordsColumn(present.Say("Grain"), 9), wordsColumn(present.Say("Ref."), 4),
		figuresColumn(present.Say("Oven"), 5), figuresColumn(present.Say("Meter"), 5), off, figuresColumn(present.Say("May be"), 5), by,
	})
	s.checks.Small = true
	s.checks.Empty = present.Say("No reference has been read on it. F12 writes one down.")
}

// Show puts the keyboard on the list.
func (s *metersScreen) Show() { s.ring.FocusFirst() }

// Hint says what carries the work.
func (s *metersScreen) Hint() string {
	return present.Say("F12 writes a reference sample down that was read on the meter. Escape goes back.")
}

// Refresh shows the facts as they now are.
func (s *metersScreen) Refresh() {
	s.meters.Refresh()
	s.list.Empty = s.meters.Empty()
	s.list.SetRows(s.meters.Rows())
	s.list.SetChosen(s.meters.Chosen())
	s.show()
}

// show brings the log of the meter in hand up to date.
func (s *metersScreen) show() {
	s.checks.SetRows(s.meters.Checks())
	s.says.Set(s.meters.Sayings())
	s.reader.Refresh()
	c := s.meters.Chart()
	s.chart.Empty = c.Empty
	s.chart.Set(c.Points, c.Limits)
	s.chart.SetAxes(c.Scale, c.Days)
	s.window.commands.Refresh()
}

// Ring is the order of the keyboard.
func (s *metersScreen) Ring() *kit.Ring { return s.ring }

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
