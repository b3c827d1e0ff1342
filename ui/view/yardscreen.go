package view

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/kit"
	"tenthpoint/ui/present"
)

// yardScreen is where trucks are received: the form of the load in hand, and
// beside it the slip as it will print.
type yardScreen struct {
	window *Window
	yard   *present.Yard
	load   *loadView

	figures []*kit.Figure
	ruler   *kit.MoistureRuler
	tenth   *label
	slip    *kit.SlipView
	working bool // the paper shows the working in place of the slip
	issue   *kit.Button
}

func newYardScreen(f *present.Frame) Screen { return &yardScreen{yard: present.NewYard(f)} }

// yard is the yard screen of the window, which the rail shows too.
func (w *Window) yard() *yardScreen { return w.screens[0].(*yardScreen) }

func (s *yardScreen) rows() []present.YardRow { return s.yard.Rows() }
func (s *yardScreen) here() string            { return s.yard.Here() }

// Build makes the screen's widgets.
func (s *yardScreen) Build(w *Window) fyne.CanvasObject {
	s.window = w
	s.ruler, s.slip = kit.NewMoistureRuler(), kit.NewSlipView()
	s.tenth = newLabel("", ordinary)
	s.issue = w.commands.Button("load.issue")
	s.issue.Importance = highImportance
	s.load = newLoadView(w, s.yard, s.showPaper)
	s.load.addLast("issue", s.issue)
	s.load.addLast("slip", s.slip)
	figures := container.NewHBox()
	for _, f := range s.yard.Form().BigFigures() {
		figure := kit.NewFigure(f.Caption, f.Unit)
		s.figures = append(s.figures, figure)
		figures.Add(figure)
	}
	s.load.show(true)
	foot := container.NewBorder(s.tenth, nil, nil, nil, s.ruler)
	form := container.NewBorder(figures, foot, nil, nil, container.NewVScroll(s.load.content))
	paper := container.NewBorder(nil, s.buttons(), nil, nil, s.slip)
	return container.New(formAndPaper{}, form, paper)
}

// buttons are the acts that end a load, under the slip.
func (s *yardScreen) buttons() fyne.CanvasObject {
	c := s.window.commands
	return container.NewBorder(nil, nil, nil, container.NewHBox(c.Button("load.working"), c.Button("load.refuse")), s.issue)
}

// Show puts the keyboard on the first field still to be filled.
func (s *yardScreen) Show() { s.load.focus() }

// Ring is the order of the keyboard: the fields as the work goes, the ticket,
// the slip.
func (s *yardScreen) Ring() *kit.Ring { return s.load.ring }

// Refresh shows the facts as they now are.
func (s *yardScreen) Refresh() {
	s.yard.Refresh()
	s.load.show(false)
}

// showPaper follows every keystroke: slip, figures, ruler.
func (s *yardScreen) showPaper() {
	form := s.yard.Form()
	for i, f := range form.BigFigures() {
		s.figures[i].SetCaption(f.Caption, f.Unit)
		s.figures[i].Set(kit.State(f.State), f.Value)
	}
	lines := form.Slip()
	if s.working {
		lines = form.Working()
	}
	s.slip.SetLines(paper(lines))
	s.tenth.say(form.TenthWorth())
	s.showRuler(form.Ruler())
	s.window.commands.Refresh()
}

func (s *yardScreen) showRuler(r present.Ruler) {
	marks := make([]kit.RulerMark, len(r.Marks))
	for i, m := range r.Marks {
		marks[i] = kit.RulerMark{Label: m.Label, At: m.At, Kind: kit.RulerMarkKind(m.Kind), State: kit.State(m.State)}
	}
	if r.DryTo > r.DryFrom {
		s.ruler.Set(marks, kit.RulerBand{From: r.DryFrom, To: r.DryTo, Label: r.DryLabel})
		return
	}
	s.ruler.Set(marks)
}

// paper is a presenter's slip as the kit takes it.
func paper(lines []present.PaperLine) []kit.PaperLine {
	out := make([]kit.PaperLine, len(lines))
	for i, l := range lines {
		out[i] = kit.PaperLine{Kind: kit.PaperKind(l.Kind), Left: l.Left, Right: l.Right, Note: l.Note, Picture: l.Picture}
	}
	return out
}

// take puts a truck in hand, from wherever one is.
func (s *yardScreen) take(id string) {
	s.yard.Take(id)
	s.inHand()
}

// inHand shows the form in hand and puts the keyboard in it.
func (s *yardScreen) inHand() {
	if !s.window.isFront(0) {
		s.window.Go("yard")
	}
	s.load.show(true)
	s.load.focus()
	s.window.rail.show()
}

// Acts are everything a person can do with a load.
func (s *yardScreen) Acts() []Act {
	group := present.Say("Load")
	acts := []Act{
		{Everywhere: true, Command: kit.Command{ID: "load.new", Title: present.Say("New truck"), Group: group, Icon: kit.IconTruck, Keys: []kit.Key{kit.Ctrl(fyne.KeyN)},
			Do: func() { s.yard.TakeNew(); s.inHand() }}},
		{Command: kit.Command{ID: "load.issue", Title: present.Say("Issue and print"), Group: group, Icon: kit.IconPrint, Keys: []kit.Key{kit.Bare(fyne.KeyF12)},
			EnabledWhen: func() bool { return s.yard.Form().CanIssue() },
			WhyNot:      func() string { return s.yard.Form().WhyNotIssue() },
			Do: func() {
				if s.yard.Issue() {
					s.inHand()
				}
			}}},
		{Command: kit.Command{ID: "load.tare", Title: present.Say("Use stored tare"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyT)},
			EnabledWhen: func() bool { return s.yard.Form().CanUseStoredTare() },
			WhyNot:      func() string { return present.Say("This truck has no stored tare.") },
			Do:          func() { s.try(s.yard.Form().UseStoredTare()); s.inHand() }}},
		{Command: kit.Command{ID: "load.refuse", Title: present.Say("Refuse"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyR)},
			EnabledWhen: func() bool { return s.yard.Form().ID() != "" },
			WhyNot:      func() string { return present.Say("There is no load in hand to refuse.") },
			Do:          func() { s.yard.Refuse(); s.inHand() }}},
		{Command: kit.Command{ID: "load.working", Title: present.Say("Working"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyW)},
			Do: func() { s.working = !s.working; s.showPaper() }}},
	}
	return append(acts, s.places()...)
}

// places are the keys of the trucks on the yard.
func (s *yardScreen) places() []Act {
	keys := []fyne.KeyName{fyne.KeyF2, fyne.KeyF3, fyne.KeyF4, fyne.KeyF5, fyne.KeyF6, fyne.KeyF7, fyne.KeyF8, fyne.KeyF9}
	var acts []Act
	for place, key := range keys {
		acts = append(acts, Act{Everywhere: true, Command: kit.Command{
			ID: fmt.Sprintf("yard.%d", place+1), Title: present.Say("Truck at place %d", place+1), Group: present.Say("Yard"), Keys: []kit.Key{kit.Bare(key)},
			EnabledWhen: func() bool { return s.yard.IsTaken(place) },
			WhyNot:      func() string { return present.Say("No truck stands at place %d.", place+1) },
			Do: func() {
				if s.yard.TakePlace(place) {
					s.inHand()
				}
			},
		}})
	}
	return acts
}

// try says what went wrong, if anything did.
func (s *yardScreen) try(err error) {
	if err != nil {
		s.window.frame.Fail(err)
	}
}

// formAndPaper sets the form at the left and the paper at the right, the paper
// as wide as a slip needs and wider where there is room.
type formAndPaper struct{}

// paperFigures is the least width of the paper in figures.
const paperFigures = 42

func (formAndPaper) paper(width float32) float32 {
	return max(wide{paperFigures}.width(), width*2/5)
}

func (l formAndPaper) MinSize(objects []fyne.CanvasObject) fyne.Size {
	form := objects[0].MinSize()
	return fyne.NewSize(form.Width+wide{paperFigures}.width(), form.Height)
}

func (l formAndPaper) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	gap := margin{}.gap() * 2
	paper := l.paper(size.Width)
	objects[0].Resize(fyne.NewSize(size.Width-paper-gap, size.Height))
	objects[1].Move(fyne.NewPos(size.Width-paper, 0))
	objects[1].Resize(fyne.NewSize(paper, size.Height))
}
