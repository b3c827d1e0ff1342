package widgets

import (
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"tenthpoint/ui/model"
	"tenthpoint/ui/widgettest"
)

// paste inserts a text into an entry from the clipboard.
func paste(e fyne.Shortcutable, text string) {
	clipboard := test.NewClipboard()
	clipboard.SetContent(text)
	e.TypedShortcut(&fyne.ShortcutPaste{Clipboard: clipboard})
}

// TestEveryPlaceToTypeHasALength: also against a paste of megabytes, which is over at
// once and told.
func TestEveryPlaceToTypeHasALength(t *testing.T) {
	megabytes := strings.Repeat("wet corn\n", 300_000)
	for _, c := range []struct {
		field model.Field
		most  int
	}{
		{model.Field{Kind: model.WordsField}, mostWords},
		{model.Field{Kind: model.FigureField}, mostFigures},
		{model.Field{Kind: model.FindField}, mostName},
		{model.Field{Kind: model.OpenField}, mostName},
		{model.Field{Kind: model.WordsField, Most: 1000}, 1000},
	} {
		h := newHouse(t)
		told := 0
		made := Input{Refused: func(string) { told++ }}.New(c.field)
		order := h.Cast(map[string]Keyed{"e": made}, "e")
		order.Focus("e")
		e := made.(interface{ body() *FieldEntry }).body()
		begun := time.Now()
		paste(e, megabytes)
		if took := time.Since(begun); took > 2*time.Second {
			t.Errorf("kind %d: a paste of megabytes took %s", c.field.Kind, took)
		}
		widgettest.Equal(t, "letters after the paste", len([]rune(e.Text)), c.most)
		widgettest.Equal(t, "told", told, 1)
		h.Write("7")
		widgettest.Equal(t, "letters after one more", len([]rune(e.Text)), c.most)
		widgettest.Equal(t, "told again", told, 2)
		e.SelectAll()
		h.Write("7")
		widgettest.Equal(t, "typed over what was selected", e.Text, "7")
	}
}

// TestAPasteIsOneLine: line ends and tabs of a spreadsheet are spaces.
func TestAPasteIsOneLine(t *testing.T) {
	h := newHouse(t)
	e := NewFieldEntry()
	h.Cast(map[string]Keyed{"e": e}, "e").Focus("e")
	paste(e, "Ann\tExample\r\n")
	widgettest.Equal(t, "pasted", e.Text, "Ann Example")
}

// TestUndoInAField: what was typed or pasted is taken back.
func TestUndoInAField(t *testing.T) {
	h := newHouse(t)
	e := NewFieldEntry()
	h.Cast(map[string]Keyed{"e": e}, "e").Focus("e")
	h.Write("bin")
	paste(e, " B4")
	e.TypedShortcut(&fyne.ShortcutUndo{})
	widgettest.Equal(t, "after undo", e.Text, "bin")
	e.TypedShortcut(&fyne.ShortcutRedo{})
	widgettest.Equal(t, "after redo", e.Text, "bin B4")
}
