package shell

import "fyne.io/fyne/v2"

// Endings sets the button that ends the work over rows of smaller ones; in one
// row, the smaller ones of its first row beside it.
type Endings struct {
	inRow bool
	Rows  []int // number of smaller buttons in each row
}

// lines returns the buttons of each row.
func (l *Endings) lines(objects []fyne.CanvasObject) lines {
	if l.inRow {
		return lines{Visible(objects[:1+l.Rows[0]])}
	}
	out := lines{objects[:1]}
	at := 1
	for _, n := range l.Rows {
		if row := Visible(objects[at : at+n]); len(row) > 0 {
			out = append(out, row)
		}
		at += n
	}
	return out
}

func (l *Endings) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return l.lines(objects).least()
}

func (l *Endings) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	l.lines(objects).set(size.Width)
}

// turn chooses one row or several. A button without room in one row is hidden: its key does the
// same.
func (l *Endings) turn(objects []fyne.CanvasObject, inRow bool) {
	l.inRow = inRow
	for _, o := range objects[1+l.Rows[0]:] {
		SetVisible(o, !inRow)
	}
}
