package view

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// lines are rows of buttons one under the other, each spread over the width.
type lines [][]fyne.CanvasObject

// least is the room they need.
func (l lines) least() fyne.Size {
	size := fyne.NewSize(0, -theme.Padding())
	for _, line := range l {
		least := spread{}.MinSize(line)
		size = fyne.NewSize(max(size.Width, least.Width), size.Height+least.Height+theme.Padding())
	}
	return size
}

// set puts them over a width, from the top down.
func (l lines) set(width float32) {
	y := float32(0)
	for _, line := range l {
		high := spread{}.MinSize(line).Height
		spread{}.Layout(line, fyne.NewSize(width, high))
		for _, o := range line {
			o.Move(o.Position().AddXY(0, y))
		}
		y += high + theme.Padding()
	}
}
