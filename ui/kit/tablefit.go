package kit

// letters is how the rows are written.
func (t *Table) letters() lettering {
	if t.small {
		return smallCell
	}
	return cellLetters
}

// rowHeight is a row with the gap to the next.
func (t *Table) rowHeight() float32 {
	return newCell(t.letters()).MinSize().Height + penFor(t).pad()
}

// fitting is one way to set a table: which letters, and whether columns get
// the width they wish for.
type fitting struct{ small, wished bool }

// fittings are tried in turn until one fits; the last one stays in any case.
func (t *Table) fittings() []fitting {
	if t.Small {
		return []fitting{{wished: true}, {small: true, wished: true}, {small: true}}
	}
	return []fitting{{wished: true}, {}}
}

// fit sets the letters and the width of every column, and reports whether the
// letters are others than before.
func (t *Table) fit(room float32) (changed bool) {
	before := t.small
	var widths []float32
	var left float32
	for _, f := range t.fittings() {
		t.small = f.small
		widths, left = t.widths(room, f.wished)
		if left >= 0 {
			break
		}
	}
	for i, w := range widths {
		if t.columns[i].Grow && left > 0 {
			w, left = w+floor(left), 0
		}
		t.SetColumnWidth(i, w)
	}
	return t.small != before
}

// widths are the columns' widths in the letters set, and the room they leave.
func (t *Table) widths(room float32, wished bool) ([]float32, float32) {
	p, l := penFor(t), t.letters()
	figure := p.measure("0", l).Width
	widths := make([]float32, len(t.columns))
	left := room + p.pad()
	for i, c := range t.columns {
		figures := c.Width
		if wished {
			figures = max(figures, c.Wish)
		}
		title := p.measure(c.Title, headerLetters).Width
		widths[i] = floor(max(float32(figures)*figure, title) + 2*p.aside(t.small) + 1)
		if c.State {
			widths[i] += floor(p.lineHeight(l) + p.pad())
		}
		left -= widths[i] + p.pad()
	}
	return widths, left
}
