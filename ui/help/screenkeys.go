package help

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// keysScreen is the sheet of keys, made from the table of commands.
type keysScreen struct {
	session    *session.Session
	reader     *widgets.Reader
	focusOrder *widgets.FocusOrder
}

func NewKeysScreen(f *session.Session) shell.Screen { return &keysScreen{session: f} }

// Acts are none: Escape goes back, as everywhere.
func (s *keysScreen) Acts() []shell.Act { return nil }

// keyColumns is the number of columns of the sheet.
const keyColumns = 3

// Build lists every key under its menu.
func (s *keysScreen) Build(w *shell.Window) fyne.CanvasObject {
	var columns [keyColumns]*fyne.Container
	for i := range columns {
		columns[i] = container.New(&shell.Tight{Gap: 3})
	}
	rows := w.Commands.HelpRows()
	for i, group := range shareOut(rows) {
		for _, at := range group {
			if at == 0 || rows[at].Group != rows[at-1].Group {
				columns[i].Add(widgets.NewHeading(rows[at].Group))
			}
			columns[i].Add(container.NewBorder(nil, nil, nil, shell.NewLabel(rows[at].Keys, shell.UnitSize), shell.NewLabel(rows[at].Title, shell.Ordinary)))
		}
	}
	title := shell.NewLabel(s.session.Say("Keys"), shell.Heading)
	sheet := container.New(&shell.Abreast{}, columns[0], columns[1], columns[2])
	s.reader = widgets.NewReader(container.New(shell.Margin{}, container.NewVBox(title, sheet)))
	s.focusOrder = widgets.NewFocusOrder(w.UI)
	s.focusOrder.Add("keys", s.reader)
	return s.reader
}

// shareOut parts the rows among the columns, a menu's rows together: each goes
// where there is least so far.
func shareOut(rows []widgets.HelpRow) (out [keyColumns][]int) {
	groups := map[string][]int{}
	var order []string
	for i, row := range rows {
		if groups[row.Group] == nil {
			order = append(order, row.Group)
		}
		groups[row.Group] = append(groups[row.Group], i)
	}
	for _, group := range order {
		least := 0
		for i := range out {
			if len(out[i]) < len(out[least]) {
				least = i
			}
		}
		out[least] = append(out[least], groups[group]...)
	}
	return out
}

// Show moves the focus to the sheet, so that it can be read on.
func (s *keysScreen) Show() { s.focusOrder.FocusFirst() }

// Refresh has nothing to do: keys do not change.
func (s *keysScreen) Refresh() {}

// FocusOrder has one stop.
func (s *keysScreen) FocusOrder() *widgets.FocusOrder { return s.focusOrder }

// Hint says how to leave.
func (s *keysScreen) Hint() string { return s.session.Say("Escape goes back.") }
