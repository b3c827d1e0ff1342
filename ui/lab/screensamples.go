package lab

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// samplesScreen is the shelf of retained samples.
type samplesScreen struct {
	window  *shell.Window
	samples *Samples

	counted *shell.Label
	list    *widgets.Table
	ring    *widgets.FocusOrder
}

func NewSamplesScreen(f *session.Session) shell.Screen {
	return &samplesScreen{samples: NewSamples(f)}
}

// Acts are what can be done with a retained sample.
func (s *samplesScreen) Acts() []shell.Act {
	return shell.ActsOf(s, session.Say("Samples"), sampleActs)
}

var sampleActs = []shell.ActRow[*samplesScreen]{
	{ID: "samples.discard", Title: "Throw it out", Key: widgets.Bare(fyne.KeyF12),
		When:   func(s *samplesScreen) bool { return s.samples.CanDiscard() },
		WhyNot: func(s *samplesScreen) string { return s.samples.WhyNotDiscard() },
		Do:     func(s *samplesScreen) { s.samples.Discard() }},
	{ID: "samples.label", Title: "Print its label", Icon: apptheme.IconPrint, Key: widgets.Ctrl(fyne.KeyP),
		When: func(s *samplesScreen) bool { return s.samples.HasSample() }, Why: "No sample is chosen.",
		Do: func(s *samplesScreen) { s.samples.PrintLabel() }},
}

// Build makes the screen's widgets.
func (s *samplesScreen) Build(w *shell.Window) fyne.CanvasObject {
	s.window = w
	s.counted = shell.NewLabel("", shell.AtRight)
	grower, stand := shell.WordsColumn(session.Say("Grower"), 14), shell.WordsColumn(session.Say("Stands"), 16)
	grower.Grow, stand.State = true, true
	s.list = widgets.NewTable([]widgets.Column{
		shell.WordsColumn(session.Say("Sample"), 8), shell.WordsColumn(session.Say("Grain"), 16), grower, shell.FiguresColumn(session.Say("Ticket"), 6),
		shell.WordsColumn(session.Say("Kept at"), 10), shell.Spare(shell.WordsColumn(session.Say("Taken"), 10), 1), shell.WordsColumn(session.Say("Keep through"), 11), stand,
	})
	s.list.OnChoose = func(_ int, key string) { s.samples.Choose(key); s.window.Commands.Refresh() }
	s.ring = widgets.NewFocusOrder(w.Stage)
	s.ring.Add("list", s.list)
	discard, print := w.Commands.Button("samples.discard"), w.Commands.Button("samples.label")
	s.ring.Add("discard", discard)
	s.ring.Add("label", print)
	top := container.NewBorder(nil, nil, shell.NewLabel(session.Say("Retained samples"), shell.Heading), container.New(shell.Wide{Figures: 25}, s.counted))
	return container.NewBorder(top, container.NewGridWithColumns(2, discard, print), nil, nil, s.list)
}

// Show puts the keyboard on the list.
func (s *samplesScreen) Show() { s.ring.FocusFirst() }

// Hint says what carries the work.
func (s *samplesScreen) Hint() string {
	return session.Say("F12 writes down that a sample was thrown out. One that a dispute needs stays. Escape goes back.")
}

// Refresh shows the facts as they now are.
func (s *samplesScreen) Refresh() {
	s.samples.Refresh()
	s.counted.Say(s.samples.Counted())
	s.list.Empty = s.samples.Empty()
	s.list.SetRows(s.samples.Rows())
	s.list.SetChosen(s.samples.Chosen())
}

// Ring is the order of the keyboard.
func (s *samplesScreen) Ring() *widgets.FocusOrder { return s.ring }
