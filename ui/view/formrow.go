package view

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"tenthpoint/ui/kit"
	"tenthpoint/ui/present"
)

// formRow is one field of a form: its name, the place to type, the unit, and
// beneath them how it was read or what is wrong with it.
type formRow struct {
	widget.BaseWidget
	field   present.Field
	label   *label
	unit    *label
	note    *kit.Note
	entry   kit.Keyed
	columns *formColumns
	bare    bool // running words, of which nothing is ever said
}

// formColumns is where the entries of one column begin.
type formColumns struct{ label float32 }

func newFormRow(f present.Field, entry kit.Keyed, columns *formColumns) *formRow {
	r := &formRow{
		label: newLabel("", ordinary), note: kit.NewNote(), entry: entry, columns: columns,
		unit: newLabel("", unitSize),
	}
	r.ExtendBaseWidget(r)
	r.set(f)
	return r
}

// set shows the field as it now stands. The text in the entry is the person's
// while they type; it is only written when it differs.
func (r *formRow) set(f present.Field) {
	r.field = f
	r.label.say(f.Label)
	r.unit.say(f.Unit)
	state, text := kit.State(f.State), f.Note
	if text == "" {
		state, text = kit.Plain, f.Reading
	}
	if text == "" && f.Missing {
		state, text = kit.Missing, present.Say("still to come")
	}
	r.note.Say(state, text)
}

// noteHeight is the room kept for what is said beneath.
func (r *formRow) noteHeight() float32 {
	if r.bare {
		return 0
	}
	return r.note.MinSize().Height
}

// CreateRenderer is Fyne's way to draw the row.
func (r *formRow) CreateRenderer() fyne.WidgetRenderer {
	return &formRowRenderer{row: r, objects: []fyne.CanvasObject{r.label, r.entry.(fyne.CanvasObject), r.unit, r.note}}
}

type formRowRenderer struct {
	row     *formRow
	objects []fyne.CanvasObject
}

func (r *formRowRenderer) MinSize() fyne.Size {
	row := r.row
	height := row.entry.MinSize().Height + row.noteHeight()
	width := row.columns.label + theme.InnerPadding() + entryWidth(row.field, leastWords*figureWidth())
	if row.field.Unit != "" {
		width += theme.InnerPadding() + row.unit.MinSize().Width
	}
	return fyne.NewSize(width, height)
}

func (r *formRowRenderer) Layout(size fyne.Size) {
	row, gap := r.row, theme.InnerPadding()
	high, low := row.entry.MinSize().Height, row.noteHeight()
	row.label.Move(fyne.NewPos(0, 0))
	row.label.Resize(fyne.NewSize(row.columns.label, high))
	left := row.columns.label + gap
	width := max(4*gap, entryWidth(row.field, size.Width-left))
	entry := row.entry.(fyne.CanvasObject)
	entry.Move(fyne.NewPos(left, 0))
	entry.Resize(fyne.NewSize(width, high))
	row.unit.Move(fyne.NewPos(left+width+gap, 0))
	row.unit.Resize(fyne.NewSize(max(0, size.Width-left-width-gap), high))
	row.note.Move(fyne.NewPos(left, high+min(ringRoom, max(0, size.Height-high-low))))
	row.note.Resize(fyne.NewSize(size.Width-left, low))
}

// ringRoom is the ground between an entry and what is said of it, where there is
// room: the ring of the entry in hand stands there.
const ringRoom = 4

// leastWords is the least room for words, in figures.
const leastWords = 13

// mostWords is how wide a place for words grows, in figures.
const mostWords = 36

// entryWidth is the room an entry takes: figures as much as they need, words
// what there is.
func entryWidth(f present.Field, room float32) float32 {
	if f.Kind == present.FigureField || f.Unit != "" {
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
