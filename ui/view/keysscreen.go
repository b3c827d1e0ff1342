package view

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/kit"
	"tenthpoint/ui/present"
)

// keysScreen is the sheet of keys, made from the table of commands.
type keysScreen struct {
	window *Window
	reader *kit.Reader
	ring   *kit.Ring
}

func newKeysScreen(*present.Frame) Screen { return &keysScreen{} }

// Acts are none: Escape goes back, as everywhere.
func (s *keysScreen) Acts() []Act { return nil }

// Build lists every key under its menu.
func (s *keysScreen) Build(w *Window) fyne.CanvasObject {
	s.window = w
	columns := container.NewGridWithColumns(2)
	column, group := (*fyne.Container)(nil), ""
	for _, row := range w.commands.HelpRows() {
		if row.Group != group {
			group = row.Group
			column = container.New(tight{2})
			column.Add(kit.NewHeading(group))
			columns.Add(column)
		}
		column.Add(container.NewGridWithColumns(2, newLabel(row.Title, ordinary), newLabel(row.Keys, ordinary)))
	}
	s.reader = kit.NewReader(columns)
	s.ring = kit.NewRing(w.stage)
	s.ring.Add("keys", s.reader)
	return s.reader
}

// Show puts the keyboard on the sheet, so that it can be read on.
func (s *keysScreen) Show() { s.ring.FocusFirst() }

// Refresh has nothing to do: keys do not change.
func (s *keysScreen) Refresh() {}

// Ring has one stop.
func (s *keysScreen) Ring() *kit.Ring { return s.ring }
