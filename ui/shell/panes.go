package shell

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// Titled sets a screen's title before the line that narrows it, middle to
// middle.
func Titled(title string, line fyne.CanvasObject) fyne.CanvasObject {
	return container.New(titleAndLine{}, NewLabel(title, Heading), line)
}

type titleAndLine struct{}

func (titleAndLine) MinSize(objects []fyne.CanvasObject) fyne.Size {
	title, line := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(title.Width+PaperGap()+line.Width, max(title.Height, line.Height))
}

func (titleAndLine) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	x := float32(0)
	for i, o := range objects {
		least := o.MinSize()
		width := least.Width
		if i == len(objects)-1 {
			width = size.Width - x
		}
		o.Move(fyne.NewPos(x, (size.Height-least.Height)/2))
		o.Resize(fyne.NewSize(width, least.Height))
		x += width + PaperGap()
	}
}

// High sets the height of its content in lines of a table.
type High struct{ Lines float32 }

func (l High) MinSize(objects []fyne.CanvasObject) fyne.Size {
	size := objects[0].MinSize()
	const tableLines = 4 // a header and three rows, which a table asks for itself
	return fyne.NewSize(size.Width, size.Height/tableLines*l.Lines)
}

func (High) Layout(objects []fyne.CanvasObject, size fyne.Size) { objects[0].Resize(size) }

// Split sets two things side by side; the left has so many hundredths of the
// width.
type Split struct{ Left float32 }

func (Split) MinSize(objects []fyne.CanvasObject) fyne.Size {
	left, right := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(left.Width+PaperGap()+right.Width, max(left.Height, right.Height))
}

func (l Split) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	left, gap := size.Width*l.Left/100, PaperGap()/2
	Put(objects[0], 0, 0, left, size.Height)
	Put(objects[1], left+gap, 0, size.Width-left-gap, size.Height)
}

// ListAndPage is a list beside a page that has most of the width; PictureAndSays is pictures and tables
// with the text about them at the right.
var (
	ListAndPage    = Split{Left: 36}
	PictureAndSays = Split{Left: 64}
)
