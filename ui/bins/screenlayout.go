package bins

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/shell"
)

// overList sets the head, the drawing of the house below it, and the list. The drawing takes a share
// of the height, so that a large screen shows a large house.
type overList struct{}

// houseShare is the part of the height that the drawing takes, one in so many.
const houseShare = 4

// MinSize is all three, one over the other.
func (overList) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var least fyne.Size
	for _, o := range objects {
		size := o.MinSize()
		least = fyne.NewSize(max(least.Width, size.Width), least.Height+size.Height)
	}
	return least
}

// Layout gives head and drawing their heights and the list the rest.
func (overList) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	head := objects[0].MinSize().Height
	house := max(objects[1].MinSize().Height, size.Height/houseShare)
	shell.Put(objects[0], 0, 0, size.Width, head)
	shell.Put(objects[1], 0, head, size.Width, house)
	shell.Put(objects[2], 0, head+house, size.Width, size.Height-head-house)
}
