package shell

import (
	"tenthpoint/ui/widgets"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// mostInRow is the largest number of buttons in one row.
const mostInRow = 6

// ButtonRow is a row of buttons for commands, or more rows where there are many or
// their words are long, each with a place in the focus order.
func ButtonRow(w *Window, order *widgets.FocusOrder, ids []string) fyne.CanvasObject {
	row := container.New(buttonRows{w})
	for _, id := range ids {
		b := w.Commands.Button(id)
		if c, _ := w.Commands.Find(id); len(c.Keys) > 0 && c.Keys[0] == mainKey && !c.Destroys {
			b.Importance = HighImportance
		}
		row.Add(b)
		order.Add(id, b)
	}
	return row
}

// buttonRows sets buttons in as few rows as their words have room for, over the
// width of the screen.
type buttonRows struct{ window *Window }

// parts are the buttons row by row.
func (l buttonRows) parts(objects []fyne.CanvasObject) (rows lines) {
	room := l.window.body.Size().Width
	for n := (len(objects) + mostInRow - 1) / mostInRow; ; n++ {
		rows = rows[:0]
		fits := true
		each := (len(objects) + n - 1) / n
		for i := 0; i < len(objects); i += each {
			part := objects[i:min(len(objects), i+each)]
			rows = append(rows, part)
			least := -Spread{}.Gap()
			for _, o := range part {
				least += leastWhole(o) + Spread{}.Gap()
			}
			fits = fits && (least <= room || room <= 0)
		}
		if fits || each <= 2 {
			return rows
		}
	}
}

func (l buttonRows) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return l.parts(objects).least()
}

func (l buttonRows) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	l.parts(objects).set(size.Width)
}

// Spread lays its objects out in a row: each has the width it needs, and the rest is shared
// equally. Where there is too little room, a button leaves its key out, and last its icon.
type Spread struct{}

// leastButton is the least width of a button, in figures.
const leastButton = 8

func (Spread) Gap() float32 { return Margin{}.gap() }

func (l Spread) MinSize(objects []fyne.CanvasObject) fyne.Size {
	height := float32(0)
	for _, o := range objects {
		height = max(height, o.MinSize().Height)
	}
	return fyne.NewSize(float32(len(objects))*(Wide{leastButton}.width()+l.Gap()), height)
}

// leastWhole returns the least width at which a text is not truncated.
func leastWhole(o fyne.CanvasObject) float32 {
	if b, ok := o.(*widgets.Button); ok {
		return b.Tight()
	}
	return o.MinSize().Width
}

// widths shares the room: each object gets what it needs and an equal part of the rest; or, with
// too little room, what its text needs and an equal part of the rest.
func (l Spread) widths(objects []fyne.CanvasObject, room float32) []float32 {
	out := make([]float32, len(objects))
	needed, least := float32(0), float32(0)
	for _, o := range objects {
		needed, least = needed+o.MinSize().Width, least+leastWhole(o)
	}
	for i, o := range objects {
		switch {
		case room >= needed:
			out[i] = o.MinSize().Width + (room-needed)/float32(len(objects))
		case room >= least:
			out[i] = leastWhole(o) + (o.MinSize().Width-leastWhole(o))*(room-least)/max(1, needed-least)
		default:
			out[i] = leastWhole(o) * room / max(1, least)
		}
	}
	return out
}

func (l Spread) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	x := float32(0)
	for i, width := range l.widths(objects, size.Width-l.Gap()*float32(len(objects)-1)) {
		objects[i].Move(fyne.NewPos(x, 0))
		objects[i].Resize(fyne.NewSize(width, size.Height))
		x += width + l.Gap()
	}
}

// mainKey is the key of what is done last on a screen, and mainly.
var mainKey = widgets.Bare(fyne.KeyF12)

// HighImportance marks the way on.
const HighImportance = widget.HighImportance
