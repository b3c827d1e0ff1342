package kit

import "fyne.io/fyne/v2"

// table sets rows of cells under their headings, each cell wrapped to its
// column.
func (t *typesetter) table(rows [][]string) {
	if len(rows) == 0 {
		return
	}
	gap := 2 * t.inner()
	widths := t.columnWidths(rows, t.edge()-t.margin(), gap)
	for i, row := range rows {
		l := paperPlain
		if i == 0 {
			l = lettering{size: SizeNote, color: ColorPaperQuiet, style: bold}
		}
		t.row(row, widths, gap, l)
		t.add(t.block(ColorPaperRule, fyne.NewPos(t.margin(), t.y), fyne.NewSize(t.edge()-t.margin(), 1)))
		t.y += t.pad()
	}
}

func (t *typesetter) row(row []string, widths []float32, gap float32, l lettering) {
	x, lines := t.margin(), 1
	for i, cell := range row {
		wrapped := t.wrap(cell, l, widths[i])
		for n, text := range wrapped {
			t.add(t.write(text, l, fyne.NewPos(x, t.y+float32(n)*t.lineHeight(l))))
		}
		lines = max(lines, len(wrapped))
		x += widths[i] + gap
	}
	t.y += float32(lines)*t.lineHeight(l) + t.pad()/2
}

// columnWidths gives narrow columns what they need and parts the rest evenly
// among the wide ones.
func (t *typesetter) columnWidths(rows [][]string, room, gap float32) []float32 {
	widths := make([]float32, len(rows[0]))
	for _, row := range rows {
		for i, cell := range row {
			widths[i] = max(widths[i], t.measure(cell, paperPlain).Width+1)
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
