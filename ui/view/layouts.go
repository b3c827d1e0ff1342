package view

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// margin leaves a little ground around what it holds.
type margin struct{}

func (margin) gap() float32 { return 1.5 * theme.Padding() }

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

// slim leaves just the ground that the ring round a field in hand needs.
type slim struct{}

const slimGap = 3

func (slim) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, o := range objects {
		size = size.Max(o.MinSize())
	}
	return size.AddWidthHeight(2*slimGap, 2*slimGap)
}

func (slim) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		o.Move(fyne.NewPos(slimGap, slimGap))
		o.Resize(size.SubtractWidthHeight(2*slimGap, 2*slimGap))
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

// tight stacks rows, each a little higher than it needs.
type tight struct{ gap float32 }

func (l *tight) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, o := range visible(objects) {
		least := o.MinSize()
		size = fyne.NewSize(max(size.Width, least.Width), size.Height+least.Height+l.gap)
	}
	return size
}

func (l *tight) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	y := float32(0)
	for _, o := range visible(objects) {
		height := o.MinSize().Height + l.gap
		o.Move(fyne.NewPos(0, y))
		o.Resize(fyne.NewSize(size.Width, height))
		y += height
	}
}

// fitting sets what it holds side by side as far as there is room, and leaves
// the rest out.
type fitting struct{}

func (fitting) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, o := range objects {
		size = fyne.NewSize(0, max(size.Height, o.MinSize().Height))
	}
	return size
}

func (fitting) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	x := float32(0)
	for i, o := range objects {
		width := o.MinSize().Width
		if i == len(objects)-1 {
			width = max(width, size.Width-x)
		}
		setVisible(o, x+width <= size.Width)
		o.Move(fyne.NewPos(x, 0))
		o.Resize(fyne.NewSize(width, size.Height))
		x += width + theme.Padding()
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

// abreast sets columns of one width side by side, as many as there is room for,
// and the others beneath.
type abreast struct{ width float32 }

func (*abreast) gap() float32 { return 4 * margin{}.gap() }

// inRow is how many stand side by side in the width last given.
func (l *abreast) inRow(objects []fyne.CanvasObject) int {
	least := grid{}.cell(objects).Width + l.gap()
	return max(1, min(len(objects), int((l.width+l.gap())/least)))
}

func (l *abreast) MinSize(objects []fyne.CanvasObject) fyne.Size {
	high, n := float32(0), l.inRow(objects)
	for i := 0; i < len(objects); i += n {
		high += grid{}.cell(objects[i:min(len(objects), i+n)]).Height
	}
	return fyne.NewSize(grid{}.cell(objects).Width, high)
}

func (l *abreast) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	l.width = size.Width
	n, y := l.inRow(objects), float32(0)
	width := (size.Width+l.gap())/float32(n) - l.gap()
	for i := 0; i < len(objects); i += n {
		row := objects[i:min(len(objects), i+n)]
		high := grid{}.cell(row).Height
		for at, o := range row {
			put(o, float32(at)*(width+l.gap()), y, width, high)
		}
		y += high
	}
}
