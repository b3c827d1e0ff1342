package view

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"tenthpoint/ui/kit"
	"tenthpoint/ui/model"
	"tenthpoint/ui/present"
)

// setUpScreen is the elevator's own sheet. In a new book it comes first.
type setUpScreen struct {
	window *Window
	sheet  *present.SetUp
	rows   map[string]*formRow
	ring   *kit.Ring
	title  *label
	demo   *kit.Button
	fields *container.Scroll

	columns *fieldSheet
}

func newSetUpScreen(f *present.Frame) Screen {
	return &setUpScreen{sheet: present.NewSetUp(f), rows: map[string]*formRow{}}
}

// Acts are writing the sheet down, and opening the invented elevator instead.
func (s *setUpScreen) Acts() []Act {
	group := present.Say("Set-up")
	return []Act{
		{Command: kit.Command{ID: "setup.save", Title: present.Say("Write it down"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyS)}, Do: s.sheet.Save}},
		{Command: kit.Command{ID: "setup.demo", Title: present.Say("Look at an invented elevator instead"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyE)},
			EnabledWhen: s.sheet.CanDemo,
			WhyNot:      func() string { return present.Say("The invented elevator is offered only in a new book.") },
			Do:          s.sheet.OpenDemo}},
	}
}

// Build makes the sheet.
func (s *setUpScreen) Build(w *Window) fyne.CanvasObject {
	s.window = w
	s.ring = kit.NewRing(w.stage)
	s.title = newLabel(s.sheet.Welcome(), ordinary)
	left := []fyne.CanvasObject{kit.NewHeading(present.Say("As every ticket prints it"))}
	right := []fyne.CanvasObject{kit.NewHeading(present.Say("Taken here, by the rates chosen"))}
	s.ring.OnArrive = func(id string) { s.columns.hold(s.rows[id]) }
	for _, f := range s.sheet.Fields() {
		row := newFormRow(f, s.entry(f), &formColumns{})
		row.mute = muteRows[f.ID]
		s.rows[f.ID] = row
		if f.Part == model.WhoPart && len(left) <= mostAtLeft {
			left = append(left, row)
		} else {
			right = append(right, row)
		}
		s.ring.Add(f.ID, row.entry)
		setText(row.entry, f)
	}
	save := w.commands.Button("setup.save")
	save.Importance = highImportance
	s.demo = w.commands.Button("setup.demo")
	s.ring.Add("save", save)
	s.ring.Add("demo", s.demo)
	top := container.New(&tight{},
		newLabel(present.Say("Set-up"), heading), s.title)
	foot := container.NewHBox(save, s.demo)
	s.columns = newFieldSheet()
	s.columns.set(left, right)
	s.fields = container.NewVScroll(container.New(slim{}, s.columns.content))
	return container.New(titleGivesWay{s.columns}, top, s.fields, foot)
}

// mostAtLeft is how many fields stand in the left column; who sets the book up
// comes at the right.
const mostAtLeft = 11

// titleGivesWay sets a form under its title, over its buttons. Where the form needs
// the room of the title, it has it: the list of screens says where one is.
type titleGivesWay struct{ form *fieldSheet }

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
	setVisible(title, l.form.height(snug)+2*slimGap <= size.Height-low-high)
	if !title.Visible() {
		high = 0
	}
	put(title, 0, 0, size.Width, high)
	put(form, 0, high, size.Width, size.Height-high-low)
	put(foot, 0, size.Height-low+theme.Padding(), size.Width, low-theme.Padding())
}

// muteRows are the fields of which nothing is ever said: something of their list
// always stands in them.
var muteRows = map[string]bool{"rules": true, "unit": true, "dates": true}

func (s *setUpScreen) entry(f model.Field) kit.Keyed {
	typed := func(text string) { s.sheet.Type(f.ID, text); s.show() }
	switch f.Kind {
	case model.TickField:
		tick := kit.NewTick("")
		tick.OnToggle = func(on bool) { typed(ticked(on)) }
		return tick
	case model.FindField:
		p := kit.NewPickEntry(f.Options)
		p.OnPick = func(o model.Option) { typed(o.Code) }
		p.OnUnpick = func() { typed("") }
		p.OnLeave = func(text string) {
			if _, chosen := p.Chosen(); !chosen {
				typed(text)
			}
		}
		return p
	}
	e := kit.NewFieldEntry()
	if f.Kind == model.FigureField {
		e = kit.NewFigureEntry()
	}
	e.OnEdit = typed
	return e
}

// show brings every row up to date.
func (s *setUpScreen) show() {
	focused := s.ring.Current()
	for _, f := range s.sheet.Fields() {
		row := s.rows[f.ID]
		if row == nil {
			continue
		}
		row.set(f)
		if f.ID != focused {
			setText(row.entry, f)
		}
	}
	s.title.say(s.sheet.Welcome())
	setVisible(s.demo, s.sheet.CanDemo())
	if person := s.rows["person"]; person != nil {
		setVisible(person, s.sheet.IsFirst())
		setVisible(person.entry.(fyne.CanvasObject), s.sheet.IsFirst())
	}
	if s.columns.follow() {
		s.columns.content.Refresh()
	}
}

// Show puts the keyboard on the first field to fill.
func (s *setUpScreen) Show() {
	for _, f := range s.sheet.Fields() {
		if row := s.rows[f.ID]; row != nil {
			setText(row.entry, f)
		}
	}
	if id := s.sheet.FirstMissing(); id != "" {
		s.ring.Focus(id)
		return
	}
	s.ring.FocusFirst()
}

// Refresh shows the sheet as it now stands.
func (s *setUpScreen) Refresh() {
	s.sheet.Renew()
	s.show()
}

// Hint says what keys carry the work.
func (s *setUpScreen) Hint() string {
	return present.Say("Enter goes on, the down arrow lists what there is to choose, Ctrl+S writes the sheet down.")
}

// Ring is the order of the keyboard.
func (s *setUpScreen) Ring() *kit.Ring { return s.ring }
