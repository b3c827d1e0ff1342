package view

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/kit"
	"tenthpoint/ui/model"
	"tenthpoint/ui/present"
)

// dayScreen is the manager's sheet: a business day in four parts, one in front.
type dayScreen struct {
	window *Window
	day    *present.DaySheet

	entry   *kit.PickEntry
	note    *kit.Note
	stand   *kit.Badge
	turns   []*kit.Button
	parts   []*fyne.Container
	current int
	ring    *kit.Ring

	grain, money, dealt, places, position *sheetTables

	hours, spread, where *bars
	told                 *kit.Table
	evening              *kit.Remarks
	reader               *kit.Reader
}

func newDayScreen(f *present.Frame) Screen { return &dayScreen{day: present.NewDaySheet(f)} }

// dayParts are the parts of the sheet in their order, with the key of each.
var dayParts = []struct {
	id, title string
	key       fyne.KeyName
}{
	{"grain", "Grain", fyne.Key1}, {"money", "Money", fyne.Key2}, {"position", "Position", fyne.Key3}, {"told", "To look at", fyne.Key4},
}

// Acts are what can be done with a day.
func (s *dayScreen) Acts() []Act {
	group := present.Say("Day")
	acts := []Act{
		{Command: kit.Command{
			ID: "day.close", Title: present.Say("Close the day"), Group: group, Keys: []kit.Key{kit.Bare(fyne.KeyF12)},
			EnabledWhen: s.day.CanClose, WhyNot: s.day.WhyNotClose, Do: s.day.Close,
		}},
		{Command: kit.Command{
			ID: "day.print", Title: present.Say("Print"), Group: group, Icon: kit.IconPrint, Keys: []kit.Key{kit.Ctrl(fyne.KeyP)},
			Do: s.day.Print,
		}},
		{Command: kit.Command{
			ID: "day.export", Title: present.Say("Write files"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyE)},
			Do: s.day.Export,
		}},
		{Command: kit.Command{
			ID: "day.statement", Title: present.Say("Statement"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyG)},
			Do: func() { present.AskStatement(s.window.frame, "") },
		}},
		{Command: kit.Command{
			ID: "day.proof", Title: present.Say("Proof of a ticket"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyI)},
			Do: func() { present.AskProof(s.window.frame, 0) },
		}},
		{Command: kit.Command{
			ID: "day.before", Title: present.Say("Day before"), Group: group, Keys: []kit.Key{kit.Alt(fyne.KeyLeft)}, Break: true,
			Do: func() { s.day.Step(-1) },
		}},
		{Command: kit.Command{
			ID: "day.after", Title: present.Say("Day after"), Group: group, Keys: []kit.Key{kit.Alt(fyne.KeyRight)},
			Do: func() { s.day.Step(+1) },
		}},
	}
	for i, part := range dayParts {
		acts = append(acts, Act{Command: kit.Command{
			ID: "day." + part.id, Title: present.Say(part.title), Group: group, Keys: []kit.Key{kit.Alt(part.key)}, Break: i == 0,
			Do: func() { s.turn(i) },
		}})
	}
	return acts
}

// dayButtons are the acts under the sheet.
var dayButtons = []string{"day.close", "day.print", "day.export", "day.statement", "day.proof", "go.disputes"}

// Build makes the screen's widgets.
func (s *dayScreen) Build(w *Window) fyne.CanvasObject {
	s.window = w
	s.ring = kit.NewRing(w.stage)
	s.note, s.stand = kit.NewNote(), kit.NewBadge(model.Plain, "")
	s.buildDay()
	turns := container.New(spread{})
	for _, part := range dayParts {
		b := w.commands.Button("day." + part.id)
		s.turns = append(s.turns, b)
		s.ring.Add("turn."+part.id, b)
		turns.Add(b)
	}
	for _, part := range []func() fyne.CanvasObject{s.buildGrain, s.buildMoney, s.buildPosition, s.buildTold} {
		s.parts = append(s.parts, container.NewStack(part()))
	}
	buttons := buttonRow(w, s.ring, dayButtons)
	day := container.NewBorder(nil, nil, container.New(margin{}, container.New(wide{16}, s.entry)), nil, s.stand)
	head := container.NewVBox(titled(present.Say("Day sheet"), day), s.note)
	body := container.NewStack()
	for _, part := range s.parts {
		body.Add(part)
	}
	s.turn(0)
	return container.NewBorder(container.NewVBox(head, turns), buttons, nil, nil, body)
}

// buildDay is the field that chooses the day.
func (s *dayScreen) buildDay() {
	s.entry = kit.NewPickEntry(nil)
	s.entry.FreeText = true
	typed := func(text string) {
		s.day.Type(text)
		s.show()
	}
	s.entry.OnPick = func(o model.Option) { typed(o.Code) }
	s.entry.OnCommit = func(text string) string { typed(text); return "" }
	s.ring.Add("day", s.entry)
}

// buildGrain is the first part: the totals, and the day in three pictures.
func (s *dayScreen) buildGrain() fyne.CanvasObject {
	s.grain = newSheetTables("grain", s.ring)
	s.hours, s.spread, s.where = newBars(), newBars(), newBars()
	pictures := container.New(asManyAsFit{}, s.hours.content, s.spread.content, s.where.content)
	return container.New(tablesAndPictures{}, stackTables(s.grain.stops()), pictures)
}

func (s *dayScreen) buildMoney() fyne.CanvasObject {
	s.money, s.dealt = newSheetTables("money", s.ring), newSheetTables("dealt", s.ring)
	return stackTables(
		s.money.stops(kit.NewHeading(present.Say("Charges and payments"))),
		s.dealt.stops(kit.NewHeading(present.Say("Sold, stored, on contract"))))
}

func (s *dayScreen) buildPosition() fyne.CanvasObject {
	s.position, s.places = newSheetTables("position", s.ring), newSheetTables("places", s.ring)
	return stackTables(
		s.position.stops(kit.NewHeading(present.Say("In the house: before the day, and after"))),
		s.places.stops(kit.NewHeading(present.Say("By pit and bin"))))
}

// buildTold is what the manager must look at before signing.
func (s *dayScreen) buildTold() fyne.CanvasObject {
	what, words := wordsColumn(present.Say("What"), 14), wordsColumn(present.Say("Why, who"), 20)
	what.State, words.Grow = true, true
	s.told = kit.NewTable([]kit.Column{
		wordsColumn(present.Say("Ticket"), 6), spare(wordsColumn(present.Say("Of day"), 10), 2), wordsColumn(present.Say("Grower"), 16), what, spare(words, 1),
	})
	s.told.Small = true
	s.told.Empty = s.day.NothingTold()
	s.told.OnChoose = func(_ int, key string) { s.day.Choose(key); s.showEvening() }
	s.evening = kit.NewRemarks()
	s.reader = kit.NewReader(s.evening)
	s.ring.Add("told", s.told)
	s.ring.Add("evening", s.reader)
	return container.New(pictureAndSays{}, s.told, s.reader)
}

// showEvening shows the chosen ticket in full and what stands open on the day.
func (s *dayScreen) showEvening() {
	s.evening.Set(s.day.Evening())
	s.reader.ToTop()
	s.reader.Refresh()
}

// turn brings a part of the sheet to the front.
func (s *dayScreen) turn(to int) {
	s.current = to
	for i, part := range s.parts {
		setVisible(part, i == to)
		s.turns[i].SetCurrent(i == to)
	}
	s.show()
}

// hideBehind hides the tables of the parts behind, or Tab would walk through
// what nobody sees.
func (s *dayScreen) hideBehind() {
	for i, tables := range [][]*sheetTables{{s.grain}, {s.money, s.dealt}, {s.position, s.places}, {}} {
		for _, t := range tables {
			if i != s.current {
				t.hide()
			}
		}
	}
	setVisible(s.told, s.current == len(s.parts)-1)
	setVisible(s.reader, s.current == len(s.parts)-1)
}

// Show puts the keyboard on the day.
func (s *dayScreen) Show() { s.ring.Focus("day") }

// Hint says what carries the work.
func (s *dayScreen) Hint() string {
	return present.Say("Alt+Left and Alt+Right change the day, Alt+1 to Alt+4 the part of the sheet. F12 closes the day.")
}

// Ring is the order of the keyboard.
func (s *dayScreen) Ring() *kit.Ring { return s.ring }

// Refresh shows the facts as they now are.
func (s *dayScreen) Refresh() {
	s.day.Refresh()
	s.show()
}

// show brings everything up to date.
func (s *dayScreen) show() {
	f := s.day.DayField()
	s.entry.SetOptions(f.Options)
	if s.ring.Current() != "day" || f.State != model.Stop {
		s.entry.SetChosen(f.Value)
	}
	stand, numbers := s.day.Stand(), s.day.Numbers()
	s.stand.Say(stand.State, stand.Text)
	s.note.Say(numbers.State, numbers.Text)
	if f.State == model.Stop {
		s.note.Say(model.Stop, f.Note)
	}
	s.grain.set(s.day.Grain())
	s.money.set(s.day.Money())
	s.dealt.set(s.day.Dealt())
	s.position.set(s.day.Position())
	s.places.set(s.day.Places())
	s.hours.set(s.day.Hours())
	s.spread.set(s.day.Spread())
	s.where.set(s.day.WhereTo())
	s.told.SetRows(s.day.Told())
	s.showEvening()
	s.hideBehind()
	s.parts[s.current].Refresh()
	s.window.commands.Refresh()
}
