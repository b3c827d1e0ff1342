package widgets

import (
	"tenthpoint/ui/model"
	"tenthpoint/ui/widgettest"
	"testing"

	"fyne.io/fyne/v2"
)

// Ctrl+C copies the chosen row, Ctrl+A the table with its headings, and a right click offers both with
// what can be done, without opening the row.
func TestTableIsCopied(t *testing.T) {
	h := newHouse(t, Command{ID: "print", Title: "Print it", Place: "here", Do: func() {}}, Command{ID: "void", Title: "Void it", Place: "here", EnabledWhen: func() bool { return false }, Do: func() {}})
	h.Commands.At = func() string { return "here" }
	table := NewTable([]model.Column{{Title: "No.", Width: 5}, {Title: "Grower", Width: 12}})
	opened := false
	table.OnOpen = func(int, string) { opened = true }
	table.SetRows([]model.Row{{Key: "1", Cells: []string{"1", "Ada"}}, {Key: "2", Cells: []string{"2", "Bert"}}})
	order := h.Cast(map[string]Keyed{"list": table}, "list")
	order.Focus("list")
	table.choose(1)
	clip := fyne.CurrentApp().Clipboard()
	table.TypedShortcut(&fyne.ShortcutCopy{Clipboard: clip})
	widgettest.Equal(t, "copied", clip.Content(), "2\tBert\n")
	table.TypedShortcut(&fyne.ShortcutSelectAll{})
	widgettest.Equal(t, "copied", clip.Content(), "No.\tGrower\n1\tAda\n2\tBert\n")
	row := fyne.NewPos(20, table.fitted.header+table.rowHeight()/2)
	for range 2 { // the second click is on the chosen row
		table.TappedSecondary(&fyne.PointEvent{Position: row, AbsolutePosition: row})
		widgettest.Equal(t, "chosen", table.ChosenKey(), "1")
		menu := h.Window.Canvas().Overlays().Top()
		if menu == nil {
			t.Fatal("no menu was offered")
		}
		h.Window.Canvas().Overlays().Remove(menu)
	}
	widgettest.Equal(t, "opened", opened, false)
	if offered := h.Commands.offered(); len(offered) != 1 || offered[0].Label != "Print it" {
		t.Errorf("%d acts are offered, want the one that is possible", len(offered))
	}
}
