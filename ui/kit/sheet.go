package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// NewSheet stacks the rows of a form. All Field rows share the places where
// entries and notes begin, so that entries stand under entries; other objects, such
// as a Heading, take the whole width.
func NewSheet(rows ...fyne.CanvasObject) *fyne.Container {
	return container.New(&sheetLayout{cols: &columns{}}, rows...)
}

type sheetLayout struct{ cols *columns }

// share measures the rows and gives every field the same columns.
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

// CreateRenderer is Fyne's way to draw the heading.
func (h *Heading) CreateRenderer() fyne.WidgetRenderer { return newDrawing(h) }

func (h *Heading) lettering() lettering {
	return lettering{size: SizeNote, color: ColorQuiet, style: bold}
}

func (h *Heading) least() fyne.Size {
	p := penFor(h)
	return p.measure(h.text, h.lettering()).AddWidthHeight(0, p.pad())
}

func (h *Heading) draw(size fyne.Size) []fyne.CanvasObject {
	p := penFor(h)
	l := h.lettering()
	text := p.write(h.text, l, fyne.NewPos(0, p.pad()/2))
	start := text.Size().Width + p.inner()
	line := p.block(ColorRule, fyne.NewPos(start, size.Height/2), fyne.NewSize(max(0, size.Width-start), 1))
	return []fyne.CanvasObject{text, line}
}
