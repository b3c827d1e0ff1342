package view

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/kit"
	"tenthpoint/ui/model"
	"tenthpoint/ui/present"
)

// ratesScreen is the list of editions at the left, and at the right what the
// chosen one says and does.
type ratesScreen struct {
	window *Window
	rates  *present.Rates

	list     *kit.Table
	headline *kit.Note
	paper    *kit.SlipView
	trial    *kit.Table
	compared *kit.Table
	told     *kit.Note
	bodies   *fyne.Container
	right    *fyne.Container
	turns    map[present.RatesView]*kit.Button
	ring     *kit.Ring
}

func newRatesScreen(f *present.Frame) Screen {
	return &ratesScreen{rates: present.NewRates(f), turns: map[present.RatesView]*kit.Button{}}
}

// Build makes the list and what stands beside it.
func (s *ratesScreen) Build(w *Window) fyne.CanvasObject {
	s.window = w
	s.list = s.buildList()
	s.headline, s.told = kit.NewNote(), kit.NewNote()
	s.headline.Lines, s.told.Lines = 2, 3
	s.paper = kit.NewSlipView()
	s.trial = kit.NewTable(nil)
	s.trial.OnChoose = func(_ int, key string) { s.told.Say(model.Plain, s.rates.TrialSaid(key)) }
	s.compared = kit.NewTable(nil)
	s.compared.OnChoose = func(_ int, key string) { s.told.Say(model.Plain, s.rates.ComparedSaid(key)) }
	for _, table := range []*kit.Table{s.trial, s.compared} {
		table.Small = true
		table.Empty = present.Say("Nothing can be worked out. What stands in the way is said above.")
	}
	s.ring = kit.NewRing(w.stage)
	s.ring.Add("list", s.list)
	s.ring.Add("paper", s.paper)
	s.ring.Add("trial", s.trial)
	s.ring.Add("compared", s.compared)
	turns := s.buildTurns()
	s.bodies = container.NewStack(s.paper, s.trial, s.compared)
	top := container.NewVBox(s.headline, turns, s.told)
	left := container.NewBorder(newLabel(present.Say("Rates"), heading), nil, nil, nil, s.list)
	s.right = container.NewBorder(top, nil, nil, nil, s.bodies)
	return container.NewBorder(nil, buttonRow(w, s.ring, rateButtons), nil, nil, container.New(listAndPage{}, left, s.right))
}

func (s *ratesScreen) buildList() *kit.Table {
	grain := wordsColumn(present.Say("Grain"), 6)
	grain.Grow, grain.Wish, grain.Spare = true, 18, 1
	today := wordsColumn(present.Say("Today"), 8)
	today.State, today.Wish = true, 12
	edition := wordsColumn(present.Say("Edition"), 17)
	edition.Wish = 20
	list := kit.NewTable([]kit.Column{grain, edition, spare(wordsColumn(present.Say("Status"), 8), 1), today})
	list.Small = true
	list.OnChoose = func(_ int, key string) { s.rates.Choose(key); s.Refresh(); s.window.commands.Refresh() }
	list.OnOpen = func(int, string) { s.focusBody() }
	return list
}

// buildTurns are the buttons that say what is shown.
func (s *ratesScreen) buildTurns() fyne.CanvasObject {
	row := container.New(spread{})
	for view, id := range rateTurns {
		b := s.window.commands.Button(id)
		s.turns[present.RatesView(view)] = b
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
func (s *ratesScreen) Acts() []Act {
	r, group := s.rates, present.Say("Rates")
	turn := func(id, title string, key kit.Key, to present.RatesView) Act {
		return Act{Command: kit.Command{ID: id, Title: title, Group: group, Keys: []kit.Key{key}, Do: func() { r.Turn(to); s.Refresh(); s.focusBody() }}}
	}
	of := func(id, title string, key kit.Key, do func()) Act {
		return Act{Command: kit.Command{
			ID: id, Title: title, Group: group, Keys: []kit.Key{key}, EnabledWhen: r.HasEdition,
			WhyNot: func() string { return present.Say("There is no edition in hand.") }, Do: do,
		}}
	}
	other := of("rates.other", present.Say("Compare with"), kit.Ctrl(fyne.KeyO), r.AskOther)
	other.EnabledWhen = r.HasOther
	other.WhyNot = func() string { return present.Say("There is no choice: this grain has no further edition.") }
	load := of("rates.load", present.Say("Another load"), kit.Ctrl(fyne.KeyE), r.AskLoad)
	load.Break = true
	return []Act{
		turn("rates.rows", present.Say("Rows"), kit.Ctrl(fyne.KeyR), present.RatesRows),
		turn("rates.try", present.Say("Try"), kit.Ctrl(fyne.KeyT), present.RatesTry),
		turn("rates.compare", present.Say("Compare"), kit.Ctrl(fyne.KeyK), present.RatesCompare),
		turn("rates.problems", present.Say("Problems"), kit.Ctrl(fyne.KeyP), present.RatesProblems),
		load, other,
		of("rates.schedule", present.Say("Schedule"), kit.Ctrl(fyne.KeyU), r.AskSchedule),
		{Command: kit.Command{ID: "rates.again", Title: present.Say("Read the files"), Group: group, Break: true, Keys: []kit.Key{kit.Ctrl(fyne.KeyI)}, Do: r.ReadAgain}},
		of("rates.text", present.Say("Write its text"), kit.Ctrl(fyne.KeyS), r.SaveText),
	}
}

// body is what is shown of the edition, with its id on the ring.
func (s *ratesScreen) body() (fyne.CanvasObject, string) {
	switch s.rates.Shows() {
	case present.RatesTry:
		return s.trial, "trial"
	case present.RatesCompare:
		return s.compared, "compared"
	}
	return s.paper, "paper"
}

func (s *ratesScreen) focusBody() {
	_, id := s.body()
	s.ring.Focus(id)
}

// Show takes the editions anew and puts the keyboard in the list.
func (s *ratesScreen) Show() {
	s.rates.Reload()
	s.Refresh()
	s.window.commands.Refresh()
	s.ring.Focus("list")
}

// Refresh shows the list, and of the chosen edition what is asked for.
func (s *ratesScreen) Refresh() {
	r := s.rates
	s.list.Empty = r.Empty()
	s.list.SetRows(r.Rows())
	if s.list.ChosenKey() != r.Chosen() {
		s.list.SetChosen(r.Chosen())
	}
	h := r.Headline()
	s.headline.Say(h.State, h.Text)
	for view, b := range s.turns {
		b.SetCurrent(view == r.Shows())
	}
	shown, _ := s.body()
	for _, o := range s.bodies.Objects {
		setVisible(o, o == shown)
	}
	s.showBody()
}

func (s *ratesScreen) showBody() {
	r := s.rates
	switch r.Shows() {
	case present.RatesTry:
		s.told.Say(model.Plain, r.TrialSaid(s.trial.ChosenKey()))
		s.trial.SetColumns(figureColumns(r.TrialHead()))
		s.trial.SetRows(r.TrialRows())
	case present.RatesCompare:
		s.told.Say(model.Plain, r.ComparedSaid(s.compared.ChosenKey()))
		s.compared.SetColumns(comparedColumns(r.ComparedHead()))
		s.compared.SetRows(r.ComparedRows())
	default:
		s.told.Say(model.Plain, "")
		s.paper.SetLines(r.Paper())
	}
	setVisible(s.told, s.told.Text() != "")
	s.right.Refresh()
}

// figureColumns are columns of figures under headings of a presenter.
func figureColumns(titles []string) []kit.Column {
	out := make([]kit.Column, len(titles))
	for i, title := range titles {
		out[i] = figuresColumn(title, 6)
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

func comparedColumns(titles []string) []kit.Column {
	out := make([]kit.Column, len(titles))
	for i, title := range titles {
		out[i] = figuresColumn(title, 8)
		out[i].Wish = 13
	}
	if len(out) > 0 {
		out[0].Align, out[0].Grow, out[0].State, out[0].Wish = fyne.TextAlignLeading, true, true, 20
		out[len(out)-1].Spare, out[len(out)-2].Spare = 2, 1
	}
	return out
}

// Ring is the order of the keyboard: the list, what is shown, the acts.
func (s *ratesScreen) Ring() *kit.Ring { return s.ring }

// Hint says what keys carry the work.
func (s *ratesScreen) Hint() string {
	return present.Say("Up and Down choose an edition, Enter goes to what it says. Ctrl+T tries it, Ctrl+K compares.")
}
