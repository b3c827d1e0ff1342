package view

import "fyne.io/fyne/v2"

// endings sets the button that ends the work over rows of smaller ones; in one
// row, the smaller ones of its first row beside it.
type endings struct {
	inRow bool
	rows  []int // how many of the smaller buttons stand in each row
}

// lines are what stands in each line.
func (l *endings) lines(objects []fyne.CanvasObject) lines {
	if l.inRow {
		return lines{visible(objects[:1+l.rows[0]])}
	}
	out := lines{objects[:1]}
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
	return l.lines(objects).least()
}

func (l *endings) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	l.lines(objects).set(size.Width)
}

// turn chooses one row or several. What has no place in the one is out of sight:
// its key does the same.
func (l *endings) turn(objects []fyne.CanvasObject, inRow bool) {
	l.inRow = inRow
	for _, o := range objects[1+l.rows[0]:] {
		setVisible(o, !inRow)
	}
}
