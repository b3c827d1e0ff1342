package yard

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/charts"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paperview"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// Screen is where trucks are received: the form of the load in hand, and
// beside it the slip as it will print.
type Screen struct {
	window *shell.Window
	Yard   *Yard
	Load   *loadView

	Figures               []*widgets.Figure
	ruler                 *charts.MoistureRuler
	tenth                 *widgets.Note
	Slip                  *paperview.SlipView
	sheet                 *fyne.Container
	Fields                *container.Scroll
	Pane                  *shell.FormAndPaper
	content               *fyne.Container
	beside                *paperview.SlipView // the working, where the window is wide enough
	shown                 *LoadForm           // the form that the entries hold
	issue, Toggle, stored *widgets.Button
}

func NewScreen(f *session.Session) shell.Screen { return &Screen{Yard: NewYard(f)} }

// Trucks, Here and Advice are what the sidebar shows of the yard.
func (s *Screen) Trucks() []model.TruckRow { return s.Yard.Rows() }
func (s *Screen) Here() string             { return s.Yard.Here() }
func (s *Screen) Advice() string           { return s.Yard.Advice() }

// WatchScale ends a wait for the scale in vain, EndWait any wait.
func (s *Screen) WatchScale() { s.Yard.WatchScale() }
func (s *Screen) EndWait()    { s.Yard.EndWait() }

// Build makes the screen's widgets.
func (s *Screen) Build(w *shell.Window) fyne.CanvasObject {
	s.window = w
	s.ruler, s.Slip, s.beside = charts.NewMoistureRuler(), paperview.NewSlipView(), paperview.NewSlipView()
	s.tenth = widgets.NewNote()
	s.tenth.Lines = 3
	s.issue, s.Toggle = w.Commands.Button("load.issue"), w.Commands.Button("load.working")
	s.issue.Importance = shell.HighImportance
	s.Load = newLoadView(w, s.Yard, s.showPaper, s.reveal)
	s.Load.AddLast("issue", s.issue)
	s.Load.AddLast("slip", s.Slip)
	s.buildSheet()
	s.Pane = &shell.FormAndPaper{
		Fields: s.Load.Sheet, Form: s.sheet, Paper: s.Slip, Second: s.beside, Share: paperShare, Most: shell.MostPaper,
		Head: s.buildFigures(), Buttons: s.buttons(), OnNarrow: s.nameToggle,
	}
	s.content = container.New(s.Pane, s.Pane.Objects()...)
	s.Load.Sheet.Hint = s.window.ShowHint
	s.Load.Grown, s.Load.ToForm = s.content.Refresh, s.toForm
	s.Load.Show(true)
	return s.content
}

// paperShare is what the slip has of a hundred.
const paperShare = 40

// buildSheet is the form: the fields over the ruler.
func (s *Screen) buildSheet() {
	s.Fields = container.NewVScroll(container.New(shell.Slim(), s.Load.Sheet.Content))
	s.sheet = container.New(shell.FormSheet{Fields: s.Load.Sheet, Ruler: s.ruler}, s.Fields, container.NewStack(s.ruler))
}

// buildFigures are the large figures with what a tenth of a point is worth.
func (s *Screen) buildFigures() fyne.CanvasObject {
	figures := container.New(shell.Fitting{})
	for i, f := range s.Yard.Form().BigFigures() {
		figure := widgets.NewFigure(f.Caption, f.Unit)
		figure.Chars = figureChars[i]
		s.Figures = append(s.Figures, figure)
		figures.Add(figure)
	}
	figures.Add(s.tenth)
	return container.NewStack(shell.NewGround(apptheme.ColorPanel), container.New(shell.Slim(), figures))
}

// figureChars is the room for net, quantity and money, in figures.
var figureChars = []int{6, 8, 9}

// buttons are the acts that end a load, under the slip.
func (s *Screen) buttons() *fyne.Container {
	c := s.window.Commands
	s.stored = c.Button("load.tare")
	refuse := c.Button("load.refuse")
	for _, b := range []*widgets.Button{s.stored, s.Toggle, refuse} {
		b.Key = "" // there is no room for it in large letters
	}
	return container.New(&shell.Endings{Rows: []int{3}}, s.issue, s.stored, s.Toggle, refuse)
}

// Show puts the keyboard on the first field still to be filled.
func (s *Screen) Show() { s.Load.focus() }

// Hint says what keys carry the work.
func (s *Screen) Hint() string {
	return session.Say("Enter goes on. F12 issues the ticket, Ctrl+N takes the next truck, F1 helps.")
}

// Ring is the order of the keyboard: the fields as the work goes, the ticket,
// the slip.
func (s *Screen) Ring() *widgets.FocusOrder { return s.Load.Ring }

// Refresh shows the facts as they now are. When another load came in hand
// since, as after a refusal, the keyboard follows it.
func (s *Screen) Refresh() {
	s.Yard.Refresh()
	other := s.shown != s.Yard.Form()
	if other {
		s.Slip.ToTop()
	}
	s.Load.Show(other)
	if other {
		s.shown = s.Yard.Form()
		s.Load.focus()
	}
}

// showPaper follows every keystroke: slip, figures, ruler.
func (s *Screen) showPaper() {
	form := s.Yard.Form()
	for i, f := range form.BigFigures() {
		s.Figures[i].SetCaption(f.Caption, f.Unit)
		s.Figures[i].Set(f.State, f.Value)
	}
	if s.Pane.Working {
		s.Slip.SetLines(form.Working())
	} else {
		s.Slip.SetPages(session.SlipPages(form.Slip()))
	}
	if s.beside.Visible() {
		s.beside.SetLines(form.Working())
	}
	s.reveal(s.Load.Ring.Current())
	margin := form.Margin()
	s.tenth.Say(margin.State, margin.Text)
	s.showRuler(form.Ruler())
	s.window.Commands.Refresh()
	if can := form.CanUseStoredTare(); can != s.stored.Visible() {
		shell.SetVisible(s.stored, can)
		s.Pane.Buttons.Refresh()
	}
	s.window.Sidebar.ShowTrucks(s.Trucks())
}

// turnPaper shows the working in place of the slip, or the slip again. Where the
// window is narrow, the form is the third in turn.
func (s *Screen) turnPaper() {
	s.Pane.Turn()
	s.Slip.ToTop()
	s.showPaper()
	s.content.Refresh()
	s.nameToggle()
	if s.Pane.Narrow && s.Pane.Turned {
		s.Load.Ring.Focus("slip")
	} else if s.Pane.Narrow {
		s.Load.focus()
	}
}

// toForm brings the form to the front, and reports whether it was not.
func (s *Screen) toForm() bool {
	if !s.Pane.ToForm() {
		return false
	}
	s.content.Refresh()
	s.nameToggle()
	return true
}

// nameToggle names the button by what it brings to the front.
func (s *Screen) nameToggle() { s.Toggle.SetText(s.Pane.Next(session.Say("Slip"))) }

// reveal brings the place on the slip into sight that stands for the field the
// keyboard is on, and where the letters are large the field itself.
func (s *Screen) reveal(field string) {
	s.Slip.Reveal(field)
	if row := s.Load.Rows[field]; row != nil {
		s.scrollTo(row)
	}
}

// scrollTo scrolls the form no further than needed to have a row in sight.
func (s *Screen) scrollTo(row *shell.FormRow) {
	top, high, room := row.Position().Y, row.Size().Height, s.Fields.Size().Height
	switch {
	case top < s.Fields.Offset.Y:
		s.Fields.ScrollToOffset(fyne.NewPos(0, top))
	case top+high > s.Fields.Offset.Y+room:
		s.Fields.ScrollToOffset(fyne.NewPos(0, top+high+2*shell.SlimGap-room))
	}
}

func (s *Screen) showRuler(r model.Ruler) {
	if bare := len(r.Marks) == 0; bare == s.ruler.Visible() {
		shell.SetVisible(s.ruler, !bare)
		s.sheet.Refresh()
	}
	s.ruler.Set(r.Marks, r.Bands...)
}

// TakeTruck puts a truck in hand, from wherever one is.
func (s *Screen) TakeTruck(id string) {
	s.Yard.Take(id)
	s.inHand()
}

// inHand shows the form in hand and puts the keyboard in it.
func (s *Screen) inHand() {
	if !s.window.IsFront(0) {
		s.window.Go("yard")
	}
	s.Load.Show(true)
	s.shown = s.Form()
	s.Load.focus()
	s.window.Sidebar.Show()
}

// toAnother takes another truck in hand. What the status line told was of the
// one before.
func (s *Screen) toAnother(take func()) {
	take()
	s.window.Say(model.Plain, "")
	s.inHand()
}
