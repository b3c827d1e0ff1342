package widgets

import (
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Table shows rows of ready text under a header that stays. The keyboard is on
// a row, never on a cell: arrows, Home, End, PageUp and PageDown move it, Enter
// opens it. A click chooses a row, and a click on the chosen one opens it.
type Table struct {
	widget.Table
	focusStop

	OnChoose func(i int, key string) // the person moved to a row
	OnOpen   func(i int, key string) // Enter, or a click on the chosen row
	OnLetter func(letter rune)       // a letter typed, for a view that filters

	// Empty is the sentence shown when there are no rows: what to do about it.
	Empty string
	// Small sets the rows in small letters where ordinary ones have no room, for
	// a list of many columns.
	Small bool

	columns []Column
	rows    []model.Row
	chosen  int // index of the chosen row, or -1
	focused bool
	fitted  fitting // how the table is set
	header  float32 // how high the header is
	shown   []int   // the columns there is room for
}

var (
	_ Keyed              = (*Table)(nil)
	_ fyne.Tabbable      = (*Table)(nil)
	_ desktop.Cursorable = (*Table)(nil)
)

// NewTable makes an empty table.
func NewTable(columns []Column) *Table {
	t := &Table{columns: columns, chosen: -1}
	t.ShowHeaderRow = true
	t.HideSeparators = true
	t.Length = func() (int, int) { return len(t.rows), len(t.shown) }
	t.CreateCell = func() fyne.CanvasObject { return newCell(t.letters()) }
	t.CreateHeader = func() fyne.CanvasObject { return newCell(t.letters()) }
	t.UpdateCell = t.showCell
	t.UpdateHeader = t.showHeader
	t.OnSelected = t.clicked
	t.ExtendBaseWidget(t)
	return t
}

// SetRows shows other rows. The chosen row stays chosen if its key is still
// among them; otherwise nothing is chosen. Nothing is called back.
func (t *Table) SetRows(rows []model.Row) {
	key := t.ChosenKey()
	t.rows = rows
	t.chosen = -1
	for i, r := range rows {
		if key != "" && r.Key == key {
			t.chosen = i
		}
	}
	t.Refresh()
}

// SetColumns shows other columns, such as those of another unit of weight.
func (t *Table) SetColumns(columns []Column) {
	t.columns = columns
	t.fit(t.Size().Width)
	t.Refresh()
}

// Rows gives what the table shows.
func (t *Table) Rows() []model.Row { return t.rows }

// Chosen is the index of the chosen row, or -1.
func (t *Table) Chosen() int { return t.chosen }

// ChosenKey is the key of the chosen row, or "".
func (t *Table) ChosenKey() string {
	if t.chosen < 0 || t.chosen >= len(t.rows) {
		return ""
	}
	return t.rows[t.chosen].Key
}

// SetChosen chooses the row of a key without calling back. An unknown key
// chooses nothing.
func (t *Table) SetChosen(key string) {
	for i, r := range t.rows {
		if r.Key == key && key != "" {
			t.move(i)
			return
		}
	}
	t.chosen = -1
	t.Refresh()
}

// choose moves to a row, kept within the table, and tells the view.
func (t *Table) choose(i int) {
	i = max(0, min(i, len(t.rows)-1))
	if len(t.rows) == 0 || i == t.chosen {
		return
	}
	t.move(i)
	if t.OnChoose != nil {
		t.OnChoose(i, t.rows[i].Key)
	}
}

// move repaints only the rows that change, and brings the new one into sight.
func (t *Table) move(i int) {
	was := t.chosen
	t.chosen = i
	t.intoSight()
	for column := range t.shown {
		t.RefreshItem(widget.TableCellID{Row: was, Col: column})
		t.RefreshItem(widget.TableCellID{Row: i, Col: column})
	}
}

// intoSight scrolls to the chosen row, once the table has room to scroll in.
func (t *Table) intoSight() {
	if t.chosen >= 0 && t.Size().Height > 0 {
		t.ScrollTo(widget.TableCellID{Row: t.chosen})
	}
}

func (t *Table) openRow() {
	if t.chosen >= 0 && t.chosen < len(t.rows) && t.OnOpen != nil {
		t.OnOpen(t.chosen, t.rows[t.chosen].Key)
	}
}

// clicked is called by Fyne with the cell that was clicked.
func (t *Table) clicked(id widget.TableCellID) {
	t.UnselectAll() // Fyne marks a cell; the kit marks the row
	if id.Row < 0 || id.Row >= len(t.rows) {
		return
	}
	if id.Row == t.chosen {
		t.openRow()
		return
	}
	t.choose(id.Row)
}

// Resize gives the growing column what room there is.
func (t *Table) Resize(size fyne.Size) {
	changed := t.fit(size.Width)
	t.Table.Resize(size)
	if changed {
		t.Table.Refresh()
	}
	t.intoSight()
}

// MinSize is a header and three rows: a table scrolls.
func (t *Table) MinSize() fyne.Size {
	row := t.rowHeight()
	return fyne.NewSize(8*row, 4*row)
}

// Refresh shows everything anew, in the theme of now.
func (t *Table) Refresh() {
	t.fit(t.Size().Width)
	t.Table.Refresh()
}

// CreateRenderer is Fyne's way to draw the table.
func (t *Table) CreateRenderer() fyne.WidgetRenderer {
	return newTableRenderer(t, t.Table.CreateRenderer())
}

// tableRenderer draws as Fyne does, and a sentence when there are no rows.
type tableRenderer struct {
	fyne.WidgetRenderer
	table *Table
	empty *Note
}

func newTableRenderer(t *Table, inside fyne.WidgetRenderer) *tableRenderer {
	n := newWideNote(model.Plain, "", theme.SizeNameText, 0)
	n.Lines = 2
	return &tableRenderer{WidgetRenderer: inside, table: t, empty: n}
}

func (r *tableRenderer) place(size fyne.Size) {
	p := paint.PainterFor(r.table)
	r.empty.Move(fyne.NewPos(2*p.Inner(), size.Height/3))
	r.empty.Resize(fyne.NewSize(size.Width-4*p.Inner(), r.empty.MinSize().Height))
	text := ""
	if len(r.table.rows) == 0 {
		text = r.table.Empty
	}
	r.empty.Say(model.Plain, text)
}

func (r *tableRenderer) Layout(size fyne.Size) {
	r.WidgetRenderer.Layout(size)
	r.place(size)
}

func (r *tableRenderer) Refresh() {
	r.WidgetRenderer.Refresh()
	r.place(r.table.Size())
}

func (r *tableRenderer) Objects() []fyne.CanvasObject {
	return append(r.WidgetRenderer.Objects(), r.empty)
}

// TypedKey: ring and commands first, then the row moves or opens.
func (t *Table) TypedKey(ev *fyne.KeyEvent) {
	if t.offer(ev) {
		return
	}
	switch ev.Name {
	case fyne.KeyUp:
		t.choose(t.chosen - 1)
	case fyne.KeyDown:
		t.choose(t.chosen + 1)
	case fyne.KeyHome:
		t.choose(0)
	case fyne.KeyEnd:
		t.choose(len(t.rows) - 1)
	case fyne.KeyPageUp:
		t.choose(t.chosen - t.pageRows())
	case fyne.KeyPageDown:
		t.choose(t.chosen + t.pageRows())
	case fyne.KeyReturn, fyne.KeyEnter:
		t.openRow()
	}
}

// pageRows is how many rows show at once, less one that stays in sight.
func (t *Table) pageRows() int {
	return max(1, int(t.Size().Height/t.rowHeight())-2)
}

// TypedRune hands letters to a view that filters.
func (t *Table) TypedRune(letter rune) {
	if t.OnLetter != nil {
		t.OnLetter(letter)
	}
}

// FocusGained marks the row that has the keyboard, the first if there was none.
// Fyne's own mark sits on a cell, so its FocusGained is not called.
func (t *Table) FocusGained() {
	t.focused = true
	t.tookFocus()
	if t.chosen < 0 {
		t.choose(0)
	}
	t.refreshChosen()
}

// FocusLost makes the mark quiet.
func (t *Table) FocusLost() {
	t.focused = false
	t.refreshChosen()
}

func (t *Table) refreshChosen() {
	if t.chosen >= 0 {
		t.move(t.chosen)
	}
}

// Fyne tints the cell under the pointer and lets columns be dragged. A row is
// not a cell, and widths are ours, so the pointer is not listened to.

// MouseIn does nothing.
func (t *Table) MouseIn(*desktop.MouseEvent) {}

// MouseMoved does nothing.
func (t *Table) MouseMoved(*desktop.MouseEvent) {}

// MouseOut does nothing.
func (t *Table) MouseOut() {}

// MouseDown does nothing.
func (t *Table) MouseDown(*desktop.MouseEvent) {}

// Cursor is the ordinary pointer.
func (t *Table) Cursor() desktop.Cursor { return desktop.DefaultCursor }
