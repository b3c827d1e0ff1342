package lab

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/charts"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paperview"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
	"tenthpoint/ui/widgets/status"
)

// BenchScreen is the screen of the sample bench: the test being typed at the left with the moisture
// ruler under it, and the result at the right.
type BenchScreen struct {
	window *shell.Window
	Bench  *Bench
	shown  *shownSample
	Form   *shell.FieldForm

	figures []*widgets.Figure
	Tests   *widgets.Table
	says    *status.List
	reader  *widgets.Reader
	made    *fyne.Container // the tests and remarks
	working *paperview.SlipView
	ruler   *charts.MoistureRuler
	sheet   *fyne.Container // the form over the ruler
	pane    *shell.FormAndPaper
	head    *fyne.Container // the large figures
	content *fyne.Container
	write   *widgets.Button
	toggle  *widgets.Button
}

// NewBenchScreen makes the screen with the bench as it was before the program
// stopped.
func NewBenchScreen(f *session.Session) shell.Screen {
	b := NewBench(f)
	return &BenchScreen{Bench: b, shown: &shownSample{bench: b, now: b.Result()}}
}

// shownSample is the current sample as shown. Texts go to the bench, which returns one value:
// everything drawn reads that value.
type shownSample struct {
	bench *Bench
	now   Result
}

func (s *shownSample) read() { s.now = s.bench.Result() }

func (s *shownSample) Fields() []model.Field { return s.now.Fields }

func (s *shownSample) Type(id, text string) {
	s.bench.Type(id, text)
	s.read()
}

func (s *shownSample) Enter(id string) (next string) {
	next = s.bench.Enter(id)
	s.read()
	return next
}

func (s *shownSample) Restore(id string) bool {
	changed := s.bench.Restore(id)
	s.read()
	return changed
}

// Build makes the screen's widgets.
func (s *BenchScreen) Build(w *shell.Window) fyne.CanvasObject {
	s.window = w
	s.ruler, s.working = charts.NewMoistureRuler(), paperview.NewSlipView()
	s.Tests = widgets.NewTable([]model.Column{
		{Title: w.Session.Say("No"), Width: 3},
		{Title: w.Session.Say("Result"), Width: 8, Figures: true},
		{Title: w.Session.Say("How"), Width: 12, Grow: true, Drop: 1},
		{Title: w.Session.Say("Stands"), Width: 9, State: true},
	})
	s.Tests.Empty = w.Session.Say("No test yet. Each one is listed here, also those left out.")
	s.says = status.NewList()
	s.reader = widgets.NewReader(s.says)
	s.write, s.toggle = w.Commands.Button("bench.write"), w.Commands.Button("bench.working")
	s.write.Importance = shell.HighImportance
	s.Form = shell.NewFieldForm(w, s.shown, s.showResult)
	s.Form.AddLast("write", s.write)
	s.Form.AddLast("tests", s.Tests)
	s.Form.AddLast("says", s.reader)
	fields := container.NewVScroll(container.New(shell.Slim(), s.Form.Sheet.Content))
	s.sheet = container.New(shell.FormSheet{Fields: s.Form.Sheet, Ruler: s.ruler}, fields, container.NewStack(s.ruler))
	s.buildResult()
	s.Form.Sheet.Hint = s.window.ShowHint
	s.Form.Grown, s.Form.ToForm = s.content.Refresh, s.toForm
	s.show()
	return s.content
}

// buildResult builds the large figures, the tests and remarks, and the buttons beside the form.
func (s *BenchScreen) buildResult() {
	c := s.window.Commands
	figures := container.NewHBox()
	s.head = figures
	for i, f := range s.shown.now.Figures {
		figure := widgets.NewFigure(f.Caption, f.Unit)
		figure.Chars = benchChars[i]
		s.figures = append(s.figures, figure)
		figures.Add(figure)
		if i < len(benchChars)-1 {
			figures.Add(layout.NewSpacer())
		}
	}
	s.made = container.NewBorder(container.New(shell.High{Lines: 5}, s.Tests), nil, nil, nil, s.reader)
	s.pane = &shell.FormAndPaper{
		Fields: s.Form.Sheet, Form: s.sheet, Paper: container.NewStack(s.made, s.working), Share: resultShare, OverPaper: true,
		Head: container.NewStack(shell.NewGround(apptheme.ColorPanel), container.New(shell.Margin{}, figures)),
		Buttons: container.New(&shell.Endings{Rows: []int{3, 2}}, s.write,
			c.Button("bench.leave"), s.toggle, c.Button("bench.through"), c.Button("go.meters"), c.Button("go.samples")),
		OnNarrow: s.nameToggle,
	}
	s.content = container.New(s.pane, s.pane.Objects()...)
}

// resultShare is the result's part of the width, in percent.
const resultShare = 45

// benchChars is the least room for moisture, spread and tests, in figures.
var benchChars = []int{4, 4, 2}

// Show moves the focus to where work begins: on the load, or on the first figure of the next test.
func (s *BenchScreen) Show() {
	s.Bench.Begin()
	s.showFirst()
}

// show updates every entry to the current sample.
func (s *BenchScreen) show() {
	s.shown.read()
	s.Form.Show(true)
}

// showFirst does the same, with the focus on the field to begin with.
func (s *BenchScreen) showFirst() {
	s.show()
	s.Form.Focus(s.Bench.First())
}

// Hint returns the main keys of the screen.
func (s *BenchScreen) Hint() string { return s.Bench.Hint() }

// FocusOrder returns the tab order.
func (s *BenchScreen) FocusOrder() *widgets.FocusOrder { return s.Form.FocusOrder }

// Refresh shows the facts as they now are.
func (s *BenchScreen) Refresh() {
	s.Bench.Refresh()
	s.show()
}

// showResult follows every keystroke.
func (s *BenchScreen) showResult() {
	now := s.shown.now
	for i, f := range now.Figures {
		s.figures[i].SetCaption(f.Caption, f.Unit)
		s.figures[i].Set(f.State, f.Value)
	}
	s.head.Refresh()
	s.Tests.SetRows(now.Tests)
	s.says.Set(now.Statuses)
	s.reader.Refresh()
	shell.SetVisible(s.made, !s.pane.Working)
	shell.SetVisible(s.working, s.pane.Working)
	if s.pane.Working {
		s.working.SetLines(now.Working(s.window.Session.Language))
	}
	ruler := now.Ruler
	if bare := len(ruler.Marks) == 0; bare == s.ruler.Visible() {
		shell.SetVisible(s.ruler, !bare)
		s.sheet.Refresh()
	}
	s.ruler.Set(ruler.Marks, ruler.Bands...)
	s.window.Commands.Refresh()
}

// turnWorking toggles between the working and the remarks. Where the window is narrow, the form is
// the third in turn.
func (s *BenchScreen) turnWorking() {
	s.pane.Turn()
	s.working.ToTop()
	s.turned()
	s.showResult()
}

// turned shows the part now in front, and focuses it.
func (s *BenchScreen) turned() {
	s.content.Refresh()
	s.nameToggle()
	if s.pane.Narrow && s.pane.Turned {
		s.Form.FocusOrder.Focus("tests")
	} else if s.pane.Narrow {
		s.Form.Focus(s.Bench.First())
	}
}

// toForm brings the form to the front, and reports whether that changed anything.
func (s *BenchScreen) toForm() bool {
	if !s.pane.ToForm() {
		return false
	}
	s.content.Refresh()
	s.nameToggle()
	s.showResult()
	return true
}

// nameToggle labels the button with the part it brings to the front.
func (s *BenchScreen) nameToggle() {
	s.toggle.SetText(s.pane.Next(s.Bench.session.Language, s.Bench.session.Say("Flags")))
}
