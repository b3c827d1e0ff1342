package setup

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"

	"tenthpoint/ui/model"
	"tenthpoint/ui/paperview"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// Screen is the elevator's own sheet. In a new book it comes first.
type Screen struct {
	sheet *SetUp
	Form  *shell.FieldForm

	title                      *shell.Label
	demo                       *widgets.Button
	head, scale, grains, house fyne.CanvasObject // the headings of the groups
	preview                    *paperview.SlipView
}

// NewScreen makes the screen of a session.
func NewScreen(f *session.Session) shell.Screen { return &Screen{sheet: NewSetUp(f)} }

// Acts are writing the sheet down, and opening the invented elevator instead.
func (s *Screen) Acts() []shell.Act {
	return shell.ActsOf(s.sheet.session.Language, s.sheet, s.sheet.session.Say("Set-up"), setUpActs)
}

var setUpActs = []shell.ActRow[*SetUp]{
	{ID: "setup.save", Title: "Save", Key: widgets.Ctrl(fyne.KeyS), Do: (*SetUp).Save},
	{ID: "setup.examples", Title: "Take all examples", Key: widgets.Ctrl(fyne.KeyK), When: canTakeExamples, Why: "Every grain has its rates already.", Do: takeExamples},
	{ID: "setup.demo", Title: "Look at an invented elevator instead", Key: widgets.Ctrl(fyne.KeyE), When: (*SetUp).CanDemo, Why: "The invented elevator is offered only in a new book.", Do: (*SetUp).OpenDemo},
}

// Build makes the sheet.
func (s *Screen) Build(w *shell.Window) fyne.CanvasObject {
	s.title = shell.NewLabel(s.sheet.Welcome(), shell.Ordinary)
	s.head = widgets.NewHeading(w.Session.Say("As every ticket prints it"))
	s.scale = widgets.NewHeading(w.Session.Say("The truck scale"))
	s.grains = widgets.NewHeading(w.Session.Say("Taken here, by the rates chosen"))
	s.house = widgets.NewHeading(w.Session.Say("How the house works"))
	s.preview = paperview.NewSlipView()
	save := w.Commands.Button("setup.save")
	save.Importance = shell.HighImportance
	examples := w.Commands.Button("setup.examples")
	s.demo = w.Commands.Button("setup.demo")
	s.Form = shell.NewFieldForm(w, s.sheet, s.showAround)
	s.Form.Columns, s.Form.Leave = s.columns, s.leave
	s.Form.Wrong = func(*shell.FormRow) {} // there is room for it under the fields
	s.Form.AddLast("save", save)
	s.Form.AddLast("examples", examples)
	s.Form.AddLast("demo", s.demo)
	s.Form.AddLast("preview", s.preview)
	s.Form.Grown = s.Form.Sheet.Content.Refresh
	s.Form.Show(true)
	top := container.New(layout.NewCustomPaddedVBoxLayout(0), shell.NewLabel(w.Session.Say("Set-up"), shell.Heading), s.title)
	fields := container.NewVScroll(container.New(shell.Slim(), s.Form.Sheet.Content))
	form := container.New(titleGivesWay{s.Form.Sheet}, top, fields, container.NewHBox(save, examples, s.demo))
	return container.New(besidePreview{}, form, s.preview)
}

// columns sets what a ticket prints and the scale at the left, and at the right the grains and how the
// house works, each under its heading.
func (s *Screen) columns(fields []model.Field, rows map[string]*shell.FormRow) (left, right []fyne.CanvasObject) {
	left, right = append(left, s.head), append(right, s.grains)
	for _, f := range fields {
		row := rows[f.ID]
		row.Mute = muteRows[f.ID]
		switch f.ID {
		case "unit":
			left = append(left, s.scale)
		case "rules":
			right = append(right, s.house)
		}
		if f.Part == model.WhoPart {
			left = append(left, row)
		} else {
			right = append(right, row)
		}
	}
	return left, right
}

// muteRows are the fields without messages: they always hold an item of their list.
var muteRows = map[string]bool{"rules": true, "unit": true, "dates": true}

// leave keeps a text without a match, so that its error is shown.
func (s *Screen) leave(id, text string, unfound bool) {
	if unfound {
		s.Form.Typed(id, text)
	}
}

// titleGivesWay sets a form under its title, over its buttons. Where the form needs the room, the
// title is dropped: the list of screens shows the current one.
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

// leastPreview is the narrowest slip whose head can be read, in figures.
const leastPreview = 40

// besidePreview sets the slip with what is typed so far beside the form, where the form leaves room.
type besidePreview struct{}

func (besidePreview) MinSize(objects []fyne.CanvasObject) fyne.Size { return objects[0].MinSize() }

func (besidePreview) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	form, slip := objects[0], objects[1]
	width := shell.Wide{Figures: leastPreview}.MinSize(nil).Width
	room := size.Width - form.MinSize().Width - shell.PaperGap()
	shell.SetVisible(slip, room >= width)
	if !slip.Visible() {
		shell.Put(form, 0, 0, size.Width, size.Height)
		return
	}
	width = min(room, size.Width*2/5)
	shell.Put(form, 0, 0, size.Width-width-shell.PaperGap(), size.Height)
	shell.Put(slip, size.Width-width, 0, width, size.Height)
}

// showAround updates the parts around the form.
func (s *Screen) showAround() {
	s.preview.SetPages(session.SlipPages(previewOf(s.sheet)))
	s.title.Say(s.sheet.Welcome())
	shell.SetVisible(s.demo, s.sheet.CanDemo())
}

// Show moves the focus to the first field to fill.
func (s *Screen) Show() {
	s.Form.Show(true)
	if id := s.sheet.FirstMissing(); id != "" {
		s.Form.FocusOrder.Focus(id)
		return
	}
	s.Form.FocusOrder.FocusFirst()
}

// Refresh shows the current sheet.
func (s *Screen) Refresh() {
	s.sheet.Renew()
	s.Form.Show(false)
}

// Hint returns the main keys of the screen.
func (s *Screen) Hint() string {
	return s.sheet.session.Say("Enter goes on, the down arrow lists what there is to choose, Ctrl+S saves the sheet.")
}

// FocusOrder returns the tab order.
func (s *Screen) FocusOrder() *widgets.FocusOrder { return s.Form.FocusOrder }
