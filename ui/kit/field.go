package kit

import (
	"tenthpoint/ui/model"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Field is one row of a form: what is asked, where it is typed, in which unit,
// and, beside it, how it was read or what is wrong with it.
type Field struct {
	widget.BaseWidget

	// Chars is how many figures wide the place to type is. Zero takes twelve.
	Chars int

	label string
	unit  string
	entry fyne.Widget
	note  *Note
	quiet string // the reading, shown when there is nothing worse to say
	cols  *columns
}

// columns are what the rows of one sheet share: where entries begin, and where
// the notes of ordinary rows begin. A wide entry pushes its own note on.
type columns struct{ entry, note float32 }

// ordinaryChars is how many figures wide an entry is unless told otherwise.
const ordinaryChars = 12

// NewField makes a row around an entry, a find field or a tick. The unit may
// be empty.
func NewField(label, unit string, entry fyne.Widget) *Field {
	f := &Field{label: label, unit: unit, entry: entry, note: NewNote(), cols: &columns{}}
	f.note.Lines = 1
	f.ExtendBaseWidget(f)
	return f
}

// Entry is the widget in the row.
func (f *Field) Entry() fyne.Widget { return f.entry }

// SetReading says how the text was understood: "= 15.3 %". It shows while
// there is no note.
func (f *Field) SetReading(text string) {
	if f.quiet == text {
		return
	}
	was := f.quiet
	f.quiet = text
	if f.note.state == model.Plain && (f.note.text == was || f.note.text == "") {
		f.note.Say(model.Plain, text)
	}
}

// SetNote says what is wrong or worth knowing, in a sentence with its state.
// An empty text takes it back and shows the reading again.
func (f *Field) SetNote(state model.State, text string) {
	if text == "" {
		state, text = model.Plain, f.quiet
	}
	f.note.Say(state, text)
}

// SetProblem is SetNote with Stop: what was typed cannot stand.
func (f *Field) SetProblem(text string) { f.SetNote(model.Stop, text) }

// Note is the sentence shown beside the field now, and its state.
func (f *Field) Note() (model.State, string) { return f.note.state, f.note.text }

// SetLabel changes what is asked.
func (f *Field) SetLabel(text string) {
	if f.label != text {
		f.label = text
		f.Refresh()
	}
}

// SetUnit changes the unit.
func (f *Field) SetUnit(text string) {
	if f.unit != text {
		f.unit = text
		f.Refresh()
	}
}

func (f *Field) labelLetters() lettering {
	return lettering{size: theme.SizeNameText, color: ColorInk}
}

func (f *Field) unitLetters() lettering {
	return lettering{size: theme.SizeNameText, color: ColorQuiet}
}

// needs gives the columns this row would choose, standing alone.
func (f *Field) needs() columns {
	p := penFor(f)
	own := columns{entry: p.measure(f.label, f.labelLetters()).Width + p.inner()}
	if _, tick := f.entry.(*Tick); !tick && f.Chars <= ordinaryChars {
		own.note = f.entryWidth(p) + p.inner()
		if f.unit != "" {
			own.note += p.measure(f.unit, f.unitLetters()).Width + p.inner()
		}
	}
	return own
}

func (f *Field) entryWidth(p pen) float32 {
	if _, tick := f.entry.(*Tick); tick {
		return f.entry.MinSize().Width
	}
	chars := f.Chars
	if chars == 0 {
		chars = ordinaryChars
	}
	return float32(chars)*p.measure("0", f.labelLetters()).Width + 2*p.inner()
}

// CreateRenderer is Fyne's way to draw the row.
func (f *Field) CreateRenderer() fyne.WidgetRenderer {
	return &fieldRenderer{drawing: *newDrawing(f), field: f}
}

func (f *Field) least() fyne.Size {
	p := penFor(f)
	return fyne.NewSize(f.noteStart(p)+8*p.inner(), f.entry.MinSize().Height)
}

// entryStart and noteStart are where the row's parts begin.
func (f *Field) entryStart() float32 { return max(f.cols.entry, f.needs().entry) }

func (f *Field) noteStart(p pen) float32 {
	end := f.entryWidth(p) + p.inner()
	if f.unit != "" {
		end += p.measure(f.unit, f.unitLetters()).Width + p.inner()
	}
	return f.entryStart() + max(f.cols.note, end)
}

func (f *Field) draw(size fyne.Size) []fyne.CanvasObject {
	p := penFor(f)
	middle := func(l lettering) float32 { return (size.Height - p.lineHeight(l)) / 2 }
	x := f.entryStart()
	objects := []fyne.CanvasObject{
		p.write(f.label, f.labelLetters(), fyne.NewPos(0, middle(f.labelLetters()))),
	}
	f.entry.Move(fyne.NewPos(x, 0))
	f.entry.Resize(fyne.NewSize(f.entryWidth(p), size.Height))
	if f.unit != "" {
		after := fyne.NewPos(x+f.entryWidth(p)+p.inner(), middle(f.unitLetters()))
		objects = append(objects, p.write(f.unit, f.unitLetters(), after))
	}
	x = f.noteStart(p)
	over := 2 * p.pad() // into the gap between rows, so that two small lines fit
	f.note.Move(fyne.NewPos(x, -over/2))
	f.note.Resize(fyne.NewSize(max(0, size.Width-x), size.Height+over))
	return append(objects, f.entry, f.note)
}

// fieldRenderer passes a refresh on to what stands in the row.
type fieldRenderer struct {
	drawing
	field *Field
}

func (r *fieldRenderer) Refresh() {
	r.field.entry.Refresh()
	r.field.note.Refresh()
	r.drawing.Refresh()
}
