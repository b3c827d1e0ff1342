package view

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/kit"
)

// wordsColumn and figuresColumn make the two kinds of column.
func wordsColumn(title string, width int) kit.Column { return kit.Column{Title: title, Width: width} }

func figuresColumn(title string, width int) kit.Column {
	return kit.Column{Title: title, Width: width, Align: fyne.TextAlignTrailing}
}

// spare marks a column that a narrow window can do without; the highest goes
// first.
func spare(c kit.Column, rank int) kit.Column { c.Spare = rank; return c }

// titled sets a screen's title before the line that narrows it, middle to
// middle.
func titled(title string, line fyne.CanvasObject) fyne.CanvasObject {
	return container.New(titleAndLine{}, newLabel(title, heading), line)
}

type titleAndLine struct{}

func (titleAndLine) MinSize(objects []fyne.CanvasObject) fyne.Size {
	title, line := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(title.Width+paperGap()+line.Width, max(title.Height, line.Height))
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
		x += width + paperGap()
	}
}

// listAndSheet sets a list at the left and a sheet of paper at the right, at
// least so many figures wide.
type listAndSheet struct{ figures float32 }

func (l listAndSheet) sheet(width float32) float32 {
	return min(wide{mostPaper}.width(), max(wide{l.figures}.width(), width*3/10), width*52/100)
}

func (l listAndSheet) MinSize(objects []fyne.CanvasObject) fyne.Size {
	list, sheet := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(list.Width+paperGap()/2+wide{l.figures}.width(), max(list.Height, sheet.Height))
}

func (l listAndSheet) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	sheet, gap := l.sheet(size.Width), paperGap()/2
	objects[0].Resize(fyne.NewSize(size.Width-sheet-gap, size.Height))
	objects[1].Move(fyne.NewPos(size.Width-sheet, 0))
	objects[1].Resize(fyne.NewSize(sheet, size.Height))
}

// beforeCount sets a text at the left and how many there are at the right, in so
// many figures. A tip stands whole or not at all: the status line has it too.
type beforeCount struct {
	figures float32
	whole   bool
}

func (l beforeCount) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(wide{l.figures}.width(), max(objects[0].MinSize().Height, objects[1].MinSize().Height))
}

func (l beforeCount) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	text, count, width := objects[0], objects[1], wide{l.figures}.width()
	room := max(0, size.Width-width)
	if l.whole {
		setVisible(text, text.MinSize().Width <= room)
	}
	put(text, 0, 0, room, size.Height)
	put(count, size.Width-width, 0, width, size.Height)
}
