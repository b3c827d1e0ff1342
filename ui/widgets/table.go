package widgets

import (
	"slices"

	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"
	"tenthpoint/ui/widgets/status"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Table shows rows of ready text under a header that stays. The focus is on a row, never on a cell:
// arrows, Home, End, PageUp and PageDown move it, Enter opens it. A click chooses a row, and a
// click on the chosen one opens it.
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

	tableMenu
	fitted  columnFit // the columns, set into the width there is
	rows    model.Selection
	focused bool
}

var (
	_ Keyed              = (*Table)(nil)
	_ fyne.Tabbable      = (*Table)(nil)
	_ desktop.Cursorable = (*Table)(nil)
)

// NewTable makes an empty table.
func NewTable(columns []model.Column) *Table {
	t := &Table{fitted: columnFit{columns: columns}, rows: model.Selection{Chosen: -1}}
	t.tableMenu.table = t
	t.ShowHeaderRow = true
	t.HideSeparators = true
	t.Length = func() (int, int) { return len(t.rows.Rows), len(t.fitted.shown) }
	t.CreateCell = func() fyne.CanvasObject { return newCell(t.fitted.letters()) }
	t.CreateHeader = func() fyne.CanvasObject { return newCell(t.fitted.letters()) }
	t.UpdateCell = t.showCell
	t.UpdateHeader = t.showTitle
	t.OnSelected = t.clicked
	t.ExtendBaseWidget(t)
	return t
}

// SetRows replaces the rows. The chosen row stays chosen if its key is still among them; otherwise
// none is. No callback is called.
func (t *Table) SetRows(rows []model.Row) {
	t.rows.Replace(rows)
	t.Refresh()
}

// SetColumns shows other columns, such as those of another unit of weight.
func (t *Table) SetColumns(columns []model.Column) {
	if !slices.Equal(columns, t.fitted.columns) {
		t.fitted.columns = columns
		t.Refresh()
	}
}

// Rows are the rows the table shows.
func (t *Table) Rows() []model.Row { return t.rows.Rows }

// Chosen is the index of the chosen row, or -1.
func (t *Table) Chosen() int { return t.rows.Chosen }

// ChosenKey is the key of the chosen row, or "".
func (t *Table) ChosenKey() string { return t.rows.Key() }

// SetChosen chooses the row of a key without calling back. An unknown key
// chooses nothing.
func (t *Table) SetChosen(key string) {
	if i := t.rows.Find(key); i >= 0 {
		t.move(i)
		return
	}
	t.rows.Chosen = -1
	t.Refresh()
}

// choose moves to a row within the table, and calls the view.
func (t *Table) choose(i int) {
	i = t.rows.Nearest(i)
	if i < 0 || i == t.rows.Chosen {
		return
	}
	t.move(i)
	if t.OnChoose != nil {
		t.OnChoose(i, t.rows.Rows[i].Key)
	}
}

// move repaints only the rows that change, and scrolls to the new one.
func (t *Table) move(i int) {
	was := t.rows.Chosen
	t.rows.Chosen = i
	t.scrollToChosen()
	for column := range t.fitted.shown {
		t.RefreshItem(widget.TableCellID{Row: was, Col: column})
		t.RefreshItem(widget.TableCellID{Row: i, Col: column})
	}
}

// scrollToChosen scrolls to the chosen row, once the table has room to scroll in.
func (t *Table) scrollToChosen() {
	if t.rows.Chosen >= 0 && t.Size().Height > 0 {
		t.ScrollTo(widget.TableCellID{Row: t.rows.Chosen})
	}
}

func (t *Table) openRow() {
	if t.rows.Has(t.rows.Chosen) && t.OnOpen != nil {
		t.OnOpen(t.rows.Chosen, t.rows.Key())
	}
}

// clicked is called by Fyne with the cell that was clicked.
func (t *Table) clicked(id widget.TableCellID) {
	t.UnselectAll() // Fyne marks a cell; this table marks the row
	switch {
	case !t.rows.Has(id.Row):
	case id.Row == t.rows.Chosen && !t.offering:
		t.openRow()
	default:
		t.choose(id.Row)
	}
}

// Resize sets the size; the growing column takes the remaining width.
func (t *Table) Resize(size fyne.Size) {
	changed := t.fit(size.Width)
	t.Table.Resize(size)
	if changed {
		t.Table.Refresh()
	}
	t.scrollToChosen()
}

// fit fits the columns into a width, and reports whether text size or columns have changed.
func (t *Table) fit(room float32) (changed bool) {
	p, before, shown := paint.PainterFor(t), t.fitted.fitting, t.fitted.shown
	widths := t.fitted.fit(p, room, t.Small)
	for at, width := range widths {
		t.SetColumnWidth(at, width)
	}
	if high := t.fitted.headerHeight(p, widths); high != t.fitted.header {
		t.fitted.header = high
		t.SetRowHeight(-1, high)
	}
	return t.fitted.size != before.size || t.fitted.twoLine != before.twoLine || !slices.Equal(t.fitted.shown, shown)
}

// rowHeight is a row with the gap to the next.
func (t *Table) rowHeight() float32 {
	return newCell(t.fitted.letters()).MinSize().Height + paint.PainterFor(t).Pad()
}

// MinSize is a header and three rows: a table scrolls.
func (t *Table) MinSize() fyne.Size {
	row := t.rowHeight()
	return fyne.NewSize(8*row, 4*row)
}

// Refresh shows everything again, in the theme of now.
func (t *Table) Refresh() {
	t.fit(t.Size().Width)
	t.Table.Refresh()
}

// showCell fills a cell. A row that no longer exists shows empty: Fyne may still ask for it after
// the list shrank.
func (t *Table) showCell(id widget.TableCellID, o fyne.CanvasObject) {
	f := face{letters: t.fitted.letters()}
	if t.rows.Has(id.Row) && id.Col >= 0 && id.Col < len(t.fitted.shown) {
		f = t.fitted.rowFace(t.rows.Rows[id.Row], id.Col)
		f.chosen, f.keyed = id.Row == t.rows.Chosen, t.focused
		f.striped = id.Row%2 == 1 && t.Size().Width > t.fitted.wide(paint.PainterFor(t))
	}
	o.(*cell).show(f)
}

func (t *Table) showTitle(id widget.TableCellID, o fyne.CanvasObject) {
	o.(*cell).show(t.fitted.titleFace(id.Col))
}

// CreateRenderer draws as Fyne does, and a sentence when there are no rows.
func (t *Table) CreateRenderer() fyne.WidgetRenderer {
	return newTableRenderer(t, t.Table.CreateRenderer())
}

// tableRenderer draws as Fyne does, and a sentence when there are no rows.
type tableRenderer struct {
	fyne.WidgetRenderer
	table *Table
	empty *status.Text
}

func newTableRenderer(t *Table, inside fyne.WidgetRenderer) *tableRenderer {
	n := status.NewWide(model.Plain, "", theme.SizeNameText, 0)
	n.Lines = 2
	return &tableRenderer{WidgetRenderer: inside, table: t, empty: n}
}

func (r *tableRenderer) place(size fyne.Size) {
	p := paint.PainterFor(r.table)
	r.empty.Move(fyne.NewPos(2*p.Inner(), size.Height/3))
	r.empty.Resize(fyne.NewSize(size.Width-4*p.Inner(), r.empty.MinSize().Height))
	text := ""
	if len(r.table.rows.Rows) == 0 {
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

// TypedKey asks focus order and commands first, then moves to a row or opens it.
func (t *Table) TypedKey(ev *fyne.KeyEvent) {
	if t.offer(ev) {
		return
	}
	switch ev.Name {
	case fyne.KeyUp:
		t.choose(t.rows.Chosen - 1)
	case fyne.KeyDown:
		t.choose(t.rows.Chosen + 1)
	case fyne.KeyHome:
		t.choose(0)
	case fyne.KeyEnd:
		t.choose(len(t.rows.Rows) - 1)
	case fyne.KeyPageUp:
		t.choose(t.rows.Chosen - t.pageRows())
	case fyne.KeyPageDown:
		t.choose(t.rows.Chosen + t.pageRows())
	case fyne.KeyReturn, fyne.KeyEnter:
		t.openRow()
	}
}

// pageRows returns the number of rows visible at once, less one that stays in sight when paging.
func (t *Table) pageRows() int {
	return max(1, int(t.Size().Height/t.rowHeight())-2)
}

// TypedRune passes letters to a view that filters.
func (t *Table) TypedRune(letter rune) {
	if !t.scans(letter) && t.OnLetter != nil {
		t.OnLetter(letter)
	}
}

// FocusGained marks the row that has the focus, the first if there was none. Fyne's own mark sits
// on a cell, so its FocusGained is not called.
func (t *Table) FocusGained() {
	t.focused = true
	t.tookFocus()
	if t.rows.Chosen < 0 {
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
	if t.rows.Chosen >= 0 {
		t.move(t.rows.Chosen)
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
