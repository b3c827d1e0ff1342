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
	rows := container.New(&tight{gap: margin{}.gap()})
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
// left goes to all alike.
type spread struct{}

func (spread) gap() float32 { return margin{}.gap() }

func (l spread) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for i, o := range objects {
		least := o.MinSize()
		size = fyne.NewSize(size.Width+least.Width, max(size.Height, least.Height))
		if i > 0 {
			size.Width += l.gap()
		}
	}
	return size
}

func (l spread) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	more := (size.Width - l.MinSize(objects).Width) / float32(max(1, len(objects)))
	x := float32(0)
	for _, o := range objects {
		width := o.MinSize().Width + more
		o.Move(fyne.NewPos(x, 0))
		o.Resize(fyne.NewSize(width, size.Height))
		x += width + l.gap()
	}
}
