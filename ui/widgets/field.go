package widgets

import (
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"
	"tenthpoint/ui/widgets/status"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Field is one row of a form: label, entry, unit, and beside it how the text was read or what is
// wrong with it.
type Field struct {
	widget.BaseWidget

	// Chars is the width of the entry in digits. Zero means 12.
	Chars int

	label string
	unit  string
	entry fyne.Widget
	Note  *status.Text
	quiet string // the reading, shown when there is nothing worse to say
	cols  *columns
}

// columns are the positions the rows of one sheet share: where entries begin, and where the notes
// of ordinary rows begin. A wide entry pushes its own note to the right.
type columns struct{ entry, note float32 }

// ordinaryChars is the default width of an entry in digits.
const ordinaryChars = 12

// NewField makes a row around an entry, a find field or a tick. The unit may
// be empty.
func NewField(label, unit string, entry fyne.Widget) *Field {
	f := &Field{label: label, unit: unit, entry: entry, Note: status.NewText(), cols: &columns{}}
	f.Note.Lines = 1
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
	if f.Note.State() == model.Plain && (f.Note.Text() == was || f.Note.Text() == "") {
		f.Note.Say(model.Plain, text)
	}
}

// SetNote shows a warning or an error with its state. An empty text removes it and shows the
// reading again.
func (f *Field) SetNote(state model.State, text string) {
	if text == "" {
		state, text = model.Plain, f.quiet
	}
	f.Note.Say(state, text)
}

// SetProblem is SetNote with Stop: the text typed is invalid.
func (f *Field) SetProblem(text string) { f.SetNote(model.Stop, text) }

// Says is the sentence shown beside the field now, and its state.
func (f *Field) Says() (model.State, string) { return f.Note.State(), f.Note.Text() }

// SetLabel changes the label.
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

func (f *Field) labelLetters() paint.TextStyle {
	return paint.TextStyle{Size: theme.SizeNameText, Color: apptheme.ColorInk}
}

func (f *Field) unitLetters() paint.TextStyle {
	return paint.TextStyle{Size: theme.SizeNameText, Color: apptheme.ColorQuiet}
}

// needs returns the columns this row would choose if it were alone.
func (f *Field) needs() columns {
	p := paint.PainterFor(f)
	own := columns{entry: p.Measure(f.label, f.labelLetters()).Width + p.Inner()}
	if _, tick := f.entry.(*Checkbox); !tick && f.Chars <= ordinaryChars {
		own.note = f.entryWidth(p) + p.Inner()
		if f.unit != "" {
			own.note += p.Measure(f.unit, f.unitLetters()).Width + p.Inner()
		}
	}
	return own
}

func (f *Field) entryWidth(p paint.Painter) float32 {
	if _, tick := f.entry.(*Checkbox); tick {
		return f.entry.MinSize().Width
	}
	chars := f.Chars
	if chars == 0 {
		chars = ordinaryChars
	}
	return float32(chars)*p.Measure("0", f.labelLetters()).Width + 2*p.Inner()
}

// CreateRenderer draws the row.
func (f *Field) CreateRenderer() fyne.WidgetRenderer {
	return &fieldRenderer{Drawing: *paint.NewDrawing(f), field: f}
}

func (f *Field) LeastSize() fyne.Size {
	p := paint.PainterFor(f)
	return fyne.NewSize(f.noteStart(p)+8*p.Inner(), f.entry.MinSize().Height)
}

// entryStart and noteStart are the left edges of the row's parts.
func (f *Field) entryStart() float32 { return max(f.cols.entry, f.needs().entry) }

func (f *Field) noteStart(p paint.Painter) float32 {
	end := f.entryWidth(p) + p.Inner()
	if f.unit != "" {
		end += p.Measure(f.unit, f.unitLetters()).Width + p.Inner()
	}
	return f.entryStart() + max(f.cols.note, end)
}

func (f *Field) Paint(size fyne.Size) []fyne.CanvasObject {
	p := paint.PainterFor(f)
	middle := func(l paint.TextStyle) float32 { return (size.Height - p.LineHeight(l)) / 2 }
	x := f.entryStart()
	objects := []fyne.CanvasObject{
		p.Write(f.label, f.labelLetters(), fyne.NewPos(0, middle(f.labelLetters()))),
	}
	f.entry.Move(fyne.NewPos(x, 0))
	f.entry.Resize(fyne.NewSize(f.entryWidth(p), size.Height))
	if f.unit != "" {
		after := fyne.NewPos(x+f.entryWidth(p)+p.Inner(), middle(f.unitLetters()))
		objects = append(objects, p.Write(f.unit, f.unitLetters(), after))
	}
	x = f.noteStart(p)
	over := 2 * p.Pad() // into the gap between rows, so that two small lines fit
	f.Note.Move(fyne.NewPos(x, -over/2))
	f.Note.Resize(fyne.NewSize(max(0, size.Width-x), size.Height+over))
	return append(objects, f.entry, f.Note)
}

// fieldRenderer passes a refresh on to the widgets in the row.
type fieldRenderer struct {
	paint.Drawing
	field *Field
}

func (r *fieldRenderer) Refresh() {
	r.field.entry.Refresh()
	r.field.Note.Refresh()
	r.Drawing.Refresh()
}

// NewSheet stacks the rows of a form. All Field rows share the columns where entries and notes
// begin, so that entries line up; other objects, such as a Heading, take the whole width.
func NewSheet(rows ...fyne.CanvasObject) *fyne.Container {
	return container.New(&sheetLayout{cols: &columns{}}, rows...)
}

type sheetLayout struct{ cols *columns }

// share measures the rows and sets the same columns in every field.
func (l *sheetLayout) share(rows []fyne.CanvasObject) {
	widest := columns{}
	for _, row := range rows {
		if f, ok := row.(*Field); ok && row.Visible() {
			need := f.needs()
			widest.entry = max(widest.entry, need.entry)
			widest.note = max(widest.note, need.note)
		}
	}
	*l.cols = widest
	for _, row := range rows {
		if f, ok := row.(*Field); ok && f.cols != l.cols {
			f.cols = l.cols
		}
	}
}

func (l *sheetLayout) MinSize(rows []fyne.CanvasObject) fyne.Size {
	l.share(rows)
	var size fyne.Size
	for _, row := range rows {
		if !row.Visible() {
			continue
		}
		least := row.MinSize()
		size.Width = max(size.Width, least.Width)
		size.Height += least.Height + theme.Padding()
	}
	return size
}

func (l *sheetLayout) Layout(rows []fyne.CanvasObject, size fyne.Size) {
	before := *l.cols
	l.share(rows)
	y := float32(0)
	for _, row := range rows {
		if !row.Visible() {
			continue
		}
		height := row.MinSize().Height
		row.Move(fyne.NewPos(0, y))
		wanted := fyne.NewSize(size.Width, height)
		if row.Size() == wanted && before != *l.cols {
			row.Refresh()
		}
		row.Resize(wanted)
		y += height + theme.Padding()
	}
}

// Heading is the title of a part of a form or a screen, with a ruled line.
type Heading struct {
	widget.BaseWidget
	text string
}

// NewHeading makes a heading.
func NewHeading(text string) *Heading {
	h := &Heading{text: text}
	h.ExtendBaseWidget(h)
	return h
}

// SetText changes the heading.
func (h *Heading) SetText(text string) {
	if h.text != text {
		h.text = text
		h.Refresh()
	}
}

// CreateRenderer draws the heading.
func (h *Heading) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(h) }

func (h *Heading) textStyle() paint.TextStyle {
	return paint.TextStyle{Size: apptheme.SizeNote, Color: apptheme.ColorQuiet, Style: paint.Bold}
}

func (h *Heading) LeastSize() fyne.Size {
	p := paint.PainterFor(h)
	return p.Measure(h.text, h.textStyle()).AddWidthHeight(0, p.Pad())
}

func (h *Heading) Paint(size fyne.Size) []fyne.CanvasObject {
	p := paint.PainterFor(h)
	l := h.textStyle()
	text := p.Write(h.text, l, fyne.NewPos(0, p.Pad()/2))
	start := text.Size().Width + p.Inner()
	line := p.Block(apptheme.ColorRule, fyne.NewPos(start, size.Height/2), fyne.NewSize(max(0, size.Width-start), 1))
	return []fyne.CanvasObject{text, line}
}
