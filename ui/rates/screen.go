package rates

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/model"
	"tenthpoint/ui/paperview"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// Screen is the list of editions at the left, and at the right what the
// chosen one says and does.
type Screen struct {
	window *shell.Window
	Rates  *Rates

	List     *widgets.Table
	headline *widgets.Note
	Paper    *paperview.SlipView
	Trial    *widgets.Table
	Compared *widgets.Table
	Told     *widgets.Note
	bodies   *fyne.Container
	right    *fyne.Container
	turns    map[RatesView]*widgets.Button
	ring     *widgets.FocusOrder
}

func NewScreen(f *session.Session) shell.Screen {
	return &Screen{Rates: NewRates(f), turns: map[RatesView]*widgets.Button{}}
}

// Build makes the list and what stands beside it.
func (s *Screen) Build(w *shell.Window) fyne.CanvasObject {
	s.window = w
	s.List = s.buildList()
	s.headline, s.Told = widgets.NewNote(), widgets.NewNote()
	s.headline.Lines, s.Told.Lines = 2, 3
	s.Paper = paperview.NewSlipView()
	s.Trial = widgets.NewTable(nil)
	s.Trial.OnChoose = func(_ int, key string) { s.Told.Say(model.Plain, s.Rates.TrialSaid(key)) }
	s.Compared = widgets.NewTable(nil)
	s.Compared.OnChoose = func(_ int, key string) { s.Told.Say(model.Plain, s.Rates.ComparedSaid(key)) }
	for _, table := range []*widgets.Table{s.Trial, s.Compared} {
		table.Small = true
		table.Empty = session.Say("Nothing can be worked out. What stands in the way is said above.")
	}
	s.ring = widgets.NewFocusOrder(w.Stage)
	s.ring.Add("list", s.List)
	s.ring.Add("paper", s.Paper)
	s.ring.Add("trial", s.Trial)
	s.ring.Add("compared", s.Compared)
	turns := s.buildTurns()
	s.bodies = container.NewStack(s.Paper, s.Trial, s.Compared)
	top := container.NewVBox(s.headline, turns, s.Told)
	left := container.NewBorder(shell.NewLabel(session.Say("Rates"), shell.Heading), nil, nil, nil, s.List)
	s.right = container.NewBorder(top, nil, nil, nil, s.bodies)
	return container.NewBorder(nil, shell.ButtonRow(w, s.ring, rateButtons), nil, nil, container.New(shell.ListAndPage{}, left, s.right))
}

func (s *Screen) buildList() *widgets.Table {
	grain := shell.WordsColumn(session.Say("Grain"), 6)
	grain.Grow, grain.Wish, grain.Spare = true, 18, 1
	today := shell.WordsColumn(session.Say("Today"), 8)
	today.State, today.Wish = true, 12
	edition := shell.WordsColumn(session.Say("Edition"), 17)
	edition.Wish = 20
	list := widgets.NewTable([]widgets.Column{grain, edition, shell.Spare(shell.WordsColumn(session.Say("Status"), 8), 1), today})
	list.Small = true
	list.OnChoose = func(_ int, key string) { s.Rates.Choose(key); s.Refresh(); s.window.Commands.Refresh() }
	list.OnOpen = func(int, string) { s.focusBody() }
	return list
}

// buildTurns are the buttons that say what is shown.
func (s *Screen) buildTurns() fyne.CanvasObject {
	row := container.New(shell.Spread{})
	for view, id := range rateTurns {
		b := s.window.Commands.Button(id)
		s.turns[RatesView(view)] = b
		s.ring.Add(id, b)
		row.Add(b)
	}
	return row
}

// rateTurns are the commands of the views, in their order.
var rateTurns = []string{"rates.rows", "rates.try", "rates.compare", "rates.problems"}

// rateButtons are the acts under the list.
var rateButtons = []string{"rates.load", "rates.other", "rates.schedule", "rates.again", "rates.text"}

// Acts are what can be done with rates.
func (s *Screen) Acts() []shell.Act {
	r, group := s.Rates, session.Say("Rates")
	turn := func(id, title string, key widgets.Key, to RatesView) shell.Act {
		return shell.Act{Command: widgets.Command{ID: id, Title: title, Group: group, Keys: []widgets.Key{key}, Do: func() { r.Turn(to); s.Refresh(); s.focusBody() }}}
	}
	of := func(id, title string, key widgets.Key, do func()) shell.Act {
		return shell.Act{Command: widgets.Command{
			ID: id, Title: title, Group: group, Keys: []widgets.Key{key}, EnabledWhen: r.HasEdition,
			WhyNot: func() string { return session.Say("There is no edition in hand.") }, Do: do,
		}}
	}
	other := of("rates.other", session.Say("Compare with"), widgets.Ctrl(fyne.KeyO), r.AskOther)
	other.EnabledWhen = r.HasOther
	other.WhyNot = func() string { return session.Say("There is no choice: this grain has no further edition.") }
	load := of("rates.load", session.Say("Another load"), widgets.Ctrl(fyne.KeyE), r.AskLoad)
	load.Break = true
	return []shell.Act{
		turn("rates.rows", session.Say("Rows"), widgets.Ctrl(fyne.KeyR), RatesRows),
		turn("rates.try", session.Say("Try"), widgets.Ctrl(fyne.KeyT), RatesTry),
		turn("rates.compare", session.Say("Compare"), widgets.Ctrl(fyne.KeyK), RatesCompare),
		turn("rates.problems", session.Say("Problems"), widgets.Ctrl(fyne.KeyP), RatesProblems),
		load, other,
		of("rates.schedule", session.Say("Schedule"), widgets.Ctrl(fyne.KeyU), r.AskSchedule),
		{Command: widgets.Command{ID: "rates.again", Title: session.Say("Read the files"), Group: group, Break: true, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyI)}, Do: r.ReadAgain}},
		of("rates.text", session.Say("Write its text"), widgets.Ctrl(fyne.KeyS), r.SaveText),
	}
}

// body is what is shown of the edition, with its id on the ring.
func (s *Screen) body() (fyne.CanvasObject, string) {
	switch s.Rates.Shows() {
	case RatesTry:
		return s.Trial, "trial"
	case RatesCompare:
		return s.Compared, "compared"
	}
	return s.Paper, "paper"
}

func (s *Screen) focusBody() {
	_, id := s.body()
	s.ring.Focus(id)
}

// Show takes the editions anew and puts the keyboard in the list.
func (s *Screen) Show() {
	s.Rates.Reload()
	s.Refresh()
	s.window.Commands.Refresh()
	s.ring.Focus("list")
}

// Refresh shows the list, and of the chosen edition what is asked for.
func (s *Screen) Refresh() {
	r := s.Rates
	s.List.Empty = r.Empty()
	s.List.SetRows(r.Rows())
	if s.List.ChosenKey() != r.Chosen() {
		s.List.SetChosen(r.Chosen())
	}
	h := r.Headline()
	s.headline.Say(h.State, h.Text)
	for view, b := range s.turns {
		b.SetCurrent(view == r.Shows())
	}
	shown, _ := s.body()
	for _, o := range s.bodies.Objects {
		shell.SetVisible(o, o == shown)
	}
	s.showBody()
}

func (s *Screen) showBody() {
	r := s.Rates
	switch r.Shows() {
	case RatesTry:
		s.Told.Say(model.Plain, r.TrialSaid(s.Trial.ChosenKey()))
		s.Trial.SetColumns(figureColumns(r.TrialHead()))
		s.Trial.SetRows(r.TrialRows())
	case RatesCompare:
		s.Told.Say(model.Plain, r.ComparedSaid(s.Compared.ChosenKey()))
		s.Compared.SetColumns(comparedColumns(r.ComparedHead()))
		s.Compared.SetRows(r.ComparedRows())
	default:
		s.Told.Say(model.Plain, "")
		s.Paper.SetLines(r.Paper())
	}
	shell.SetVisible(s.Told, s.Told.Text() != "")
	s.right.Refresh()
}

// figureColumns are columns of figures under headings of a presenter.
func figureColumns(titles []string) []widgets.Column {
	out := make([]widgets.Column, len(titles))
	for i, title := range titles {
		out[i] = shell.FiguresColumn(title, 6)
		out[i].Wish = 8
	}
	for rank, i := range dispensable {
		if i < len(out) {
			out[i].Spare = rank + 1
		}
	}
	return out
}

// dispensable are the columns of a trial that a narrow window can do without,
// the last one first: water, points, drying, handling.
var dispensable = []int{2, 1, 7, 3}

func comparedColumns(titles []string) []widgets.Column {
	out := make([]widgets.Column, len(titles))
	for i, title := range titles {
		out[i] = shell.FiguresColumn(title, 8)
		out[i].Wish = 13
	}
	if len(out) > 0 {
		out[0].Align, out[0].Grow, out[0].State, out[0].Wish = fyne.TextAlignLeading, true, true, 20
		out[len(out)-1].Spare, out[len(out)-2].Spare = 2, 1
	}
	return out
}

// Ring is the order of the keyboard: the list, what is shown, the acts.
func (s *Screen) Ring() *widgets.FocusOrder { return s.ring }

// Hint says what keys carry the work.
func (s *Screen) Hint() string {
	return session.Say("Up and Down choose an edition, Enter goes to what it says. Ctrl+T tries it, Ctrl+K compares.")
}
