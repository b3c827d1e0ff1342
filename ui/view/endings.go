package view

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// endings sets the button that ends the work over rows of smaller ones; in one
// row, the smaller ones of its first row beside it.
type endings struct {
	inRow bool
	rows  []int // how many of the smaller buttons stand in each row
}

// lines are what stands in each line.
func (l *endings) lines(objects []fyne.CanvasObject) [][]fyne.CanvasObject {
	if l.inRow {
		return [][]fyne.CanvasObject{visible(objects[:1+l.rows[0]])}
	}
	out := [][]fyne.CanvasObject{objects[:1]}
	at := 1
	for _, n := range l.rows {
		if row := visible(objects[at : at+n]); len(row) > 0 {
			out = append(out, row)
		}
		at += n
	}
	return out
}

func (l *endings) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, line := range l.lines(objects) {
		least := spread{}.MinSize(line)
		size = fyne.NewSize(max(size.Width, least.Width), size.Height+least.Height+theme.Padding())
	}
	return size.SubtractWidthHeight(0, theme.Padding())
}

func (l *endings) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	y := float32(0)
	for _, line := range l.lines(objects) {
		high := spread{}.MinSize(line).Height
		spread{}.Layout(line, fyne.NewSize(size.Width, high))
		for _, o := range line {
			o.Move(o.Position().AddXY(0, y))
		}
		y += high + theme.Padding()
	}
}

// turn chooses one row or several. What has no place in the one is out of sight:
// its key does the same.
func (l *endings) turn(objects []fyne.CanvasObject, inRow bool) {
	l.inRow = inRow
	for _, o := range objects[1+l.rows[0]:] {
		setVisible(o, !inRow)
	}
}
