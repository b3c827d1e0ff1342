package bins

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/shell"
)

// overList sets the head of the list, and the drawing of the house below it. The drawing takes what
// height it needs least; the list has the rest.
type overList struct{}

// MinSize is both, one over the other.
func (overList) MinSize(objects []fyne.CanvasObject) fyne.Size {
	head, house := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(max(head.Width, house.Width), head.Height+house.Height)
}

// Layout gives the head its height and the drawing the rest.
func (overList) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	head := objects[0].MinSize().Height
	shell.Put(objects[0], 0, 0, size.Width, head)
	shell.Put(objects[1], 0, head, size.Width, size.Height-head)
}
