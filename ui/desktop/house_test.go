package desktop

import (
	"context"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/demo"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/schedules"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/yard"
)

// The time in every test of a window.
var noon = time.Date(2025, 10, 14, 12, 0, 0, 0, time.UTC)

// drawer is a printer that keeps the papers.
type drawer struct{ papers map[string][]byte }

func (d *drawer) Print(_ context.Context, name string, pdf []byte) (string, error) {
	d.papers[name] = pdf
	return name + ".pdf", nil
}

// scene is a window of a test on a book of its own.
type scene struct {
	t      testing.TB
	desk   *scalehouse.Desk
	drawer *drawer
	opened string // the book of the invented elevator, once it was opened
	fyne   fyne.Window
	// reading takes the place of drawing, for who reads what a screen says.
	reading func(shot string)
	*shell.Window
}

// newScene opens a window on the invented elevator, or without loads on an
// empty book.
func newScene(t testing.TB, look shell.Look, loads int) *scene {
	t.Helper()
	ctx := context.Background()
	book, err := sqlite.OpenScratch()
	must(t, err)
	t.Cleanup(func() { must(t, book.Close()) })
	editions, err := schedules.Editions()
	must(t, err)
	if loads > 0 {
		must(t, demo.Fill(ctx, book, demo.Options{Loads: loads, Seed: 7, Now: noon, Place: time.UTC, Rates: editions}, nil))
	}
	charts, err := schedules.Charts()
	must(t, err)
	d, err := scalehouse.Open(ctx, book, scalehouse.Options{Name: "test", Rates: editions, Charts: charts, Place: time.UTC, Clock: func() time.Time { return noon }})
	must(t, err)
	if loads > 0 {
		must(t, d.SignIn(demo.Manager))
	}
	s := &scene{t: t, desk: d, drawer: &drawer{papers: map[string][]byte{}}}
	s.open(look)
	return s
}

func (s *scene) open(look shell.Look) {
	app := test.NewTempApp(s.t)
	app.Settings().SetTheme(look.Theme())
	s.fyne = test.NewWindow(nil)
	s.t.Cleanup(s.fyne.Close)
	frame := session.New(s.desk, s.drawer)
	frame.Zone = time.UTC
	session.SetManualReason(frame, "read from the indicator") // as asked on the first weight of a day
	frame.Demo = func(context.Context, func(int, int)) (string, error) { return "demo.book", nil }
	frame.OpenDemo = func(path string) error { s.opened = path; return nil }
	var err error
	s.Window, err = shell.Open(frame, Screens, shell.Options{
		Window: s.fyne, Runner: shell.NewImmediate(), Look: look,
		SetTheme: app.Settings().SetTheme,
	})
	must(s.t, err)
	s.resize(fyne.NewSize(1280, 720))
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// press sends keys to the focused widget, as the driver would.
func (s *scene) press(keys ...fyne.KeyName) {
	s.t.Helper()
	s.UI.Press(keys...)
}

// write types letters into the focused widget, and Enter after them.
func (s *scene) write(lines ...string) {
	s.t.Helper()
	for _, line := range lines {
		s.UI.Write(line)
		s.press(fyne.KeyEnter)
	}
}

// come types grower, grain and truck of a load, each left by Tab: Enter goes past what the form has
// filled in.
func (s *scene) come(grower, grain, truck string) {
	s.t.Helper()
	for _, text := range []string{grower, grain, truck} {
		s.UI.Write(text)
		s.press(fyne.KeyTab)
	}
}

// answer types what a box asks for, line by line, and presses its button.
func (s *scene) answer(lines ...string) {
	s.t.Helper()
	s.write(lines...)
	s.press(fyne.KeyEnter)
}

// letters types letters into the focused widget.
func (s *scene) letters(letters string) {
	s.t.Helper()
	s.UI.Write(letters)
}

// yardOf is the screen of the yard of a window.
func yardOf(w *shell.Window) *yard.Screen { return w.Yard().(*yard.Screen) }
