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
