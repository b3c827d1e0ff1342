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

// wide gives what it holds a width that grows with the text.
type wide struct{ figures float32 }

func (l wide) width() float32 {
	return l.figures * fyne.MeasureText("0", theme.TextSize(), fyne.TextStyle{}).Width
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
