package view

import (
	"fyne.io/fyne/v2"
)

// paperFigures is the least width of a sheet of paper, in figures, and
// mostPaper the width from which it grows no more.
const (
	paperFigures = 42
	mostPaper    = 62
	formFigures  = 62
)

// formAndPaper sets the form at the left and the slip at the right. Where there
// is room for two sheets, the working stands beside the slip for good.
type formAndPaper struct{}

// isWide reports whether two sheets have room beside the form.
func (formAndPaper) isWide(width float32) bool {
	return width > wide{formFigures + 2*paperFigures}.width()+2*paperGap()
}

func paperGap() float32 { return 2 * margin{}.gap() }

// sheet is the width of one sheet.
func (l formAndPaper) sheet(width float32) float32 {
	least, most := wide{paperFigures}.width(), wide{mostPaper}.width()
	if l.isWide(width) {
		return min(most, (width-wide{formFigures}.width()-2*paperGap())/2)
	}
	return min(most, max(least, width*2/5))
}

func (l formAndPaper) MinSize(objects []fyne.CanvasObject) fyne.Size {
	form := objects[0].MinSize()
	return fyne.NewSize(form.Width+paperGap()+wide{paperFigures}.width(), form.Height)
}

func (l formAndPaper) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	form, slip, working := objects[0], objects[1], objects[2]
	sheet := l.sheet(size.Width)
	left := size.Width - sheet - paperGap()
	setVisible(working, l.isWide(size.Width))
	if working.Visible() {
		working.Move(fyne.NewPos(size.Width-sheet, 0))
		working.Resize(fyne.NewSize(sheet, size.Height))
		slip.Move(fyne.NewPos(left-sheet, 0))
		left -= sheet + paperGap()
	} else {
		slip.Move(fyne.NewPos(size.Width-sheet, 0))
	}
	slip.Resize(fyne.NewSize(sheet, size.Height))
	form.Resize(fyne.NewSize(left, size.Height))
}
