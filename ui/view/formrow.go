package view

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"tenthpoint/ui/kit"
	"tenthpoint/ui/model"
	"tenthpoint/ui/present"
)

// formRow is one field of a form: its name, the place to type, the unit, and
// beneath them how it was read or what is wrong with it. How much of that stands
// beneath is a matter of the setting; what does not is a mark in the row.
type formRow struct {
	widget.BaseWidget
	field   model.Field
	label   *label
	unit    *label
	note    *kit.Note
	mark    *rowMark
	entry   kit.Keyed
	columns *formColumns
	setting setting
	// noteRoom is how far what is said beneath reaches, from the left of the row.
	noteRoom float32
	inHand   bool // the keyboard is in it
	mute     bool // nothing is ever said of it
}

// formColumns is where the entries of one column begin.
type formColumns struct{ label float32 }

func newFormRow(f model.Field, entry kit.Keyed, columns *formColumns) *formRow {
	r := &formRow{
		label: newLabel("", ordinary), note: kit.NewNote(), entry: entry, columns: columns,
		unit: newLabel("", unitSize), mark: newRowMark(),
	}
	r.ExtendBaseWidget(r)
	r.set(f)
	return r
}

// set shows the field as it now stands. The text in the entry is the person's
// while they type; it is only written when it differs.
func (r *formRow) set(f model.Field) {
	stale := r.unit.text != f.Unit
	r.field = f
	r.label.say(f.Label)
	r.unit.say(f.Unit)
	r.note.Say(r.says())
	if r.mark.say(r.marked()) || stale {
		r.Refresh()
	}
}

// says is what is to be said of the field: what is wrong, how it was read, or
// that it is still to come.
func (r *formRow) says() (model.State, string) {
	f := r.field
	switch {
	case f.Note != "":
		return f.State, f.Note
	case f.Reading != "":
		return model.Plain, f.Reading
	case f.Missing:
		return model.Missing, present.Say("still to come")
	}
	return model.Plain, ""
}

// isDoubted reports whether what was typed is wrong, or to be looked at twice.
func (r *formRow) isDoubted() bool {
	return r.field.Note != "" && (r.field.State == model.Stop || r.field.State == model.Warn)
}

// isBeneath reports whether what is said of the field stands beneath it.
func (r *formRow) isBeneath(s setting) bool {
	switch {
	case r.mute:
		return false
	case s == airy:
		return true
	}
	return s == snug && r.isDoubted()
}

// marked is the mark in the row for what does not stand beneath.
func (r *formRow) marked() model.State {
	switch {
	case r.mute || r.isBeneath(r.setting):
		return model.Plain
	case r.isDoubted():
		return r.field.State
	case r.field.Missing:
		return model.Missing
	}
	return model.Plain
}

// space sets the row closer or wider, and where its entry begins.
func (r *formRow) space(s setting, label float32) {
	if r.setting != s || r.columns.label != label {
		r.setting, r.columns.label = s, label
		r.mark.say(r.marked())
		r.Refresh()
	}
}

// take tells the row whether the keyboard is in it.
func (r *formRow) take(inHand bool) {
	if r.inHand != inHand {
		r.inHand = inHand
		r.Refresh()
	}
}

// height is how high the row stands in a setting.
func (r *formRow) height(s setting) float32 {
	high := r.entry.MinSize().Height
	if r.isBeneath(s) {
		high += r.note.MinSize().Height
	}
	return high
}

// least is the width the row needs after its name; picked that at which what is
// chosen from a list stands whole; and wished that at which running words do, most
// often.
func (r *formRow) least() float32 {
	if r.isPicked() {
		return r.figures(min(leastPicked, max(leastWords, r.field.Chars)))
	}
	return r.figures(leastWords)
}

func (r *formRow) picked() float32 {
	if !r.isPicked() {
		return r.least()
	}
	return r.figures(min(mostWished, max(leastPicked, r.field.Chars)))
}

func (r *formRow) wished() float32 {
	return r.figures(min(mostWished, max(leastPicked, r.field.Chars)))
}

// isPicked reports whether the field is filled from a list.
func (r *formRow) isPicked() bool {
	return r.field.Kind == model.FindField || r.field.Kind == model.OpenField
}

// figures is the width after the name with so many figures for words.
func (r *formRow) figures(chars int) float32 {
	return r.after(entryWidth(r.field, float32(chars)*figureWidth()+2*theme.InnerPadding()))
}

func (r *formRow) after(entry float32) float32 {
	if r.field.Unit != "" {
		entry += theme.InnerPadding() + r.unit.MinSize().Width
	}
	return theme.InnerPadding() + entry
}

// CreateRenderer is Fyne's way to draw the row.
func (r *formRow) CreateRenderer() fyne.WidgetRenderer {
	return &formRowRenderer{row: r, objects: []fyne.CanvasObject{
		r.label, r.entry.(fyne.CanvasObject), r.unit, r.note, r.mark.icon, r.mark.word,
	}}
}

type formRowRenderer struct {
	row     *formRow
	objects []fyne.CanvasObject
}

func (r *formRowRenderer) MinSize() fyne.Size {
	row := r.row
	return fyne.NewSize(row.columns.label+row.least(), row.height(row.setting))
}

func (r *formRowRenderer) Layout(size fyne.Size) {
	row, gap := r.row, theme.InnerPadding()
	high, low := row.entry.MinSize().Height, row.note.MinSize().Height
	row.label.Move(fyne.NewPos(0, 0))
	row.label.Resize(fyne.NewSize(row.columns.label, high))
	left := row.columns.label + gap
	width := max(4*gap, entryWidth(row.field, size.Width-left-row.mark.aside(row)))
	entry := row.entry.(fyne.CanvasObject)
	entry.Move(fyne.NewPos(left, 0))
	entry.Resize(fyne.NewSize(width, high))
	row.unit.Move(fyne.NewPos(left+width+gap, 0))
	row.unit.Resize(fyne.NewSize(max(0, size.Width-left-width-gap), high))
	setVisible(row.note, row.isBeneath(row.setting))
	row.note.Move(fyne.NewPos(left, high+min(ringRoom, max(0, size.Height-high-low))))
	row.note.Resize(fyne.NewSize(max(size.Width, row.noteRoom)-left, low))
	row.mark.place(row, entry, size.Width)
}

// ringRoom is the ground between an entry and what is said of it, where there is
// room: the ring of the entry in hand stands there.
const ringRoom = 5

// leastWords and leastPicked are the least room for words and for what is chosen
// from a list, in figures; mostWished is what fields wish for at most, and
// mostWords how wide a place for words grows.
const (
	leastWords  = 10
	leastPicked = 12
	mostWished  = 22
	mostWords   = 36
)

// isFigure reports whether the place to type is as wide as its figures need.
func (r *formRow) isFigure() bool { return isFigure(r.field) }

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
