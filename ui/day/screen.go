package day

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/ask"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
	"tenthpoint/ui/widgets/status"
)

// Screen is the manager's sheet: a business day in four parts, one in front.
type Screen struct {
	window *shell.Window
	day    *DaySheet

	entry      *widgets.Autocomplete
	note       *status.Text
	status     *status.Badge
	turns      []*widgets.Button
	parts      []*fyne.Container
	current    int
	focusOrder *widgets.FocusOrder

	grain, money, dispositions, places, position *sheetTables

	hours, spread, where *bars
	alertTable           *widgets.Table
	evening              *status.List
	reader               *widgets.Reader
}

func NewScreen(f *session.Session) shell.Screen { return &Screen{day: NewDaySheet(f)} }

// DayParts are the parts of the sheet in their order, with the key of each.
var DayParts = []struct {
	ID, title string
	key       fyne.KeyName
}{
	{"grain", "Grain", fyne.Key1}, {"money", "Money", fyne.Key2}, {"position", "Position", fyne.Key3}, {"alerts", "To look at", fyne.Key4},
}

// Acts are the actions of a day, and the turns to its parts.
func (s *Screen) Acts() []shell.Act {
	group := s.day.session.Say("Day")
	acts := shell.ActsOf(s.day.session.Language, s.day, group, dayActs)
	for i, part := range DayParts {
		turn := shell.ActRow[*Screen]{
			ID: "day." + part.ID, Title: part.title, Key: widgets.Alt(part.key), Do: func(s *Screen) { s.turn(i) }, Break: i == 0, MenuOnly: true,
		}
		acts = append(acts, shell.ActsOf(s.day.session.Language, s, group, []shell.ActRow[*Screen]{turn})...)
	}
	return acts
}

var dayActs = []shell.ActRow[*DaySheet]{
	{ID: "day.close", Title: "Close the day", Key: widgets.Bare(fyne.KeyF12), When: (*DaySheet).CanClose, WhyNot: (*DaySheet).WhyNotClose, Do: (*DaySheet).Close},
	{ID: "day.explain", Title: "Explain what came later", Key: widgets.CtrlShift(fyne.KeyE), When: func(s *DaySheet) bool { return late{s}.waits() }, Why: "Nothing that was entered later counts on this day.", Do: func(s *DaySheet) { late{s}.ask() }, MenuOnly: true},
	{ID: "day.print", Title: "Print", Key: widgets.Ctrl(fyne.KeyP), Icon: apptheme.IconPrint, Do: (*DaySheet).Print},
	{ID: "day.export", Title: "Export", Key: widgets.Ctrl(fyne.KeyE), Do: (*DaySheet).Export},
	{ID: "day.examiner", Title: "Papers for an examiner", Key: widgets.CtrlShift(fyne.KeyX), Do: func(s *DaySheet) { examination{s}.ask() }, MenuOnly: true},
	{ID: "day.statement", Title: "Statement", Key: widgets.Ctrl(fyne.KeyG), Do: func(s *DaySheet) { ask.Statement(s.session, "") }},
	{ID: "day.proof", Title: "Proof of a ticket", Key: widgets.Ctrl(fyne.KeyI), Do: func(s *DaySheet) { ask.Proof(s.session, 0) }},
	{ID: "day.before", Title: "Day before", Key: widgets.Alt(fyne.KeyLeft), Do: func(s *DaySheet) { s.Step(-1) }, Break: true, MenuOnly: true},
	{ID: "day.after", Title: "Day after", Key: widgets.Alt(fyne.KeyRight), Do: func(s *DaySheet) { s.Step(+1) }, MenuOnly: true},
}

// Build makes the screen's widgets.
func (s *Screen) Build(w *shell.Window) fyne.CanvasObject {
	s.window = w
	s.focusOrder = widgets.NewFocusOrder(w.UI)
	s.note, s.status = status.NewText(), status.NewBadge(model.Plain, "")
	s.buildDay()
	turns := container.New(shell.Spread{})
	for _, part := range DayParts {
		b := w.Commands.Button("day." + part.ID)
		s.turns = append(s.turns, b)
		s.focusOrder.Add("turn."+part.ID, b)
		turns.Add(b)
	}
	for _, part := range []func() fyne.CanvasObject{s.buildGrain, s.buildMoney, s.buildPosition, s.buildTold} {
		s.parts = append(s.parts, container.NewStack(part()))
	}
	buttons := shell.ButtonRow(w, s.focusOrder, append(shell.ButtonsOf(s.Acts()), "go.season", "go.disputes"))
	day := container.NewBorder(nil, nil, container.New(shell.Margin{}, container.New(shell.Wide{Figures: 16}, s.entry)), nil, s.status)
	head := container.NewVBox(shell.Titled(w.Session.Say("screen|Day sheet"), day), s.note)
	body := container.NewStack()
	for _, part := range s.parts {
		body.Add(part)
	}
	s.turn(0)
	return container.NewBorder(container.NewVBox(head, turns), buttons, nil, nil, body)
}

// buildDay is the field that chooses the day.
func (s *Screen) buildDay() {
	s.entry = widgets.NewAutocomplete(nil)
	s.entry.FreeText = true
	typed := func(text string) {
		s.day.Type(text)
		s.show()
	}
	s.entry.OnPick = func(o model.Option) { typed(o.Code) }
	s.entry.OnCommit = func(text string) string { typed(text); return "" }
	s.focusOrder.Add("day", s.entry)
	s.focusOrder.Name("day", s.window.Session.Say("Day"))
}

// buildGrain is the first part: the totals, and the day in three pictures.
func (s *Screen) buildGrain() fyne.CanvasObject {
	s.grain = newSheetTables("grain", s.focusOrder)
	s.hours, s.spread, s.where = newBars(), newBars(), newBars()
	pictures := container.New(asManyAsFit{}, s.hours.content, s.spread.content, s.where.content)
	return container.New(tablesAndPictures{}, stackTables(s.grain.stops()), pictures)
}

func (s *Screen) buildMoney() fyne.CanvasObject {
	s.money, s.dispositions = newSheetTables("money", s.focusOrder), newSheetTables("disposition", s.focusOrder)
	return stackTables(
		s.money.stops(widgets.NewHeading(s.day.session.Say("Charges and payments"))),
		s.dispositions.stops(widgets.NewHeading(s.day.session.Say("Sold, stored, on contract"))))
}

func (s *Screen) buildPosition() fyne.CanvasObject {
	s.position, s.places = newSheetTables("position", s.focusOrder), newSheetTables("places", s.focusOrder)
	return stackTables(
		s.position.stops(widgets.NewHeading(s.day.session.Say("In the house: before the day, and after"))),
		s.places.stops(widgets.NewHeading(s.day.session.Say("By pit and bin"))))
}

// buildTold builds the table of what the manager must check before signing.
func (s *Screen) buildTold() fyne.CanvasObject {
	s.alertTable = widgets.NewTable(s.day.alertColumns().Heads())
	s.alertTable.Small = true
	s.alertTable.Empty = s.day.NothingTold()
	s.alertTable.OnChoose = func(_ int, key string) { s.day.Choose(key); s.showEvening() }
	s.evening = status.NewList()
	s.reader = widgets.NewReader(s.evening)
	s.focusOrder.Add("alerts", s.alertTable)
	s.focusOrder.Add("evening", s.reader)
	return container.New(shell.PictureAndSays, s.alertTable, s.reader)
}

// showEvening shows the chosen ticket in full and the open items of the day.
func (s *Screen) showEvening() {
	s.evening.Set(s.day.Evening())
	s.reader.ToTop()
	s.reader.Refresh()
}

// turn brings a part of the sheet to the front.
func (s *Screen) turn(to int) {
	s.current = to
	for i, part := range s.parts {
		shell.SetVisible(part, i == to)
		s.turns[i].SetCurrent(i == to)
	}
	s.show()
}

// hideBehind hides the tables of the parts behind, or Tab would move through invisible ones.
func (s *Screen) hideBehind() {
	for i, tables := range [][]*sheetTables{{s.grain}, {s.money, s.dispositions}, {s.position, s.places}, {}} {
		for _, t := range tables {
			if i != s.current {
				t.hide()
			}
		}
	}
	shell.SetVisible(s.alertTable, s.current == len(s.parts)-1)
	shell.SetVisible(s.reader, s.current == len(s.parts)-1)
}

// Show moves the focus to the day.
func (s *Screen) Show() { s.focusOrder.Focus("day") }

// Hint returns the main keys of the screen.
func (s *Screen) Hint() string {
	return s.day.session.Say("Alt+Left and Alt+Right change the day, Alt+1 to Alt+4 the part of the sheet. F12 closes the day.")
}

// FocusOrder returns the tab order.
func (s *Screen) FocusOrder() *widgets.FocusOrder { return s.focusOrder }

// Refresh shows the current facts.
func (s *Screen) Refresh() {
	s.day.Refresh()
	s.show()
}

// show updates everything.
func (s *Screen) show() {
	f := s.day.DayField()
	s.entry.SetOptions(f.Options)
	if s.focusOrder.Current() != "day" || f.State != model.Stop {
		s.entry.SetChosen(f.Value)
	}
	status, numbers := s.day.Status(), s.day.Numbers()
	s.status.Say(status.State, status.Text)
	s.note.Say(numbers.State, numbers.Text)
	if later := (late{s.day}).status(); later.Text != "" {
		s.note.Say(later.State, later.Text)
	}
	if f.State == model.Stop {
		s.note.Say(model.Stop, f.Note)
	}
	s.grain.set(s.day.Grain())
	s.money.set(s.day.Money())
	s.dispositions.set(s.day.Dispositions())
	s.position.set(s.day.Position())
	s.places.set(s.day.Places())
	s.hours.set(s.day.Hours())
	s.spread.set(s.day.Spread())
	s.where.set(s.day.WhereTo())
	s.alertTable.SetRows(s.day.AlertRows())
	s.showEvening()
	s.hideBehind()
	s.parts[s.current].Refresh()
	s.window.Commands.Refresh()
}
