package view

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/internal/slip"
	"tenthpoint/ui/kit"
	"tenthpoint/ui/model"
	"tenthpoint/ui/present"
)

// yardScreen is where trucks are received: the form of the load in hand, and
// beside it the slip as it will print.
type yardScreen struct {
	window *Window
	yard   *present.Yard
	load   *loadView

	figures               []*kit.Figure
	ruler                 *kit.MoistureRuler
	tenth                 *kit.Note
	slip                  *kit.SlipView
	lines                 []slip.PaperLine // what stands on the paper
	sheet                 *fyne.Container
	fields                *container.Scroll
	pane                  *formAndPaper
	content               *fyne.Container
	beside                *kit.SlipView     // the working, where the window is wide enough
	shown                 *present.LoadForm // the form that the entries hold
	issue, toggle, stored *kit.Button
}

func newYardScreen(f *present.Frame) Screen { return &yardScreen{yard: present.NewYard(f)} }

// Trucks, Here and Advice are what the sidebar shows of the yard.
func (s *yardScreen) Trucks() []present.YardRow { return s.yard.Rows() }
func (s *yardScreen) Here() string              { return s.yard.Here() }
func (s *yardScreen) Advice() string            { return s.yard.Advice() }

// WatchScale ends a wait for the scale in vain, EndWait any wait.
func (s *yardScreen) WatchScale() { s.yard.WatchScale() }
func (s *yardScreen) EndWait()    { s.yard.EndWait() }

// Build makes the screen's widgets.
func (s *yardScreen) Build(w *Window) fyne.CanvasObject {
	s.window = w
	s.ruler, s.slip, s.beside = kit.NewMoistureRuler(), kit.NewSlipView(), kit.NewSlipView()
	s.tenth = kit.NewNote()
	s.tenth.Lines = 3
	s.issue, s.toggle = w.commands.Button("load.issue"), w.commands.Button("load.working")
	s.issue.Importance = highImportance
	s.load = newLoadView(w, s.yard, s.showPaper, s.reveal)
	s.load.addLast("issue", s.issue)
	s.load.addLast("slip", s.slip)
	s.buildSheet()
	s.pane = &formAndPaper{
		fields: s.load.sheet, form: s.sheet, paper: s.slip, second: s.beside, share: paperShare, most: mostPaper,
		head: s.buildFigures(), buttons: s.buttons(), onNarrow: s.nameToggle,
	}
	s.content = container.New(s.pane, s.pane.objects()...)
	s.load.sheet.whisper = s.window.whisper
	s.load.grown, s.load.toForm = s.content.Refresh, s.toForm
	s.load.show(true)
	return s.content
}

// paperShare is what the slip has of a hundred.
const paperShare = 40

// buildSheet is the form: the fields over the ruler.
func (s *yardScreen) buildSheet() {
	s.fields = container.NewVScroll(container.New(slim{}, s.load.sheet.content))
	s.sheet = container.New(formSheet{s.load.sheet, s.ruler}, s.fields, container.NewStack(s.ruler))
}

// buildFigures are the large figures with what a tenth of a point is worth.
func (s *yardScreen) buildFigures() fyne.CanvasObject {
	figures := container.New(fitting{})
	for i, f := range s.yard.Form().BigFigures() {
		figure := kit.NewFigure(f.Caption, f.Unit)
		figure.Chars = figureChars[i]
		s.figures = append(s.figures, figure)
		figures.Add(figure)
	}
	figures.Add(s.tenth)
	return container.NewStack(newGround(kit.ColorPanel), container.New(slim{}, figures))
}

// figureChars is the room for net, quantity and money, in figures.
var figureChars = []int{6, 8, 9}

// buttons are the acts that end a load, under the slip.
func (s *yardScreen) buttons() *fyne.Container {
	c := s.window.commands
	s.stored = c.Button("load.tare")
	refuse := c.Button("load.refuse")
	for _, b := range []*kit.Button{s.stored, s.toggle, refuse} {
		b.Key = "" // there is no room for it in large letters
	}
	return container.New(&endings{rows: []int{3}}, s.issue, s.stored, s.toggle, refuse)
}

// Show puts the keyboard on the first field still to be filled.
func (s *yardScreen) Show() { s.load.focus() }

// Hint says what keys carry the work.
func (s *yardScreen) Hint() string {
	return present.Say("Enter goes on. F12 issues the ticket, Ctrl+N takes the next truck, F1 helps.")
}

// Ring is the order of the keyboard: the fields as the work goes, the ticket,
// the slip.
func (s *yardScreen) Ring() *kit.Ring { return s.load.ring }

// Refresh shows the facts as they now are. When another load came in hand
// since, as after a refusal, the keyboard follows it.
func (s *yardScreen) Refresh() {
	s.yard.Refresh()
	other := s.shown != s.yard.Form()
	if other {
		s.slip.ToTop()
	}
	s.load.show(other)
	if other {
		s.shown = s.yard.Form()
		s.load.focus()
	}
}

// showPaper follows every keystroke: slip, figures, ruler.
func (s *yardScreen) showPaper() {
	form := s.yard.Form()
	for i, f := range form.BigFigures() {
		s.figures[i].SetCaption(f.Caption, f.Unit)
		s.figures[i].Set(f.State, f.Value)
	}
	s.lines = form.Slip()
	if s.pane.working {
		s.lines = form.Working()
	}
	s.slip.SetLines(s.lines)
	if s.beside.Visible() {
		s.beside.SetLines(form.Working())
	}
	s.reveal(s.load.ring.Current())
	margin := form.Margin()
	s.tenth.Say(margin.State, margin.Text)
	s.showRuler(form.Ruler())
	s.window.commands.Refresh()
	if can := form.CanUseStoredTare(); can != s.stored.Visible() {
		setVisible(s.stored, can)
		s.pane.buttons.Refresh()
	}
	s.window.rail.showTrucks(s.Trucks())
}

// turnPaper shows the working in place of the slip, or the slip again. Where the
// window is narrow, the form is the third in turn.
func (s *yardScreen) turnPaper() {
	s.pane.turn()
	s.slip.ToTop()
	s.showPaper()
	s.content.Refresh()
	s.nameToggle()
	if s.pane.narrow && s.pane.turned {
		s.load.ring.Focus("slip")
	} else if s.pane.narrow {
		s.load.focus()
	}
}

// toForm brings the form to the front, and reports whether it was not.
func (s *yardScreen) toForm() bool {
	if !s.pane.toForm() {
		return false
	}
	s.content.Refresh()
	s.nameToggle()
	return true
}

// nameToggle names the button by what it brings to the front.
func (s *yardScreen) nameToggle() { s.toggle.SetText(s.pane.next(present.Say("Slip"))) }

// reveal brings the line into sight that stands for the field in hand, and
// where the letters are large the field itself. Of several lines the last is
// meant: the first only sums up.
func (s *yardScreen) reveal(field string) {
	for i := len(s.lines) - 1; i >= 0 && field != ""; i-- {
		if s.lines[i].Field == field {
			s.slip.Reveal(i)
			break
		}
	}
	if row := s.load.rows[field]; row != nil {
		s.scrollTo(row)
	}
}

// scrollTo scrolls the form no further than needed to have a row in sight.
func (s *yardScreen) scrollTo(row *formRow) {
	top, high, room := row.Position().Y, row.Size().Height, s.fields.Size().Height
	switch {
	case top < s.fields.Offset.Y:
		s.fields.ScrollToOffset(fyne.NewPos(0, top))
	case top+high > s.fields.Offset.Y+room:
		s.fields.ScrollToOffset(fyne.NewPos(0, top+high+2*slimGap-room))
	}
}

func (s *yardScreen) showRuler(r model.Ruler) {
	if bare := len(r.Marks) == 0; bare == s.ruler.Visible() {
		setVisible(s.ruler, !bare)
		s.sheet.Refresh()
	}
	s.ruler.Set(r.Marks, r.Bands...)
}

// TakeTruck puts a truck in hand, from wherever one is.
func (s *yardScreen) TakeTruck(id string) {
	s.yard.Take(id)
	s.inHand()
}

// inHand shows the form in hand and puts the keyboard in it.
func (s *yardScreen) inHand() {
	if !s.window.isFront(0) {
		s.window.Go("yard")
	}
	s.load.show(true)
	s.shown = s.form()
	s.load.focus()
	s.window.rail.show()
}

// toAnother takes another truck in hand. What the status line told was of the
// one before.
func (s *yardScreen) toAnother(take func()) {
	take()
	s.window.Say(model.Plain, "")
	s.inHand()
}
