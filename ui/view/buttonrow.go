package view

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/kit"
)

// mostInRow is how many buttons stand in one row.
const mostInRow = 6

// buttonRow is a row of buttons for commands, or two rows where there are
// many, each with a place on the ring.
func buttonRow(w *Window, ring *kit.Ring, ids []string) fyne.CanvasObject {
	first := len(ids)
	if first > mostInRow {
		first = (first + 1) / 2
	}
	rows := container.NewVBox()
	for _, part := range [][]string{ids[:first], ids[first:]} {
		if len(part) == 0 {
			continue
		}
		row := container.New(spread{})
		for _, id := range part {
			b := w.commands.Button(id)
			row.Add(b)
			ring.Add(id, b)
		}
		rows.Add(row)
	}
	return rows
}

// spread sets what it holds in a row: each has the width it needs, and what is
// left goes to all alike. Where there is too little, each gives up the same part
// of its own; a button then leaves its key out.
type spread struct{}

// leastButton is the least width of a button, in figures.
const leastButton = 8

func (spread) gap() float32 { return margin{}.gap() }

func (l spread) MinSize(objects []fyne.CanvasObject) fyne.Size {
	height := float32(0)
	for _, o := range objects {
		height = max(height, o.MinSize().Height)
	}
	return fyne.NewSize(float32(len(objects))*(wide{leastButton}.width()+l.gap()), height)
}

// needed is the width all need that stand in the row, without the gaps.
func (l spread) needed(objects []fyne.CanvasObject) float32 {
	width := float32(0)
	for _, o := range objects {
		width += o.MinSize().Width
	}
	return width
}

func (l spread) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	count := float32(max(1, len(objects)))
	room, needed := size.Width-l.gap()*(count-1), l.needed(objects)
	more, part := max(0, room-needed)/count, min(1, room/max(1, needed))
	x := float32(0)
	for _, o := range objects {
		width := o.MinSize().Width*part + more
		o.Move(fyne.NewPos(x, 0))
		o.Resize(fyne.NewSize(width, size.Height))
		x += width + l.gap()
	}
}
