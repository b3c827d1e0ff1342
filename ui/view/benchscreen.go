package view

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	"tenthpoint/ui/kit"
	"tenthpoint/ui/present"
)

// benchScreen is the sample tester's: the test being typed at the left with the
// moisture ruler under it, and at the right what the tests come to.
type benchScreen struct {
	window *Window
	bench  *present.Bench
	form   *fieldForm

	figures []*kit.Figure
	tests   *kit.Table
	says    *kit.Remarks
	reader  *kit.Reader
	made    *fyne.Container // the tests and what is said of them
	working *kit.SlipView
	ruler   *kit.MoistureRuler
	sheet   *fyne.Container // the form over the ruler
	pane    *formAndPaper
	head    *fyne.Container // the large figures
	content *fyne.Container
	write   *kit.Button
	toggle  *kit.Button
}

func newBenchScreen(f *present.Frame) Screen { return &benchScreen{bench: present.NewBench(f)} }

// Build makes the screen's widgets.
func (s *benchScreen) Build(w *Window) fyne.CanvasObject {
	s.window = w
	s.ruler, s.working = kit.NewMoistureRuler(), kit.NewSlipView()
	s.tests = kit.NewTable([]kit.Column{
		{ID: "no", Title: present.Say("No"), Width: 3},
		{ID: "result", Title: present.Say("Result"), Width: 8, Align: fyne.TextAlignTrailing},
		{ID: "how", Title: present.Say("How"), Width: 12, Grow: true, Spare: 1},
		{ID: "stands", Title: present.Say("Stands"), Width: 9, State: true},
	})
	s.tests.Empty = present.Say("No test yet. Each one is listed here, also those left out.")
	s.says = kit.NewRemarks()
	s.reader = kit.NewReader(s.says)
	s.write, s.toggle = w.commands.Button("bench.write"), w.commands.Button("bench.working")
	s.write.Importance = highImportance
	s.form = newFieldForm(w, s.bench, s.showResult)
	s.form.addLast("write", s.write)
	s.form.addLast("tests", s.tests)
	s.form.addLast("says", s.reader)
	fields := container.NewVScroll(container.New(slim{}, s.form.sheet.content))
	s.sheet = container.New(formSheet{s.form.sheet, s.ruler}, fields, container.NewStack(s.ruler))
	s.buildResult()
	s.form.sheet.whisper = s.window.whisper
	s.form.grown, s.form.toForm = s.content.Refresh, s.toForm
	s.form.show(true)
	return s.content
}

// buildResult puts the large figures, the tests and what is said of them, and the
// buttons beside the form.
func (s *benchScreen) buildResult() {
	c := s.window.commands
	figures := container.NewHBox()
	s.head = figures
	for i, f := range s.bench.BigFigures() {
		figure := kit.NewFigure(f.Caption, f.Unit)
		figure.Chars = benchChars[i]
		s.figures = append(s.figures, figure)
		figures.Add(figure)
		if i < len(benchChars)-1 {
			figures.Add(layout.NewSpacer())
		}
	}
	s.made = container.NewBorder(container.New(high{lines: 5}, s.tests), nil, nil, nil, s.reader)
	s.pane = &formAndPaper{
		fields: s.form.sheet, form: s.sheet, paper: container.NewStack(s.made, s.working), share: resultShare, overPaper: true,
		head: container.NewStack(newGround(kit.ColorPanel), container.New(margin{}, figures)),
		buttons: container.New(&endings{rows: []int{3, 2}}, s.write,
			c.Button("bench.leave"), s.toggle, c.Button("bench.through"), c.Button("go.meters"), c.Button("go.samples")),
		onNarrow: s.nameToggle,
	}
	s.content = container.New(s.pane, s.pane.objects()...)
}

// resultShare is what the result has of a hundred.
const resultShare = 45

// benchChars is the least room for moisture, spread and tests, in figures.
var benchChars = []int{4, 4, 2}

// Show puts the keyboard where work begins: on the load, or on the first figure
// of the next test.
func (s *benchScreen) Show() {
	s.bench.Begin()
	s.form.show(true)
	s.form.focus(s.bench.First())
}

// Hint says what keys carry the work.
func (s *benchScreen) Hint() string { return s.bench.Hint() }

// Ring is the order of the keyboard.
func (s *benchScreen) Ring() *kit.Ring { return s.form.ring }

// Refresh shows the facts as they now are.
func (s *benchScreen) Refresh() {
	s.bench.Refresh()
	s.form.show(true)
}

// showResult follows every keystroke.
func (s *benchScreen) showResult() {
	for i, f := range s.bench.BigFigures() {
		s.figures[i].SetCaption(f.Caption, f.Unit)
		s.figures[i].Set(f.State, f.Value)
	}
	s.head.Refresh()
	s.tests.SetRows(s.bench.Rows())
	s.says.Set(s.bench.Sayings())
	s.reader.Refresh()
	setVisible(s.made, !s.pane.working)
	setVisible(s.working, s.pane.working)
	if s.pane.working {
		s.working.SetLines(s.bench.Working())
	}
	ruler := s.bench.Ruler()
	if bare := len(ruler.Marks) == 0; bare == s.ruler.Visible() {
		setVisible(s.ruler, !bare)
		s.sheet.Refresh()
	}
	s.ruler.Set(ruler.Marks, ruler.Bands...)
	s.window.commands.Refresh()
}

// turnWorking shows the working in place of what the bench says, or that again.
// Where the window is narrow, the form is the third in turn.
func (s *benchScreen) turnWorking() {
	s.pane.turn()
	s.working.ToTop()
	s.turned()
	s.showResult()
}

// turned shows what is now in front, and puts the keyboard there.
func (s *benchScreen) turned() {
	s.content.Refresh()
	s.nameToggle()
	if s.pane.narrow && s.pane.turned {
		s.form.ring.Focus("tests")
	} else if s.pane.narrow {
		s.form.focus(s.bench.First())
	}
}

// toForm brings the form to the front, and reports whether it was not.
func (s *benchScreen) toForm() bool {
	if !s.pane.toForm() {
		return false
	}
	s.content.Refresh()
	s.nameToggle()
	s.showResult()
	return true
}

// nameToggle names the button by what it brings to the front.
func (s *benchScreen) nameToggle() { s.toggle.SetText(s.pane.next(present.Say("Doubts"))) }
