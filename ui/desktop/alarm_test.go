package desktop

import (
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/ui/model"
	"tenthpoint/ui/shell"
)

// While the book's file is not in its place a red bar stands over every screen, nothing is
// entered, and the bar leads to a copy saved from the open book.
func TestABookMovedUnderTheWindowIsTold(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	path, away := s.desk.Book().Path(), filepath.Join(t.TempDir(), "away.book")
	must(t, os.Rename(path, away))
	s.letters("123")
	s.press(fyne.KeyEnter)
	if s.Status.State() != model.Stop {
		t.Errorf("a grower was taken down: %s", s.Status.Text())
	}
	s.Alarm.Watch()
	if !s.Alarm.Bar.Visible() || s.Alarm.Text() == "" {
		t.Fatal("no bar tells that the book is gone")
	}
	copied := filepath.Join(t.TempDir(), "copies")
	must(t, os.MkdirAll(copied, 0o755))
	s.Alarm.Save.Press()
	s.answer(copied)
	books, err := filepath.Glob(filepath.Join(copied, "*.book"))
	if err != nil || len(books) != 1 {
		t.Fatalf("%d copies were saved; the status line says %q", len(books), s.Status.Text())
	}
	saved, err := sqlite.Open(books[0], book.Options{ReadOnly: true})
	must(t, err)
	must(t, saved.Close())
	must(t, os.Rename(away, path))
	s.Alarm.Watch()
	if s.Alarm.Bar.Visible() {
		t.Errorf("the book is back, and the bar says %q", s.Alarm.Text())
	}
}
