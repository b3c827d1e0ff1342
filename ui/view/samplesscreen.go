package view

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/kit"
	"tenthpoint/ui/present"
)

// samplesScreen is the shelf of retained samples.
type samplesScreen struct {
	window  *Window
	samples *present.Samples

	counted *label
	list    *kit.Table
	ring    *kit.Ring
}

func newSamplesScreen(f *present.Frame) Screen {
	return &samplesScreen{samples: present.NewSamples(f)}
}

// Acts are what can be done with a retained sample.
func (s *samplesScreen) Acts() []Act {
	group := present.Say("Samples")
	return []Act{
		{Command: kit.Command{
			ID: "samples.discard", Title: present.Say("Throw it out"), Group: group, Keys: []kit.Key{kit.Bare(fyne.KeyF12)},
			EnabledWhen: s.samples.CanDiscard, WhyNot: s.samples.WhyNotDiscard, Do: s.samples.Discard,
		}},
		{Command: kit.Command{
			ID: "samples.label", Title: present.Say("Print its label"), Group: group, Icon: kit.IconPrint, Keys: []kit.Key{kit.Ctrl(fyne.KeyP)},
			EnabledWhen: s.samples.HasSample, WhyNot: func() string { return present.Say("No sample is chosen.") }, Do: s.samples.PrintLabel,
		}},
	}
}

// Build makes the screen's widgets.
func (s *samplesScreen) Build(w *Window) fyne.CanvasObject {
	s.window = w
	s.counted = newLabel("", atRight)
	grower, stand := wordsColumn(present.Say("Grower"), 14), wordsColumn(present.Say("Stands"), 16)
	grower.Grow, stand.State = true, true
	s.list = kit.NewTable([]kit.Column{
		wordsColumn(present.Say("Sample"), 8), wordsColumn(present.Say("Grain"), 16), grower, figuresColumn(present.Say("Ticket"), 6),
		wordsColumn(present.Say("Kept at"), 10), spare(wordsColumn(present.Say("Taken"), 10), 1), wordsColumn(present.Say("Keep through"), 11), stand,
	})
	s.list.OnChoose = func(_ int, key string) { s.samples.Choose(key); s.window.commands.Refresh() }
	s.ring = kit.NewRing(w.stage)
	s.ring.Add("list", s.list)
	discard, print := w.commands.Button("samples.discard"), w.commands.Button("samples.label")
	s.ring.Add("discard", discard)
	s.ring.Add("label", print)
	top := container.NewBorder(nil, nil, newLabel(present.Say("Retained samples"), heading), container.New(wide{25}, s.counted))
	return container.NewBorder(top, container.NewGridWithColumns(2, discard, print), nil, nil, s.list)
}

// Show puts the keyboard on the list.
func (s *samplesScreen) Show() { s.ring.FocusFirst() }

// Hint says what carries the work.
func (s *samplesScreen) Hint() string {
	return present.Say("F12 writes down that a sample was thrown out. One that a dispute needs stays. Escape goes back.")
}

// Refresh shows the facts as they now are.
func (s *samplesScreen) Refresh() {
	s.samples.Refresh()
	s.counted.say(s.samples.Counted())
	s.list.Empty = s.samples.Empty()
	s.list.SetRows(s.samples.Rows())
	s.list.SetChosen(s.samples.Chosen())
}

// Ring is the order of the keyboard.
func (s *samplesScreen) Ring() *kit.Ring { return s.ring }
