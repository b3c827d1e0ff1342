package paperview

import (
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
)

// table sets rows of cells under their headings, each cell wrapped to its
// column.
func (t *proseLayout) table(rows [][]string) {
	if len(rows) == 0 {
		return
	}
	gap := 2 * t.Inner()
	widths := t.ColumnWidths(rows, t.edge()-t.margin(), gap)
	for i, row := range rows {
		l := PaperPlain
		if i == 0 {
			l = paint.TextStyle{Size: apptheme.SizeNote, Color: apptheme.ColorPaperQuiet, Style: paint.Bold}
		}
		t.row(row, widths, gap, l)
		t.add(t.Block(apptheme.ColorPaperRule, fyne.NewPos(t.margin(), t.y), fyne.NewSize(t.edge()-t.margin(), 1)))
		t.y += t.Pad()
	}
}

func (t *proseLayout) row(row []string, widths []float32, gap float32, l paint.TextStyle) {
	x, lines := t.margin(), 1
	for i, cell := range row {
		wrapped := t.Wrap(cell, l, widths[i])
		for n, text := range wrapped {
			t.add(t.Write(text, l, fyne.NewPos(x, t.y+float32(n)*t.LineHeight(l))))
		}
		lines = max(lines, len(wrapped))
		x += widths[i] + gap
	}
	t.y += float32(lines)*t.LineHeight(l) + t.Pad()/2
}

// ColumnWidths gives narrow columns the width they need and divides the rest evenly among the wide
// ones.
func (t *proseLayout) ColumnWidths(rows [][]string, room, gap float32) []float32 {
	widths := make([]float32, len(rows[0]))
	for _, row := range rows {
		for i, cell := range row {
			widths[i] = max(widths[i], t.Measure(cell, PaperPlain).Width+1)
		}
	}
	room -= gap * float32(len(widths)-1)
	narrow := make([]bool, len(widths))
	for settled := false; !settled; {
		share, wide := room, 0
		for i, w := range widths {
			if narrow[i] {
				share -= w
			} else {
				wide++
			}
		}
		settled = true
		for i, w := range widths {
			if !narrow[i] && w <= share/float32(wide) {
				narrow[i], settled = true, false
			}
		}
		if settled {
			for i := range widths {
				if !narrow[i] {
					widths[i] = share / float32(wide)
				}
			}
		}
	}
	return widths
}
