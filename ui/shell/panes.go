package shell

import (
	"fyne.io/fyne/v2"
) // PictureAndSays sets pictures and tables at the left and what is said of them at
// the right.
type PictureAndSays struct{}

func (PictureAndSays) MinSize(objects []fyne.CanvasObject) fyne.Size {
	left, right := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(left.Width+PaperGap()+right.Width, max(left.Height, right.Height))
}

func (PictureAndSays) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	right := size.Width * 36 / 100
	objects[0].Resize(fyne.NewSize(size.Width-right-PaperGap(), size.Height))
	objects[1].Move(fyne.NewPos(size.Width-right, 0))
	objects[1].Resize(fyne.NewSize(right, size.Height))
}

// High gives what it holds the height of so many lines of a table.
type High struct{ Lines float32 }

func (l High) MinSize(objects []fyne.CanvasObject) fyne.Size {
	size := objects[0].MinSize()
	const tableLines = 4 // a header and three rows, which a table asks for itself
	return fyne.NewSize(size.Width, size.Height/tableLines*l.Lines)
}

func (High) Layout(objects []fyne.CanvasObject, size fyne.Size) { objects[0].Resize(size) }

// ListAndPage sets the list at the left, a third of the width, and the page at
// the right.
type ListAndPage struct{}

func (ListAndPage) MinSize(objects []fyne.CanvasObject) fyne.Size {
	list, page := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(list.Width+PaperGap()+page.Width, max(list.Height, page.Height))
}

func (ListAndPage) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	list, gap := size.Width*36/100, PaperGap()/2
	objects[0].Resize(fyne.NewSize(list, size.Height))
	objects[1].Move(fyne.NewPos(list+gap, 0))
	objects[1].Resize(fyne.NewSize(size.Width-list-gap, size.Height))
}
