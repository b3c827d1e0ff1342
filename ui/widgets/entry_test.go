package widgets

import (
	"strings"
	"tenthpoint/ui/paint"
	"tenthpoint/ui/widgettest"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
)

func TestReturnAndEnterWalkOn(t *testing.T) {
	for _, key := range []fyne.KeyName{fyne.KeyReturn, fyne.KeyEnter} {
		h := newHouse(t)
		a, b, c := NewFieldEntry(), NewFieldEntry(), NewFieldEntry()
		order := h.Cast(map[string]Keyed{"a": a, "b": b, "c": c}, "a", "b", "c")
		var committed []string
		next := ""
		a.OnCommit = func(text string) string { committed = append(committed, text); return next }
		order.Focus("a")
		h.Write("52300")
		h.Press(key)
		h.At(order, "b") // the order's own order

		for _, way := range []struct{ next, want string }{{"c", "c"}, {"a", "a"}, {"nowhere", "b"}} {
			next = way.next
			order.Focus("a")
			h.Press(key)
			h.At(order, way.want)
		}
		widgettest.Equal(t, "committed", strings.Join(committed, " "), "52300 52300 52300 52300")
	}
}

func TestArrivingSelectsAll(t *testing.T) {
	h := newHouse(t)
	a, b := NewFieldEntry(), NewFieldEntry()
	a.SetText("old")
	b.SetText("older")
	order := h.Cast(map[string]Keyed{"a": a, "b": b}, "a", "b")
	order.Focus("a")
	widgettest.Equal(t, "selected on arrival", a.SelectedText(), "old")
	h.Press(fyne.KeyTab)
	widgettest.Equal(t, "selected on Tab", b.SelectedText(), "older")
	h.Write("n")
	widgettest.Equal(t, "typing replaces", b.Text, "n")
}

// A field for figures takes the words it knows by their first letter, and keeps other letters out. A
// figure typed then replaces the word.
func TestWordsInAFieldForFigures(t *testing.T) {
	h := newHouse(t)
	e := NewFigureEntry()
	e.Words = []string{"posted", "later"}
	refused := 0
	e.OnRefuse = func(string) { refused++ }
	edited := ""
	e.OnEdit = func(text string) { edited = text }
	h.Cast(map[string]Keyed{"e": e}, "e").Focus("e")
	h.Write("4.1x")
	widgettest.Equal(t, "with a letter that begins no word", e.Text, "4.1")
	h.Write("P")
	widgettest.Equal(t, "by its first letter", e.Text, "posted")
	widgettest.Equal(t, "told", edited, "posted")
	h.Write("l")
	widgettest.Equal(t, "another word", e.Text, "later")
	h.Write("4.2")
	widgettest.Equal(t, "a figure over the word", e.Text, "4.2")
	widgettest.Equal(t, "refused letters", refused, 1)
}

// TestAMarkedTextThatIsChanged: what is typed after the presenter has put another
// text in place of a marked one is there in full.
func TestAMarkedTextThatIsChanged(t *testing.T) {
	for shown, want := range map[string]string{"": "corn", "52,300": "corn"} {
		h := newHouse(t)
		e := NewFieldEntry()
		e.SetText("ticket 1042")
		order := h.Cast(map[string]Keyed{"e": e}, "e")
		order.Focus("e")
		widgettest.Equal(t, "marked", e.SelectedText(), "ticket 1042")
		e.SetText(shown)
		widgettest.Equal(t, "marked after the change", e.SelectedText(), shown)
		h.Write("corn")
		widgettest.Equal(t, "typed over "+shown, e.Text, want)
	}
}

// TestPresenterDoesNotHearItself: what is shown never comes back as an edit.
func TestPresenterDoesNotHearItself(t *testing.T) {
	h := newHouse(t)
	e := NewFieldEntry()
	var edits []string
	e.OnEdit = func(text string) {
		edits = append(edits, text)
		e.SetText(strings.ToUpper(text)) // a presenter that answers every edit
	}
	order := h.Cast(map[string]Keyed{"e": e}, "e")
	e.SetText("shown")
	widgettest.Equal(t, "edits", len(edits), 0)
	order.Focus("e")
	h.Write("ab")
	widgettest.Equal(t, "edits", strings.Join(edits, " "), "a Ab")
	widgettest.Equal(t, "text", e.Text, "AB")
	h.Press(fyne.KeyBackspace)
	widgettest.Equal(t, "edits", strings.Join(edits, " "), "a Ab A")
}

func TestSameTextLeavesTheCursor(t *testing.T) {
	h := newHouse(t)
	e := NewFieldEntry()
	order := h.Cast(map[string]Keyed{"e": e}, "e")
	order.Focus("e")
	h.Write("abc")
	h.Press(fyne.KeyLeft, fyne.KeyLeft)
	e.SetText("abc")
	widgettest.Equal(t, "column", e.CursorColumn, 1)
}

func TestPasteIsHeardAndNotFiltered(t *testing.T) {
	h := newHouse(t)
	e := NewFigureEntry()
	var edits []string
	e.OnEdit = func(text string) { edits = append(edits, text) }
	order := h.Cast(map[string]Keyed{"e": e}, "e")
	order.Focus("e")
	clipboard := test.NewClipboard()
	clipboard.SetContent("52300 lb")
	e.TypedShortcut(&fyne.ShortcutPaste{Clipboard: clipboard})
	widgettest.Equal(t, "edits", strings.Join(edits, "|"), "52300 lb")
}

func TestFiguresKeepLettersOut(t *testing.T) {
	h := newHouse(t)
	e := NewFigureEntry()
	kept := 0
	e.OnRefuse = func(string) { kept++ }
	order := h.Cast(map[string]Keyed{"e": e}, "e")
	order.Focus("e")
	h.Write("5o2,3é0.5 -%")
	widgettest.Equal(t, "text", e.Text, "52,30.5 -%")
	widgettest.Equal(t, "letters kept out and told", kept, 2)
	word := NewFieldEntry()
	word.TypedRune('o')
	widgettest.Equal(t, "a field for words", word.Text, "o")
}

func TestArrowsAndLeaving(t *testing.T) {
	h := newHouse(t)
	e := NewFieldEntry()
	order := h.Cast(map[string]Keyed{"e": e, "f": NewFieldEntry()}, "e", "f")
	var said []string
	say := func(what string) func() { return func() { said = append(said, what) } }
	e.OnUp, e.OnDown = say("up"), say("down")
	e.OnLeave = func(text string) { said = append(said, "left "+text) }
	order.Focus("e")
	h.Write("7")
	h.Press(fyne.KeyUp, fyne.KeyDown, fyne.KeyTab)
	widgettest.Equal(t, "said", strings.Join(said, ", "), "up, down, left 7")
}

// TestLeavingMayOpenABox: the box takes the keyboard, which leaves again.
func TestLeavingMayOpenABox(t *testing.T) {
	h := newHouse(t)
	e := NewFieldEntry()
	order := h.Cast(map[string]Keyed{"e": e, "f": NewFieldEntry()}, "e", "f")
	left := 0
	e.OnLeave = func(string) { left++; h.UI.Tell(Notice{Title: "Left"}, nil) }
	order.Focus("e")
	h.Press(fyne.KeyTab)
	widgettest.Equal(t, "left", left, 1)
	h.Press(fyne.KeyReturn)
	widgettest.Equal(t, "box open", h.UI.FrontDialog() == nil, true)
}

func TestDisabledEntryIsDeaf(t *testing.T) {
	h := newHouse(t)
	e := NewFieldEntry()
	called := false
	e.OnCommit = func(string) string { called = true; return "" }
	h.Cast(map[string]Keyed{"e": e}, "e")
	e.Disable()
	e.TypedRune('x')
	e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	widgettest.Equal(t, "text", e.Text, "")
	widgettest.Equal(t, "committed", called, false)
}

func TestTabWithoutARingIsFynes(t *testing.T) {
	widgettest.Equal(t, "accepts Tab", NewFieldEntry().AcceptsTab(), false)
	e := NewFieldEntry()
	e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyTab})
	widgettest.Equal(t, "text", e.Text, "")
}

// lettersRight gives where the letters of an entry end, seen from its left.
func lettersRight(e *FieldEntry) float32 {
	s := lettersOf(test.WidgetRenderer(e).(*figureRenderer).WidgetRenderer)
	return s.Position().X + s.Content.MinSize().Width
}

func TestFiguresStandAtTheRight(t *testing.T) {
	h := newHouse(t)
	short, long, word := NewFigureEntry(), NewFigureEntry(), NewFieldEntry()
	short.SetText("7")
	long.SetText("52,300")
	word.SetText("7")
	order := h.Cast(map[string]Keyed{"short": short, "long": long, "word": word}, "short", "long", "word")
	widgettest.Equal(t, "right edges", lettersRight(short), lettersRight(long))
	widgettest.Equal(t, "right edge", lettersRight(short), short.Size().Width)
	if lettersRight(word) >= word.Size().Width/2 {
		t.Errorf("a word ends at %v of %v: it should stand at the left", lettersRight(word), word.Size().Width)
	}
	order.Focus("short")
	h.Press(fyne.KeyEnd)
	h.Write("123456")
	widgettest.Equal(t, "after typing", lettersRight(short), short.Size().Width)
}

// TestLongFiguresScroll: text wider than the field still shows its cursor.
func TestLongFiguresScroll(t *testing.T) {
	h := newHouse(t)
	e := NewFigureEntry()
	order := NewFocusOrder(h.UI)
	order.Add("e", e)
	h.Show(container.NewWithoutLayout(e), fyne.NewSize(200, 100))
	e.Resize(fyne.NewSize(60, 34))
	order.Focus("e")
	h.Write("123456789012345")
	s := lettersOf(test.WidgetRenderer(e).(*figureRenderer).WidgetRenderer)
	widgettest.Equal(t, "left edge", s.Position().X, 0)
	if s.Offset.X == 0 {
		t.Error("the end of the text, with the cursor, is out of sight")
	}
}

func TestClickFindsTheLetter(t *testing.T) {
	h := newHouse(t)
	e := NewFigureEntry()
	e.SetText("52300")
	h.Cast(map[string]Keyed{"e": e}, "e")
	letters := fyne.MeasureText("52300", paint.PainterFor(e).Size("text"), e.TextStyle).Width
	start := e.Size().Width - paint.PainterFor(e).Inner() - letters
	for _, c := range []struct {
		x    float32
		want int
	}{
		{start + 1, 0}, {start + letters - 1, 5}, {start + letters/5*2 + 1, 2}, {5, 0},
	} {
		e.MouseDown(&desktop.MouseEvent{Button: desktop.MouseButtonPrimary, PointEvent: fyne.PointEvent{Position: fyne.NewPos(c.x, 15)}})
		widgettest.Equal(t, "column", e.CursorColumn, c.want)
	}
}
