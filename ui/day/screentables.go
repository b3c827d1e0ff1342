package day

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// sheetTables shows tables of a paper one above the other. An elevator that weighs in two units has
// two of a kind; there is room for that many.
type sheetTables struct {
	tables [2]*widgets.Table
}

func newSheetTables(id string, order *widgets.FocusOrder) *sheetTables {
	s := &sheetTables{}
	for i := range s.tables {
		s.tables[i] = widgets.NewTable(nil)
		s.tables[i].Small = true
		stop := id
		if i > 0 {
			stop = fmt.Sprintf("%s.%d", id, i+1)
		}
		order.Add(stop, s.tables[i])
	}
	return s
}

// set shows other sheets.
func (s *sheetTables) set(sheets []Sheet) {
	for i, t := range s.tables {
		shell.SetVisible(t, i < len(sheets))
		if i >= len(sheets) {
			continue
		}
		t.Empty = sheets[i].Empty
		t.SetColumns(sheets[i].Columns)
		t.SetRows(sheets[i].Rows)
	}
}

// stops are the focus stops of the tables, after those before them.
func (s *sheetTables) stops(before ...fyne.CanvasObject) []fyne.CanvasObject {
	for _, t := range s.tables {
		before = append(before, t)
	}
	return before
}

// stackTables sets tables and their headings one over the other.
func stackTables(parts ...[]fyne.CanvasObject) *fyne.Container {
	return container.New(asRowsNeed{}, slices.Concat(parts...)...)
}

// hide hides the tables and removes them from the focus order.
func (s *sheetTables) hide() {
	for _, t := range s.tables {
		shell.SetVisible(t, false)
	}
}

// asRowsNeed gives each table the height of its rows, the first ones first: of the last ones only a
// few rows may be visible. Other objects keep their height.
type asRowsNeed struct{}

func (l asRowsNeed) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, o := range shell.Visible(objects) {
		size = fyne.NewSize(max(size.Width, o.MinSize().Width), size.Height+l.least(o))
	}
	return size
}

// least is the height that must do: of a table a header and two rows.
func (asRowsNeed) least(o fyne.CanvasObject) float32 {
	if _, ok := o.(*widgets.Table); ok {
		return o.MinSize().Height * 3 / 4
	}
	return o.MinSize().Height
}

// needs is the height all rows of a table need.
func (asRowsNeed) needs(t *widgets.Table) float32 {
	const askedFor = 4 // a header and three rows, which a table asks for itself
	return t.MinSize().Height / askedFor * (float32(len(t.Rows())) + 2)
}

func (l asRowsNeed) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	shown := shell.Visible(objects)
	least := l.MinSize(shown).Height
	room, squeeze := size.Height-least, min(1, size.Height/max(1, least))
	y := float32(0)
	for _, o := range shown {
		height := l.least(o) * squeeze
		if t, ok := o.(*widgets.Table); ok {
			more := max(0, min(room, l.needs(t)-height))
			height, room = height+more, room-more
		}
		o.Move(fyne.NewPos(0, y))
		o.Resize(fyne.NewSize(size.Width, height))
		y += height
	}
}

// wanted is the height at which every row is in sight.
func (l asRowsNeed) wanted(objects []fyne.CanvasObject) float32 {
	high := float32(0)
	for _, o := range shell.Visible(objects) {
		if t, ok := o.(*widgets.Table); ok {
			high += l.needs(t)
		} else {
			high += o.MinSize().Height
		}
	}
	return high
}

// tablesAndPictures sets tables over pictures. The tables have the height that their rows need, but
// the pictures keep a third of it, however busy the day: the tables scroll. Pictures that would be
// too low even so are not shown.
type tablesAndPictures struct{}

func (tablesAndPictures) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[0].MinSize()
}

func (tablesAndPictures) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	tables, pictures := objects[0].(*fyne.Container), objects[1]
	least := pictures.MinSize().Height
	kept := max(least, size.Height/3)
	high := min(max(asRowsNeed{}.wanted(tables.Objects), size.Height/2), size.Height-kept)
	shell.SetVisible(pictures, high >= tables.MinSize().Height)
	if !pictures.Visible() {
		high = size.Height
	}
	shell.Put(tables, 0, 0, size.Width, high)
	shell.Put(pictures, 0, high, size.Width, size.Height-high)
}

// asManyAsFit sets pictures side by side, the first ones first; one whose title
// has no room is left out.
type asManyAsFit struct{}

func (asManyAsFit) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(objects[0].MinSize().Width, shell.Grid{}.Cell(objects).Height)
}

func (asManyAsFit) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	room, n := size.Width, 0
	for ; n < len(objects) && (n == 0 || objects[n].MinSize().Width <= room); n++ {
		room -= objects[n].MinSize().Width + shell.Spread{}.Gap()
	}
	for i, o := range objects {
		shell.SetVisible(o, i < n)
	}
	shell.Spread{}.Layout(objects[:n], size)
}
