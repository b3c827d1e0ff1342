package kit

import "slices"

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

// fit sets the letters, the columns that are shown and their widths. It reports
// whether letters or columns are others than before.
func (t *Table) fit(room float32) (changed bool) {
	before, shown := t.small, t.shown
	var widths []float32
	var left float32
	for _, f := range t.fittings() {
		t.small = f.small
		widths, left = t.widths(room, f.wished)
		if left >= 0 {
			break
		}
	}
	t.shown, left = t.spare(widths, left)
	for at, i := range t.shown {
		w := widths[i]
		if t.columns[i].Grow && left > 0 {
			w, left = w+floor(left), 0
		}
		t.SetColumnWidth(at, w)
	}
	return t.small != before || !slices.Equal(t.shown, shown)
}

// spare takes columns away that can be done without, until the others fit, and
// gives those that stay and the room they leave.
func (t *Table) spare(widths []float32, left float32) ([]int, float32) {
	shown := make([]int, len(widths))
	for i := range shown {
		shown[i] = i
	}
	for left < 0 {
		out := -1
		for at, i := range shown {
			if spare := t.columns[i].Spare; spare > 0 && (out < 0 || spare > t.columns[shown[out]].Spare) {
				out = at
			}
		}
		if out < 0 {
			break
		}
		left += widths[shown[out]] + penFor(t).pad()
		shown = slices.Delete(shown, out, out+1)
	}
	return shown, left
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
