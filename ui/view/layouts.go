package view

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// margin leaves a little ground around what it holds.
type margin struct{}

func (margin) gap() float32 { return 2 * theme.Padding() }

func (m margin) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, o := range objects {
		size = size.Max(o.MinSize())
	}
	return size.AddWidthHeight(2*m.gap(), 2*m.gap())
}

func (m margin) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		o.Move(fyne.NewPos(m.gap(), m.gap()))
		o.Resize(size.SubtractWidthHeight(2*m.gap(), 2*m.gap()))
	}
}

// wide gives what it holds a width in figures, which grows with the text.
type wide struct{ figures float32 }

func (l wide) width() float32 { return l.figures * figureWidth() }

func figureWidth() float32 {
	return fyne.MeasureText("0", theme.TextSize(), fyne.TextStyle{}).Width
}

func (l wide) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var height float32
	for _, o := range objects {
		height = max(height, o.MinSize().Height)
	}
	return fyne.NewSize(l.width(), height)
}

func (l wide) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		o.Resize(size)
	}
}

// tight stacks rows with hardly any ground between them.
type tight struct{ gap float32 }

func (l tight) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, o := range visible(objects) {
		least := o.MinSize()
		size = fyne.NewSize(max(size.Width, least.Width), size.Height+least.Height+l.gap)
	}
	return size
}

func (l tight) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	y := float32(0)
	for _, o := range visible(objects) {
		height := o.MinSize().Height
		o.Move(fyne.NewPos(0, y))
		o.Resize(fyne.NewSize(size.Width, height))
		y += height + l.gap
	}
}

func visible(objects []fyne.CanvasObject) []fyne.CanvasObject {
	var out []fyne.CanvasObject
	for _, o := range objects {
		if o.Visible() {
			out = append(out, o)
		}
	}
	return out
}

// grid sets what it holds in columns of one width, row by row.
type grid struct {
	columns int
	gap     float32
}

func (l grid) cell(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, o := range objects {
		size = size.Max(o.MinSize())
	}
	return size
}

func (l grid) MinSize(objects []fyne.CanvasObject) fyne.Size {
	cell, rows := l.cell(objects), (len(objects)+l.columns-1)/l.columns
	return fyne.NewSize(float32(l.columns)*(cell.Width+l.gap)-l.gap, float32(rows)*(cell.Height+l.gap)-l.gap)
}

func (l grid) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	width, height := (size.Width+l.gap)/float32(l.columns)-l.gap, l.cell(objects).Height
	for i, o := range objects {
		o.Move(fyne.NewPos(float32(i%l.columns)*(width+l.gap), float32(i/l.columns)*(height+l.gap)))
		o.Resize(fyne.NewSize(width, height))
	}
}
