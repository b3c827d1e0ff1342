package shell

import (
	"tenthpoint/ui/apptheme"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
)

// Margin puts a margin around its content.
type Margin struct{}

func (Margin) gap() float32 { return 1.5 * theme.Padding() }

func (m Margin) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, o := range objects {
		size = size.Max(o.MinSize())
	}
	return size.AddWidthHeight(2*m.gap(), 2*m.gap())
}

func (m Margin) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		o.Move(fyne.NewPos(m.gap(), m.gap()))
		o.Resize(size.SubtractWidthHeight(2*m.gap(), 2*m.gap()))
	}
}

// readable sets the content over the whole window, and takes letters that are read across the room
// where the window is high enough for them, until somebody chooses a size.
type readable struct{ window *Window }

// highWindow is a window with room for the largest letters: that of a full screen of 1080 lines.
const highWindow = 1000

func (l readable) MinSize(objects []fyne.CanvasObject) fyne.Size { return objects[0].MinSize() }

func (l readable) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	Put(objects[0], 0, 0, size.Width, size.Height)
	want := apptheme.TextOrdinary
	if size.Height >= highWindow {
		want = apptheme.TextLargest
	}
	if w := l.window; !w.sized && want != w.Look.Scale {
		w.Runner.Later(func() {
			if !w.sized && want != w.Look.Scale {
				w.setScale(want)
			}
		})
	}
}

// SlimGap is just the ground that the ring round the focused field needs.
const SlimGap = 3

// Slim puts that margin around its content.
func Slim() fyne.Layout {
	return layout.NewCustomPaddedLayout(SlimGap, SlimGap, SlimGap, SlimGap)
}

// Wide sets the width of its content in digits, so that it grows with the text.
type Wide struct{ Figures float32 }

func (l Wide) width() float32 { return l.Figures * figureWidth() }

func figureWidth() float32 {
	return fyne.MeasureText("0", theme.TextSize(), fyne.TextStyle{}).Width
}

func (l Wide) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var height float32
	for _, o := range objects {
		height = max(height, o.MinSize().Height)
	}
	return fyne.NewSize(l.width(), height)
}

func (l Wide) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		o.Resize(size)
	}
}

// Tight stacks rows, each a little higher than it needs.
type Tight struct{ Gap float32 }

func (l *Tight) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, o := range Visible(objects) {
		least := o.MinSize()
		size = fyne.NewSize(max(size.Width, least.Width), size.Height+least.Height+l.Gap)
	}
	return size
}

func (l *Tight) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	y := float32(0)
	for _, o := range Visible(objects) {
		height := o.MinSize().Height + l.Gap
		o.Move(fyne.NewPos(0, y))
		o.Resize(fyne.NewSize(size.Width, height))
		y += height
	}
}

// Fitting lays its objects side by side as far as there is room, and leaves the rest out.
type Fitting struct{}

func (Fitting) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, o := range objects {
		size = fyne.NewSize(0, max(size.Height, o.MinSize().Height))
	}
	return size
}

func (Fitting) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	x := float32(0)
	for i, o := range objects {
		width := o.MinSize().Width
		if i == len(objects)-1 {
			width = max(width, size.Width-x)
		}
		SetVisible(o, x+width <= size.Width)
		o.Move(fyne.NewPos(x, 0))
		o.Resize(fyne.NewSize(width, size.Height))
		x += width + theme.Padding()
	}
}

func Visible(objects []fyne.CanvasObject) []fyne.CanvasObject {
	var out []fyne.CanvasObject
	for _, o := range objects {
		if o.Visible() {
			out = append(out, o)
		}
	}
	return out
}

// Grid lays its objects in columns of one width, row by row.
type Grid struct {
	columns int
	gap     float32
}

func (l Grid) Cell(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, o := range objects {
		size = size.Max(o.MinSize())
	}
	return size
}

func (l Grid) MinSize(objects []fyne.CanvasObject) fyne.Size {
	cell, rows := l.Cell(objects), (len(objects)+l.columns-1)/l.columns
	return fyne.NewSize(float32(l.columns)*(cell.Width+l.gap)-l.gap, float32(rows)*(cell.Height+l.gap)-l.gap)
}

func (l Grid) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	width, height := (size.Width+l.gap)/float32(l.columns)-l.gap, l.Cell(objects).Height
	for i, o := range objects {
		o.Move(fyne.NewPos(float32(i%l.columns)*(width+l.gap), float32(i/l.columns)*(height+l.gap)))
		o.Resize(fyne.NewSize(width, height))
	}
}

// Abreast sets columns of one width side by side, as many as there is room for,
// and the others below.
type Abreast struct{ width float32 }

func (*Abreast) gap() float32 { return 4 * Margin{}.gap() }

// inRow returns how many fit side by side in the width last given.
func (l *Abreast) inRow(objects []fyne.CanvasObject) int {
	least := Grid{}.Cell(objects).Width + l.gap()
	return max(1, min(len(objects), int((l.width+l.gap())/least)))
}

func (l *Abreast) MinSize(objects []fyne.CanvasObject) fyne.Size {
	high, n := float32(0), l.inRow(objects)
	for i := 0; i < len(objects); i += n {
		high += Grid{}.Cell(objects[i:min(len(objects), i+n)]).Height
	}
	return fyne.NewSize(Grid{}.Cell(objects).Width, high)
}

func (l *Abreast) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	l.width = size.Width
	n, y := l.inRow(objects), float32(0)
	width := (size.Width+l.gap())/float32(n) - l.gap()
	for i := 0; i < len(objects); i += n {
		row := objects[i:min(len(objects), i+n)]
		high := Grid{}.Cell(row).Height
		for at, o := range row {
			Put(o, float32(at)*(width+l.gap()), y, width, high)
		}
		y += high
	}
}

// lines are rows of buttons one under the other, each spread over the width.
type lines [][]fyne.CanvasObject

// least is the room they need.
func (l lines) least() fyne.Size {
	size := fyne.NewSize(0, -theme.Padding())
	for _, line := range l {
		least := Spread{}.MinSize(line)
		size = fyne.NewSize(max(size.Width, least.Width), size.Height+least.Height+theme.Padding())
	}
	return size
}

// set puts them over a width, from the top down.
func (l lines) set(width float32) {
	y := float32(0)
	for _, line := range l {
		high := Spread{}.MinSize(line).Height
		Spread{}.Layout(line, fyne.NewSize(width, high))
		for _, o := range line {
			o.Move(o.Position().AddXY(0, y))
		}
		y += high + theme.Padding()
	}
}
