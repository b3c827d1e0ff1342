package view

import (
	"fyne.io/fyne/v2"
) // pictureAndSays sets pictures and tables at the left and what is said of them at
// the right.
type pictureAndSays struct{}

func (pictureAndSays) MinSize(objects []fyne.CanvasObject) fyne.Size {
	left, right := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(left.Width+paperGap()+right.Width, max(left.Height, right.Height))
}

func (pictureAndSays) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	right := size.Width * 36 / 100
	objects[0].Resize(fyne.NewSize(size.Width-right-paperGap(), size.Height))
	objects[1].Move(fyne.NewPos(size.Width-right, 0))
	objects[1].Resize(fyne.NewSize(right, size.Height))
}

// high gives what it holds the height of so many lines of a table.
type high struct{ lines float32 }

func (l high) MinSize(objects []fyne.CanvasObject) fyne.Size {
	size := objects[0].MinSize()
	const tableLines = 4 // a header and three rows, which a table asks for itself
	return fyne.NewSize(size.Width, size.Height/tableLines*l.lines)
}

func (high) Layout(objects []fyne.CanvasObject, size fyne.Size) { objects[0].Resize(size) }

// listAndPage sets the list at the left, a third of the width, and the page at
// the right.
type listAndPage struct{}

func (listAndPage) MinSize(objects []fyne.CanvasObject) fyne.Size {
	list, page := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(list.Width+paperGap()+page.Width, max(list.Height, page.Height))
}

func (listAndPage) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	list, gap := size.Width*36/100, paperGap()/2
	objects[0].Resize(fyne.NewSize(list, size.Height))
	objects[1].Move(fyne.NewPos(list+gap, 0))
	objects[1].Resize(fyne.NewSize(size.Width-list-gap, size.Height))
}
