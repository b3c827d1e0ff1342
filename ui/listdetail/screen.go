package listdetail

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/model"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// List is the presenter of a list with a chosen row.
type List interface {
	Columns() []model.Column
	Rows() []model.Row
	Empty() string // what to do where there are no rows
	Chosen() string
	Choose(key string)
}

// Filter narrows a list by a line of text.
type Filter interface {
	Line() string
	Type(line string)
	// Clear empties the line, and reports whether it held text.
	Clear() bool
}

// Spec defines one screen of this kind.
type Spec struct {
	Title string
	Hint  func() string // which keys carry the work, for the status line
	List  List
	Small bool // small letters rather than columns left out

	Filter Filter // nil: the list is not narrowed
	Head   Head

	Detail  Detail // nil: there is nothing beside the list
	Arrange Arrangement

	Acts    []shell.Act
	Buttons []string // further commands with a button, such as ways to other screens

	Reload func() // reloads the list when the screen comes to the front; may be nil
	Read   func() // reads it again at every refresh; may be nil
}

// Screen is a screen made from its Spec.
type Screen struct {
	spec       Spec
	window     *shell.Window
	focusOrder *widgets.FocusOrder

	Line *widgets.FieldEntry // nil without a filter
	List *widgets.Table
	head *head
}

// New makes a screen; [Screen.Build] makes its widgets.
func New(spec Spec) *Screen { return &Screen{spec: spec} }

// The stops of the focus order that every such screen may have.
const (
	lineStop = "line"
	listStop = "list"
)

// Acts are the actions of the list and the chosen row.
func (s *Screen) Acts() []shell.Act { return s.spec.Acts }

// Build makes the widgets: the line, the list, the detail, the buttons.
func (s *Screen) Build(w *shell.Window) fyne.CanvasObject {
	s.window, s.focusOrder = w, widgets.NewFocusOrder(w.UI)
	if s.spec.Filter != nil {
		s.buildLine()
	}
	s.buildList()
	s.head = newHead(s.spec.Title, s.spec.Head, s.Line)
	detail := fyne.CanvasObject(nil)
	if s.spec.Detail != nil {
		detail = s.spec.Detail.Build(w)
		for _, stop := range s.spec.Detail.Stops() {
			s.focusOrder.Add(stop.ID, stop.Widget)
		}
	}
	buttons := shell.ButtonRow(w, s.focusOrder, append(shell.ButtonsOf(s.spec.Acts), s.spec.Buttons...))
	return container.NewBorder(nil, buttons, nil, nil, s.spec.Arrange(s.head.content, s.List, detail))
}

func (s *Screen) buildLine() {
	s.Line = widgets.NewFieldEntry()
	s.Line.OnEdit = func(text string) { s.spec.Filter.Type(text); s.changed() }
	s.Line.OnDown = func() { s.focusOrder.Focus(listStop) }
	s.Line.OnCommit = func(string) string { return listStop }
	s.focusOrder.OnEscape = s.clear
	s.focusOrder.Add(lineStop, s.Line)
	s.focusOrder.Name(lineStop, s.window.Session.Say("Find"))
}

func (s *Screen) buildList() {
	s.List = widgets.NewTable(s.spec.List.Columns())
	s.List.Small = s.spec.Small
	s.List.OnChoose = func(_ int, key string) { s.spec.List.Choose(key); s.changed() }
	s.List.OnOpen = func(int, string) { s.FocusDetail() }
	if s.Line != nil {
		s.List.OnLetter = func(letter rune) {
			s.focusOrder.Focus(lineStop)
			s.Line.TypedRune(letter)
		}
	}
	s.focusOrder.Add(listStop, s.List)
}

// FocusDetail moves the focus to the detail.
func (s *Screen) FocusDetail() {
	if s.spec.Detail != nil {
		s.focusOrder.Focus(s.spec.Detail.First())
	}
}

// clear empties the line first; an empty one leaves the screen.
func (s *Screen) clear() bool {
	if !s.spec.Filter.Clear() {
		return false
	}
	s.focusOrder.Focus(lineStop)
	s.Refresh()
	return true
}

// Show reads the list again and moves the focus to where work begins.
func (s *Screen) Show() {
	if s.spec.Reload != nil {
		s.spec.Reload()
		s.changed()
	}
	s.focusOrder.FocusFirst()
	if s.Line != nil {
		s.Line.SelectAll()
	}
}

// Refresh shows list and detail as they now are.
func (s *Screen) Refresh() {
	if s.spec.Read != nil {
		s.spec.Read()
	}
	s.show()
}

// changed shows what another choice or another line changes.
func (s *Screen) changed() {
	s.show()
	s.window.Commands.Refresh()
}

func (s *Screen) show() {
	if s.Line != nil {
		s.Line.SetText(s.spec.Filter.Line())
	}
	s.head.show()
	l := s.spec.List
	s.List.Empty = l.Empty()
	s.List.SetColumns(l.Columns())
	s.List.SetRows(l.Rows())
	if s.List.ChosenKey() != l.Chosen() {
		s.List.SetChosen(l.Chosen())
	}
	if s.spec.Detail != nil {
		s.spec.Detail.Show()
	}
}

// FocusOrder returns the tab order: the line, the list, the detail, the acts.
func (s *Screen) FocusOrder() *widgets.FocusOrder { return s.focusOrder }

// Hint returns the main keys of the screen.
func (s *Screen) Hint() string { return s.spec.Hint() }

var _ shell.Screen = (*Screen)(nil)
