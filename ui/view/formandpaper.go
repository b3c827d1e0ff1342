package view

import (
	"fyne.io/fyne/v2"
)

// Widths in figures: the least a sheet of paper can be read at, what it has
// when two stand side by side, and from where on it grows no more; and what the
// form has beside two sheets.
const (
	leastPaper   = 32
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
	least, most := wide{leastPaper}.width(), wide{mostPaper}.width()
	if l.isWide(width) {
		return min(most, (width-wide{formFigures}.width()-2*paperGap())/2)
	}
	return min(most, max(least, width*2/5))
}

func (l formAndPaper) MinSize(objects []fyne.CanvasObject) fyne.Size {
	form := objects[0].MinSize()
	return fyne.NewSize(form.Width+paperGap()+wide{leastPaper}.width(), form.Height)
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

// formSheet sets fields, ruler and large figures: the figures at the top, the
// ruler at the foot, the fields between them. The figures come last, so that
// they lie over what is scrolled beneath them.
type formSheet struct{}

func (formSheet) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, o := range visible(objects) {
		size = fyne.NewSize(max(size.Width, o.MinSize().Width), size.Height+o.MinSize().Height)
	}
	return size
}

func (formSheet) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	fields, foot, top := objects[0], objects[1], objects[2]
	high, low := top.MinSize().Height, float32(0)
	if foot.Visible() {
		low = foot.MinSize().Height
	}
	top.Resize(fyne.NewSize(size.Width, high))
	fields.Move(fyne.NewPos(0, high))
	fields.Resize(fyne.NewSize(size.Width, size.Height-high-low))
	foot.Move(fyne.NewPos(0, size.Height-low))
	foot.Resize(fyne.NewSize(size.Width, low))
}
