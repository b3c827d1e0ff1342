package setup

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// Screen is the elevator's own sheet. In a new book it comes first.
type Screen struct {
	window *shell.Window
	sheet  *SetUp
	rows   map[string]*shell.FormRow
	ring   *widgets.FocusOrder
	title  *shell.Label
	demo   *widgets.Button
	fields *container.Scroll

	Columns *shell.FieldSheet
}

func NewScreen(f *session.Session) shell.Screen {
	return &Screen{sheet: NewSetUp(f), rows: map[string]*shell.FormRow{}}
}

// Acts are writing the sheet down, and opening the invented elevator instead.
func (s *Screen) Acts() []shell.Act {
	group := session.Say("Set-up")
	return []shell.Act{
		{Command: widgets.Command{ID: "setup.save", Title: session.Say("Write it down"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyS)}, Do: s.sheet.Save}},
		{Command: widgets.Command{ID: "setup.demo", Title: session.Say("Look at an invented elevator instead"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyE)},
			EnabledWhen: s.sheet.CanDemo,
			WhyNot:      func() string { return session.Say("The invented elevator is offered only in a new book.") },
			Do:          s.sheet.OpenDemo}},
	}
}

// Build makes the sheet.
func (s *Screen) Build(w *shell.Window) fyne.CanvasObject {
	s.window = w
	s.ring = widgets.NewFocusOrder(w.Stage)
	s.title = shell.NewLabel(s.sheet.Welcome(), shell.Ordinary)
	left := []fyne.CanvasObject{widgets.NewHeading(session.Say("As every ticket prints it"))}
	right := []fyne.CanvasObject{widgets.NewHeading(session.Say("Taken here, by the rates chosen"))}
	s.ring.OnArrive = func(id string) { s.Columns.Hold(s.rows[id]) }
	for _, f := range s.sheet.Fields() {
		row := shell.NewFormRow(f, s.entry(f), &shell.FormColumns{})
		row.Mute = muteRows[f.ID]
		s.rows[f.ID] = row
		if f.Part == model.WhoPart && len(left) <= mostAtLeft {
			left = append(left, row)
		} else {
			right = append(right, row)
		}
		s.ring.Add(f.ID, row.Entry)
		shell.SetText(row.Entry, f)
	}
	save := w.Commands.Button("setup.save")
	save.Importance = shell.HighImportance
	s.demo = w.Commands.Button("setup.demo")
	s.ring.Add("save", save)
	s.ring.Add("demo", s.demo)
	top := container.New(&shell.Tight{},
		shell.NewLabel(session.Say("Set-up"), shell.Heading), s.title)
	foot := container.NewHBox(save, s.demo)
	s.Columns = shell.NewFieldSheet()
	s.Columns.Set(left, right)
	s.fields = container.NewVScroll(container.New(shell.Slim(), s.Columns.Content))
	return container.New(titleGivesWay{s.Columns}, top, s.fields, foot)
}

// mostAtLeft is how many fields stand in the left column; who sets the book up
// comes at the right.
const mostAtLeft = 11

// titleGivesWay sets a form under its title, over its buttons. Where the form needs
// the room of the title, it has it: the list of screens says where one is.
type titleGivesWay struct{ form *shell.FieldSheet }

func (titleGivesWay) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, o := range objects {
		size = fyne.NewSize(max(size.Width, o.MinSize().Width), size.Height+o.MinSize().Height)
	}
	return size.SubtractWidthHeight(0, objects[0].MinSize().Height)
}

func (l titleGivesWay) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	title, form, foot := objects[0], objects[1], objects[2]
	low := foot.MinSize().Height + theme.Padding()
	high := title.MinSize().Height + theme.Padding()
	shell.SetVisible(title, l.form.Height(shell.Snug)+2*shell.SlimGap <= size.Height-low-high)
	if !title.Visible() {
		high = 0
	}
	shell.Put(title, 0, 0, size.Width, high)
	shell.Put(form, 0, high, size.Width, size.Height-high-low)
	shell.Put(foot, 0, size.Height-low+theme.Padding(), size.Width, low-theme.Padding())
}

// muteRows are the fields of which nothing is ever said: something of their list
// always stands in them.
var muteRows = map[string]bool{"rules": true, "unit": true, "dates": true}

func (s *Screen) entry(f model.Field) widgets.Keyed {
	typed := func(text string) { s.sheet.Type(f.ID, text); s.show() }
	switch f.Kind {
	case model.TickField:
		tick := widgets.NewCheckbox("")
		tick.OnToggle = func(on bool) { typed(shell.Ticked(on)) }
		return tick
	case model.FindField:
		p := widgets.NewAutocomplete(f.Options)
		p.OnPick = func(o model.Option) { typed(o.Code) }
		p.OnUnpick = func() { typed("") }
		p.OnLeave = func(text string) {
			if _, chosen := p.Chosen(); !chosen {
				typed(text)
			}
		}
		return p
	}
	e := widgets.NewFieldEntry()
	if f.Kind == model.FigureField {
		e = widgets.NewFigureEntry()
	}
	e.OnEdit = typed
	return e
}

// show brings every row up to date.
func (s *Screen) show() {
	focused := s.ring.Current()
	for _, f := range s.sheet.Fields() {
		row := s.rows[f.ID]
		if row == nil {
			continue
		}
		row.Set(f)
		if f.ID != focused {
			shell.SetText(row.Entry, f)
		}
	}
	s.title.Say(s.sheet.Welcome())
	shell.SetVisible(s.demo, s.sheet.CanDemo())
	if person := s.rows["person"]; person != nil {
		shell.SetVisible(person, s.sheet.IsFirst())
		shell.SetVisible(person.Entry.(fyne.CanvasObject), s.sheet.IsFirst())
	}
	if s.Columns.Follow() {
		s.Columns.Content.Refresh()
	}
}

// Show puts the keyboard on the first field to fill.
func (s *Screen) Show() {
	for _, f := range s.sheet.Fields() {
		if row := s.rows[f.ID]; row != nil {
			shell.SetText(row.Entry, f)
		}
	}
	if id := s.sheet.FirstMissing(); id != "" {
		s.ring.Focus(id)
		return
	}
	s.ring.FocusFirst()
}

// Refresh shows the sheet as it now stands.
func (s *Screen) Refresh() {
	s.sheet.Renew()
	s.show()
}

// Hint says what keys carry the work.
func (s *Screen) Hint() string {
	return session.Say("Enter goes on, the down arrow lists what there is to choose, Ctrl+S writes the sheet down.")
}

// Ring is the order of the keyboard.
func (s *Screen) Ring() *widgets.FocusOrder { return s.ring }
