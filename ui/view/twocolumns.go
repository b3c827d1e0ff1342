package view

import (
	"fyne.io/fyne/v2"
)

// twoColumns sets two columns of rows side by side, or with too little room one
// under the other. Ground to spare goes between the rows, in both columns
// alike, so that they keep one rhythm.
type twoColumns struct{}

// mostBetween is the most ground between two rows.
const mostBetween = 20

func (twoColumns) gap() float32 { return margin{}.gap() * 2 }

// abreast is the width that the columns need side by side.
func (l twoColumns) abreast(columns []fyne.CanvasObject) float32 {
	width := -l.gap()
	for _, o := range columns {
		width += rowsHigh(o, 0).Width + l.gap()
	}
	return width
}

// MinSize asks for the width of one column. The height depends on whether the
// columns stand abreast at the width last given.
func (l twoColumns) MinSize(columns []fyne.CanvasObject) fyne.Size {
	size, given := fyne.Size{}, float32(0)
	stacked := float32(0)
	for _, o := range columns {
		least := rowsHigh(o, 0)
		size = size.Max(least)
		stacked += least.Height
		given = max(given, o.Position().X+o.Size().Width)
	}
	if given > 0 && given < l.abreast(columns) {
		size.Height = stacked
	}
	return size
}

func (l twoColumns) Layout(columns []fyne.CanvasObject, size fyne.Size) {
	if size.Width < l.abreast(columns) {
		l.stack(columns, size)
		return
	}
	width := (size.Width - l.gap()) / float32(len(columns))
	between := float32(mostBetween)
	for _, o := range columns {
		rows := float32(len(visible(o.(*fyne.Container).Objects)))
		between = min(between, max(0, (size.Height-rowsHigh(o, 0).Height)/max(1, rows)))
	}
	for i, o := range columns {
		rowsHigh(o, between)
		o.Move(fyne.NewPos(float32(i)*(width+l.gap()), 0))
		o.Resize(fyne.NewSize(width, size.Height))
		o.Refresh()
	}
}

func (twoColumns) stack(columns []fyne.CanvasObject, size fyne.Size) {
	y := float32(0)
	for _, o := range columns {
		high := rowsHigh(o, 0).Height
		o.Move(fyne.NewPos(0, y))
		o.Resize(fyne.NewSize(size.Width, high))
		o.Refresh()
		y += high
	}
}

// rowsHigh sets the ground between the rows of a column and gives the room the
// column then takes.
func rowsHigh(column fyne.CanvasObject, between float32) fyne.Size {
	c := column.(*fyne.Container)
	c.Layout.(*tight).gap = between
	return c.MinSize()
}
