package shell

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/widgets"
)

// WordsColumn and figuresColumn make the two kinds of column.
func WordsColumn(title string, width int) widgets.Column {
	return widgets.Column{Title: title, Width: width}
}

func FiguresColumn(title string, width int) widgets.Column {
	return widgets.Column{Title: title, Width: width, Align: fyne.TextAlignTrailing}
}

// Spare marks a column that a narrow window can do without; the highest goes
// first.
func Spare(c widgets.Column, rank int) widgets.Column { c.Spare = rank; return c }

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

// ListAndSheet sets a list at the left and a sheet of paper at the right, at
// least so many figures wide.
type ListAndSheet struct{ Figures float32 }

func (l ListAndSheet) sheet(width float32) float32 {
	return min(Wide{MostPaper}.width(), max(Wide{l.Figures}.width(), width*3/10), width*52/100)
}

func (l ListAndSheet) MinSize(objects []fyne.CanvasObject) fyne.Size {
	list, sheet := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(list.Width+PaperGap()/2+Wide{l.Figures}.width(), max(list.Height, sheet.Height))
}

func (l ListAndSheet) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	sheet, gap := l.sheet(size.Width), PaperGap()/2
	objects[0].Resize(fyne.NewSize(size.Width-sheet-gap, size.Height))
	objects[1].Move(fyne.NewPos(size.Width-sheet, 0))
	objects[1].Resize(fyne.NewSize(sheet, size.Height))
}

// BeforeCount sets a text at the left and how many there are at the right, in so
// many figures. A tip stands whole or not at all: the status line has it too.
type BeforeCount struct {
	Figures float32
	Whole   bool
}

func (l BeforeCount) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(Wide{l.Figures}.width(), max(objects[0].MinSize().Height, objects[1].MinSize().Height))
}

func (l BeforeCount) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	text, count, width := objects[0], objects[1], Wide{l.Figures}.width()
	room := max(0, size.Width-width)
	if l.Whole {
		SetVisible(text, text.MinSize().Width <= room)
	}
	Put(text, 0, 0, room, size.Height)
	Put(count, size.Width-width, 0, width, size.Height)
}
