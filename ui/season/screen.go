package season

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/charts"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
	"tenthpoint/ui/widgets/status"
)

// Screen is the wall of pictures. Where there is no room for all of them, two are in front.
type Screen struct {
	window *shell.Window
	season *Season

	headline   *status.Text
	frames     []*frame
	wall       *fyne.Container
	front      *int // the pair in front, where there is no room for all
	turns      []*widgets.Button
	focusOrder *widgets.FocusOrder
}

// NewScreen makes the screen of a session.
func NewScreen(f *session.Session) shell.Screen {
	return &Screen{season: NewSeason(f), front: new(int)}
}

// pairs are the pictures two by two, with the key of each pair.
var pairs = []struct {
	id, title string
	key       fyne.KeyName
}{{"season.grain", "Grain", fyne.Key1}, {"season.trucks", "Trucks", fyne.Key2}, {"season.house", "House", fyne.Key3}}

var acts = []shell.ActRow[*Season]{
	{ID: "season.moistures", Title: "Grain of the moistures", Key: widgets.Ctrl(fyne.KeyG), When: (*Season).HasRead, Why: "The season is still being added up.", Do: (*Season).AskGrain},
	{ID: "season.days", Title: "Other days", Key: widgets.Ctrl(fyne.KeyU), Do: (*Season).AskDays},
	{ID: "season.print", Title: "Print", Key: widgets.Ctrl(fyne.KeyP), Icon: apptheme.IconPrint, When: (*Season).HasRead, Why: "The season is still being added up.", Do: (*Season).Print},
	{ID: "season.export", Title: "Export", Key: widgets.Ctrl(fyne.KeyE), When: (*Season).HasRead, Why: "The season is still being added up.", Do: (*Season).Export},
	{ID: "season.before", Title: "Day before", Key: widgets.Alt(fyne.KeyLeft), When: (*Season).HasRead, Why: "The season is still being added up.", Do: func(s *Season) { s.Step(-1) }, Break: true, MenuOnly: true},
	{ID: "season.after", Title: "Day after", Key: widgets.Alt(fyne.KeyRight), When: (*Season).HasRead, Why: "The season is still being added up.", Do: func(s *Season) { s.Step(+1) }, MenuOnly: true},
}

// Acts are the actions of a season, and the turns to its pairs of pictures.
func (s *Screen) Acts() []shell.Act {
	group := s.season.session.Say("Season")
	out := shell.ActsOf(s.season.session.Language, s.season, group, acts)
	for i, pair := range pairs {
		turn := shell.ActRow[*Screen]{ID: pair.id, Title: pair.title, Key: widgets.Alt(pair.key), Do: func(s *Screen) { s.turn(i) }, Break: i == 0, MenuOnly: true}
		out = append(out, shell.ActsOf(s.season.session.Language, s, group, []shell.ActRow[*Screen]{turn})...)
	}
	return out
}

// Build makes the screen's widgets.
func (s *Screen) Build(w *shell.Window) fyne.CanvasObject {
	s.window = w
	s.focusOrder = widgets.NewFocusOrder(w.UI)
	s.headline = status.NewText()
	turns := container.New(shell.Spread{})
	for _, pair := range pairs {
		b := w.Commands.Button(pair.id)
		s.turns = append(s.turns, b)
		s.focusOrder.Add("turn."+pair.id, b)
		turns.Add(b)
	}
	var contents []fyne.CanvasObject
	for n := range 2 * len(pairs) {
		f := newFrame(func(column int) { s.season.Open(n, column) })
		s.frames = append(s.frames, f)
		s.focusOrder.Add(fmt.Sprint("picture ", n+1), f.chooser)
		contents = append(contents, f.content)
	}
	s.wall = container.New(wall{s.front}, contents...)
	buttons := shell.ButtonRow(w, s.focusOrder, shell.ButtonsOf(s.Acts()))
	head := container.NewVBox(shell.Titled(w.Session.Say("Season"), s.headline), turns)
	return container.NewBorder(head, buttons, nil, nil, s.wall)
}

// turn brings a pair of pictures to the front, and the keyboard to the first of them.
func (s *Screen) turn(to int) {
	*s.front = to
	s.wall.Refresh()
	s.show()
	s.focusOrder.Focus(fmt.Sprint("picture ", 2*to+1))
}

// Show moves the keyboard to the first picture in front.
func (s *Screen) Show() { s.focusOrder.Focus(fmt.Sprint("picture ", 2**s.front+1)) }

// Hint returns the main keys of the screen.
func (s *Screen) Hint() string {
	return s.season.session.Say("Arrows go along a picture, Enter opens the tickets of a column. Alt+1 to Alt+3 turn to other pictures, Alt+Left and Alt+Right to another day.")
}

// FocusOrder returns the tab order.
func (s *Screen) FocusOrder() *widgets.FocusOrder { return s.focusOrder }

// Refresh shows the current facts.
func (s *Screen) Refresh() {
	s.season.Refresh()
	s.show()
}

func (s *Screen) show() {
	s.headline.Say(model.Plain, s.season.Headline())
	pictures := s.season.Pictures()
	for i, f := range s.frames {
		if i < len(pictures) {
			f.set(pictures[i])
		} else {
			f.set(model.Picture{Empty: s.season.session.Say("The season is still being added up.")})
		}
	}
	for i, b := range s.turns {
		b.SetCurrent(i == *s.front)
	}
	s.window.Commands.Refresh()
}

// frame is a picture under its title and its sentence, which tells of a chosen column.
type frame struct {
	title   *widgets.Heading
	says    *status.Text
	columns *charts.Columns
	chooser *widgets.Chooser
	content *fyne.Container
	picture model.Picture
}

func newFrame(open func(column int)) *frame {
	f := &frame{title: widgets.NewHeading(""), says: status.NewText(), columns: charts.NewColumns()}
	f.says.Lines = 3
	f.chooser = widgets.NewChooser(f.columns)
	f.chooser.OnChoose, f.chooser.OnOpen = func(int) { f.tell() }, open
	f.content = container.New(shell.Margin{}, container.NewBorder(container.NewVBox(f.title, f.says), nil, nil, nil, f.chooser))
	return f
}

func (f *frame) set(p model.Picture) {
	f.picture = p
	f.title.SetText(p.Title)
	f.chooser.Name = p.Title
	f.columns.Set(p)
	f.tell()
}

// tell says the picture in a sentence, or its chosen column.
func (f *frame) tell() {
	says := f.picture.Says
	if n := f.columns.Chosen(); n >= 0 && n < len(f.picture.Stacks) {
		says = f.picture.Stacks[n].Said
	}
	f.chooser.Says = says
	f.says.Say(model.Plain, says)
}
