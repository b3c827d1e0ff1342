package widgets

import (
	"fmt"
	"slices"
	"strings"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"
	"tenthpoint/ui/widgettest"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

// tabled is a table of many rows that records what it calls back.
type tabled struct {
	*house
	table *Table
	order *FocusOrder
	said  []string
}

func newTabled(t *testing.T, rows int) *tabled {
	t.Helper()
	h := newHouse(t)
	b := &tabled{house: h, order: NewFocusOrder(h.UI)}
	b.table = NewTable([]model.Column{{Title: "No", Width: 6, Figures: true}, {Title: "Grower", Width: 10, Grow: true}})
	b.table.OnChoose = func(i int, key string) { b.said = append(b.said, fmt.Sprintf("at %d %s", i, key)) }
	b.table.OnOpen = func(i int, key string) { b.said = append(b.said, fmt.Sprintf("opened %d %s", i, key)) }
	b.order.Add("table", b.table)
	b.order.Add("next", NewFieldEntry())
	h.Show(container.NewStack(b.table, b.order.Stops[1].Stop), fyne.NewSize(400, 300))
	b.table.SetRows(manyRows(rows))
	return b
}

func manyRows(n int) []model.Row {
	rows := make([]model.Row, n)
	for i := range rows {
		rows[i] = model.Row{Key: fmt.Sprintf("k%d", i), Cells: []string{fmt.Sprint(1000 + i), "Example Farm"}}
	}
	return rows
}

func (b *tabled) heard(want ...string) {
	b.T.Helper()
	widgettest.Equal(b.T, "said", strings.Join(b.said, "; "), strings.Join(want, "; "))
	b.said = nil
}

// inSight reports whether the chosen row shows, by asking what is drawn.
func (b *tabled) inSight() bool {
	for _, c := range cellsOf(b.table) {
		if c.chosen {
			return true
		}
	}
	return false
}

// cellsOf finds the cells a table draws inside Fyne's objects.
func cellsOf(o fyne.CanvasObject) []*cell {
	var cells []*cell
	switch each := o.(type) {
	case *cell:
		return []*cell{each}
	case fyne.Widget:
		for _, child := range test.WidgetRenderer(each).Objects() {
			cells = append(cells, cellsOf(child)...)
		}
	case *fyne.Container:
		for _, child := range each.Objects {
			cells = append(cells, cellsOf(child)...)
		}
	}
	return cells
}

func TestTableKeys(t *testing.T) {
	b := newTabled(t, 100)
	b.order.Focus("table")
	b.heard("at 0 k0")
	b.Press(fyne.KeyDown, fyne.KeyDown, fyne.KeyUp, fyne.KeyReturn)
	b.heard("at 1 k1", "at 2 k2", "at 1 k1", "opened 1 k1")
	b.Press(fyne.KeyEnd, fyne.KeyEnd, fyne.KeyDown, fyne.KeyEnter)
	b.heard("at 99 k99", "opened 99 k99")
	if !b.inSight() {
		t.Error("the last row is chosen but not in sight")
	}
	b.Press(fyne.KeyHome, fyne.KeyUp)
	b.heard("at 0 k0")
	page := b.table.pageRows()
	b.Press(fyne.KeyPageDown)
	b.heard(fmt.Sprintf("at %d k%d", page, page))
	b.Press(fyne.KeyPageUp)
	b.heard("at 0 k0")
	if page < 3 || page > 12 {
		t.Errorf("a page is %d rows in a window 300 high", page)
	}
	b.Press(fyne.KeyTab)
	b.At(b.order, "next")
}

func TestChosenRowIsAlwaysInSight(t *testing.T) {
	b := newTabled(t, 100)
	b.order.Focus("table")
	for _, key := range []fyne.KeyName{fyne.KeyPageDown, fyne.KeyPageDown, fyne.KeyDown, fyne.KeyEnd, fyne.KeyUp, fyne.KeyPageUp, fyne.KeyHome} {
		b.Press(key)
		if !b.inSight() {
			t.Errorf("after %s row %d is out of sight", key, b.table.Chosen())
		}
	}
}

func TestRowsKeepTheirChoiceByKey(t *testing.T) {
	b := newTabled(t, 10)
	b.table.SetChosen("k4")
	b.heard()
	rows := manyRows(10)
	b.table.SetRows(rows[3:])
	widgettest.Equal(t, "index", b.table.Chosen(), 1)
	widgettest.Equal(t, "key", b.table.ChosenKey(), "k4")
	b.table.SetRows(rows[:3])
	widgettest.Equal(t, "gone", b.table.Chosen(), -1)
	widgettest.Equal(t, "key", b.table.ChosenKey(), "")
	b.heard()
}

// TestShrunkenTableIsSafe: Fyne may ask for a row that is gone.
func TestShrunkenTableIsSafe(t *testing.T) {
	b := newTabled(t, 50)
	b.order.Focus("table")
	b.Press(fyne.KeyEnd)
	b.table.SetRows(nil)
	c := newCell(cellLetters)
	for _, id := range []widget.TableCellID{{Row: 49, Col: 0}, {Row: 0, Col: 9}, {Row: -1, Col: -1}} {
		c.show(face{text: "stale"})
		b.table.showCell(id, c)
		widgettest.Equal(t, "cell text", c.text, "")
		b.table.showTitle(id, c)
	}
	b.said = nil
	b.Press(fyne.KeyDown, fyne.KeyHome, fyne.KeyEnd, fyne.KeyPageDown, fyne.KeyReturn)
	b.heard()
	b.table.SetRows([]model.Row{{Key: "short"}}) // fewer cells than columns
	b.Press(fyne.KeyDown)
	b.heard("at 0 short")
}

func TestClickChoosesAndOpens(t *testing.T) {
	b := newTabled(t, 10)
	row := newCell(cellLetters).MinSize().Height + paint.PainterFor(b.table).Pad()
	at := fyne.NewPos(80, 2.5*row) // the second row under the header
	test.TapAt(b.table, at)
	b.heard("at 1 k1")
	b.At(b.order, "table")
	test.TapAt(b.table, at)
	b.heard("opened 1 k1")
	test.TapAt(b.table, at.SubtractXY(0, row))
	b.heard("at 0 k0")
}

func TestWholeRowIsMarked(t *testing.T) {
	b := newTabled(t, 10)
	b.order.Focus("table")
	b.Press(fyne.KeyDown)
	marked := map[string]bool{}
	for _, c := range cellsOf(b.table) {
		if c.chosen {
			marked[c.text] = c.keyed
		}
	}
	widgettest.Equal(t, "marked cells", fmt.Sprint(marked), "map[1001:true Example Farm:true]")
	b.Press(fyne.KeyTab)
	for _, c := range cellsOf(b.table) {
		if c.chosen && c.keyed {
			t.Errorf("%q is still marked as having the keyboard", c.text)
		}
	}
}

func TestStateColumnHasWordIconAndColour(t *testing.T) {
	h := newHouse(t)
	table := exampleTable()
	h.Show(table, fyne.NewSize(600, 300))
	found := 0
	for _, c := range cellsOf(table) {
		if c.text == "void" {
			found++
			widgettest.Equal(t, "state", c.state, model.Stop)
			widgettest.Equal(t, "colour", c.letters.Color, apptheme.ColorStop)
		}
		if c.text == "9,880" {
			found++
			widgettest.Equal(t, "state of a figure", c.state, model.Plain)
		}
	}
	widgettest.Equal(t, "cells found", found, 2)
}

func TestGrowingColumnTakesTheRoom(t *testing.T) {
	b := newTabled(t, 3)
	for _, width := range []float32{400, 900} {
		b.Window.Resize(fyne.NewSize(width, 300))
		right := float32(0)
		for _, c := range cellsOf(b.table) {
			right = max(right, c.Position().X+c.Size().Width)
		}
		if right > width || right < width-2 {
			t.Errorf("in a window %v wide the cells end at %v", width, right)
		}
	}
}

func TestLettersGoToTheFilter(t *testing.T) {
	b := newTabled(t, 3)
	var typed string
	b.table.OnLetter = func(letter rune) { typed += string(letter) }
	b.order.Focus("table")
	b.Write("oak")
	widgettest.Equal(t, "letters", typed, "oak")
}

func TestEmptyTableSaysWhatToDo(t *testing.T) {
	b := newTabled(t, 2)
	b.table.Empty = "No trucks in the yard. Press F2 when one drives on."
	said := func() string { return test.WidgetRenderer(b.table).(*tableRenderer).empty.Text() }
	b.table.Refresh()
	widgettest.Equal(t, "with rows", said(), "")
	b.table.SetRows(nil)
	widgettest.Equal(t, "without", said(), b.table.Empty)
}

func BenchmarkTableMoves(b *testing.B) {
	app := test.NewTempApp(b)
	app.Settings().SetTheme(apptheme.NewTheme(false, apptheme.TextOrdinary))
	table := exampleTable()
	w := test.NewWindow(table)
	defer w.Close()
	w.Resize(fyne.NewSize(800, 600))
	table.SetRows(manyRows(100_000))
	b.ResetTimer()
	for i := range b.N {
		table.choose(i % 100_000)
	}
}

// TestStruckRowsStayReadable: a line goes through every word of the row but the
// one that says why.
func TestStruckRowsStayReadable(t *testing.T) {
	b := newTabled(t, 0)
	b.table.SetColumns([]model.Column{{Title: "No", Width: 4}, {Title: "Result", Width: 8}, {Title: "Stands", Width: 10, State: true}})
	lines := func(struck bool) int {
		b.table.SetRows([]model.Row{{Key: "1", Cells: []string{"1", "15.9", "left out"}, State: model.Locked, Struck: struck}})
		n := 0
		for _, c := range cellsOf(b.table) {
			if !c.header {
				n += len(widgettest.Blocks(c.Paint(c.Size()), apptheme.ColorInk))
			}
		}
		return n
	}
	widgettest.Equal(t, "lines through a row that counts", lines(false), 0)
	widgettest.Equal(t, "lines through a struck row", lines(true), 2)
}

// TestSmallRows: a table that may be small is so only where ordinary letters
// have no room, and has the widths its columns wish for only where they fit.
func TestSmallRows(t *testing.T) {
	b := newTabled(t, 100)
	columns := []model.Column{{Title: "a", Width: 10, Wish: 20}, {Title: "b", Width: 10, Grow: true}}
	b.table.SetColumns(columns)
	b.table.Small = true
	p := paint.PainterFor(b.table)
	ordinary, little := p.Measure("0", cellLetters).Width, p.Measure("0", paint.TextStyle{Size: apptheme.SizeNote}).Width
	pad := 4*p.Inner() + 3*p.Pad()
	for _, c := range []struct {
		title string
		room  float32
		small bool
		first float32 // figures of the first column
	}{
		{"wide", 60 * ordinary, false, 20},
		{"just wide", 30*ordinary + pad, false, 20},
		{"narrower", 30*little + pad, true, 20},
		{"narrow", 21*little + pad, true, 10},
		{"too narrow for anything", 5, true, 10},
	} {
		b.table.Resize(fyne.NewSize(c.room, 300))
		widths, _ := b.table.fitted.widths(paint.PainterFor(b.table), c.room)
		figure, small := ordinary, b.table.fitted.size != ordinaryCells
		if c.small {
			figure = little
		}
		if small != c.small || widths[0] < c.first*figure || widths[0] > (c.first+3)*figure {
			t.Errorf("%s: small is %v, the first column %v wide; want %v, %v figures of %v", c.title, small, widths[0], c.small, c.first, figure)
		}
	}
	high := b.table.rowHeight()
	b.table.Resize(fyne.NewSize(60*ordinary, 300))
	if b.table.rowHeight() <= high {
		t.Errorf("ordinary rows are %v high, small ones %v", b.table.rowHeight(), high)
	}
}

// TestTitlesOnTwoLines: where titles need the room, they wrap to two lines before any column goes,
// and are never cut.
func TestTitlesOnTwoLines(t *testing.T) {
	b := newTabled(t, 3)
	b.table.Small = true
	columns := []model.Column{{Title: "Commodity", Width: 10}, {Title: "Water shrink lb", Width: 6, Figures: true, Drop: 1}}
	b.table.SetColumns(columns)
	p := paint.PainterFor(b.table)
	one := p.Measure("Commodity", headerLetters).Width + p.Measure("Water shrink lb", headerLetters).Width
	b.table.Resize(fyne.NewSize(one-8, 200))
	if !b.table.fitted.twoLine || len(b.table.fitted.shown) != 2 {
		t.Fatalf("set as %+v with columns %v, want titles on two lines", b.table.fitted.fitting, b.table.fitted.shown)
	}
	var said []string
	for _, c := range cellsOf(b.table) {
		if c.header {
			for _, o := range c.Paint(c.Size()) {
				if text, ok := o.(*canvas.Text); ok {
					said = append(said, text.Text)
					if text.Position().Y+text.Size().Height > c.Size().Height+1 {
						t.Errorf("%q stands out of its cell, which is %v high", text.Text, c.Size().Height)
					}
				}
			}
		}
	}
	if got := strings.Join(said, "|"); got != "Commodity|Water|shrink lb" && got != "Commodity|Water shrink|lb" {
		t.Errorf("the titles are %s", got)
	}
}

// TestTotalsStandUnderALine: a row that adds up is bold under a line of its own.
func TestTotalsStandUnderALine(t *testing.T) {
	b := newTabled(t, 0)
	b.table.SetRows([]model.Row{{Key: "1", Cells: []string{"1", "Corn"}}, {Key: "all", Cells: []string{"1", "All"}, Total: true}})
	boldCells, lines := 0, 0
	for _, c := range cellsOf(b.table) {
		if !c.header && c.letters.Style.Bold {
			boldCells++
			lines += len(widgettest.Blocks(c.Paint(c.Size()), apptheme.ColorInk))
		}
	}
	widgettest.Equal(t, "bold cells", boldCells, 2)
	widgettest.Equal(t, "lines over them", lines, 2)
}

// TestSpareColumns: where there is no room, what can be done without goes, the
// most dispensable first, and comes back with the room.
func TestSpareColumns(t *testing.T) {
	b := newTabled(t, 10)
	b.table.SetColumns([]model.Column{{Title: "a", Width: 10}, {Title: "b", Width: 10, Drop: 1}, {Title: "c", Width: 10, Drop: 2}})
	figure := paint.PainterFor(b.table).Measure("0", cellLetters).Width
	for _, c := range []struct {
		figures float32
		want    [3]bool
	}{
		{40, [3]bool{true, true, true}},
		{28, [3]bool{true, true, false}},
		{16, [3]bool{true, false, false}},
		{2, [3]bool{true, false, false}},
		{40, [3]bool{true, true, true}},
	} {
		b.table.Resize(fyne.NewSize(c.figures*figure, 200))
		for i, want := range c.want {
			if slices.Contains(b.table.fitted.shown, i) != want {
				t.Errorf("in %v figures columns %v are shown, want %v", c.figures, b.table.fitted.shown, c.want)
			}
		}
	}
}
