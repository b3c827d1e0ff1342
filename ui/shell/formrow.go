package shell

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/widgets"
	"tenthpoint/ui/widgets/status"
)

// FormRow is one field of a form: its name, the entry, the unit, and below them how the text was
// read or what is wrong with it. The setting decides how much of that shows below; the rest is a
// mark in the row.
type FormRow struct {
	widget.BaseWidget
	language session.Language
	Field    model.Field
	Label    *Label
	Unit     *Label
	note     *status.Text
	mark     *rowMark
	Entry    widgets.Keyed
	columns  *FormColumns
	setting  Setting
	// noteRoom is the right end of the text below, from the left of the row.
	noteRoom float32
	inHand   bool // the focus is in it
	Mute     bool // only errors are shown
}

// FormColumns holds the left edge of the entries of one column.
type FormColumns struct{ label float32 }

func NewFormRow(in session.Language, f model.Field, entry widgets.Keyed, columns *FormColumns) *FormRow {
	r := &FormRow{
		language: in, Label: NewLabel("", Ordinary), note: status.NewText(), Entry: entry, columns: columns,
		Unit: NewLabel("", UnitSize), mark: newRowMark(in.Say("still to come")),
	}
	r.ExtendBaseWidget(r)
	r.Set(f)
	return r
}

// Set shows the field's current state. The text in the entry is the person's while they type; it is
// only written when it differs.
func (r *FormRow) Set(f model.Field) {
	stale := r.Unit.Text != f.Unit
	r.Field = f
	r.Label.Say(f.Label)
	r.Unit.Say(f.Unit)
	r.note.Say(r.says())
	if r.mark.say(r.marked()) || stale {
		r.Refresh()
	}
}

// says returns the field's message: what is wrong, how the text was read, or that it is still to
// come.
func (r *FormRow) says() (model.State, string) {
	f := r.Field
	switch {
	case f.Note != "":
		return f.State, f.Note
	case f.Reading != "":
		return model.Plain, f.Reading
	case f.Missing:
		return model.Missing, r.language.Say("still to come")
	}
	return model.Plain, ""
}

// isDoubted reports whether the field has an error or a warning.
func (r *FormRow) isDoubted() bool {
	return r.Field.Note != "" && (r.Field.State == model.Stop || r.Field.State == model.Warn)
}

// IsWrong reports whether the text typed is invalid, with a message why.
func (r *FormRow) IsWrong() bool {
	return r != nil && r.Field.State == model.Stop && r.Field.Note != ""
}

// isBelow reports whether the field's message is shown below it.
func (r *FormRow) isBelow(s Setting) bool {
	switch {
	case r.Mute && !r.isDoubted():
		return false
	case s == Airy:
		return true
	}
	return s == Snug && r.isDoubted()
}

// marked returns the mark in the row for a message not shown below.
func (r *FormRow) marked() model.State {
	switch {
	case r.Mute && !r.isDoubted() || r.isBelow(r.setting):
		return model.Plain
	case r.isDoubted():
		return r.Field.State
	case r.Field.Missing:
		return model.Missing
	}
	return model.Plain
}

// Space sets the row closer or wider, and where its entry begins.
func (r *FormRow) Space(s Setting, label float32) {
	if r.setting != s || r.columns.label != label {
		r.setting, r.columns.label = s, label
		r.mark.say(r.marked())
		r.Refresh()
	}
}

// take sets whether the row has the focus.
func (r *FormRow) take(inHand bool) {
	if r.inHand != inHand {
		r.inHand = inHand
		r.Refresh()
	}
}

// Height returns the height of the row in a setting.
func (r *FormRow) Height(s Setting) float32 {
	high := r.Entry.MinSize().Height
	if r.isBelow(s) {
		high += r.note.MinSize().Height
	}
	return high
}

// least is the width the row needs after its name; picked the width at which a value chosen from a
// list is not truncated; wished the width at which free text usually is not.
func (r *FormRow) least() float32 {
	if r.isPicked() {
		return r.figures(min(leastPicked, max(leastWords, r.Field.Chars)))
	}
	return r.figures(leastWords)
}

func (r *FormRow) picked() float32 {
	if !r.isPicked() {
		return r.least()
	}
	return r.figures(min(mostWished, max(leastPicked, r.Field.Chars)))
}

func (r *FormRow) wished() float32 {
	return r.figures(min(mostWished, max(leastPicked, r.Field.Chars)))
}

// isPicked reports whether the field is filled from a list.
func (r *FormRow) isPicked() bool {
	return r.Field.Kind == model.FindField || r.Field.Kind == model.OpenField
}

// figures is the width after the name with so many figures for words.
func (r *FormRow) figures(chars int) float32 {
	return r.after(entryWidth(r.Field, float32(chars)*figureWidth()+2*theme.InnerPadding()))
}

func (r *FormRow) after(entry float32) float32 {
	if r.Field.Unit != "" {
		entry += theme.InnerPadding() + r.Unit.MinSize().Width
	}
	return theme.InnerPadding() + entry
}

// CreateRenderer draws the row.
func (r *FormRow) CreateRenderer() fyne.WidgetRenderer {
	return &formRowRenderer{row: r, objects: []fyne.CanvasObject{
		r.Label, r.Entry.(fyne.CanvasObject), r.Unit, r.note, r.mark.icon, r.mark.word,
	}}
}

type formRowRenderer struct {
	row     *FormRow
	objects []fyne.CanvasObject
}

func (r *formRowRenderer) MinSize() fyne.Size {
	row := r.row
	return fyne.NewSize(row.columns.label+row.least(), row.Height(row.setting))
}

func (r *formRowRenderer) Layout(size fyne.Size) {
	row, gap := r.row, theme.InnerPadding()
	high, low := row.Entry.MinSize().Height, row.note.MinSize().Height
	row.Label.Move(fyne.NewPos(0, 0))
	row.Label.Resize(fyne.NewSize(row.columns.label, high))
	left := row.columns.label + gap
	width := max(4*gap, entryWidth(row.Field, size.Width-left-row.mark.aside(row)))
	entry := row.Entry.(fyne.CanvasObject)
	entry.Move(fyne.NewPos(left, 0))
	entry.Resize(fyne.NewSize(width, high))
	row.Unit.Move(fyne.NewPos(left+width+gap, 0))
	row.Unit.Resize(fyne.NewSize(max(0, size.Width-left-width-gap), high))
	SetVisible(row.note, row.isBelow(row.setting))
	row.note.Move(fyne.NewPos(left, high+min(ringRoom, max(0, size.Height-high-low))))
	row.note.Resize(fyne.NewSize(max(size.Width, row.noteRoom)-left, low))
	row.mark.place(row, entry, size.Width)
}

// ringRoom is the space between an entry and its message, where there is room: the focus ring is
// drawn there.
const ringRoom = 5

// leastWords and leastPicked are the least widths for free text and for a value chosen from a list,
// in digits; mostWished limits what fields wish for, and mostWords how wide a free text field
// grows.
const (
	leastWords  = 10
	leastPicked = 12
	mostWished  = 22
	mostWords   = 36
)

// isFigure reports whether the place to type is as wide as its figures need.
func (r *FormRow) isFigure() bool { return isFigure(r.Field) }

func isFigure(f model.Field) bool { return f.Kind == model.FigureField || f.Unit != "" }

// entryWidth is the room an entry takes: figures as much as they need, words
// what there is.
func entryWidth(f model.Field, room float32) float32 {
	if isFigure(f) {
		return min(room, float32(f.Chars)*figureWidth()+3*theme.InnerPadding())
	}
	return min(room, mostWords*figureWidth())
}

func (r *formRowRenderer) Refresh() {
	r.Layout(r.row.Size())
	for _, o := range r.objects {
		o.Refresh()
	}
}

func (r *formRowRenderer) Objects() []fyne.CanvasObject { return r.objects }
func (r *formRowRenderer) Destroy()                     {}
