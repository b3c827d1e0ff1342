package help

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/handbook"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paperview"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
	"tenthpoint/ui/widgets/status"
)

// HandbookScreen is the user manual: the search at the left, the chapter at the right.
type HandbookScreen struct {
	session    *session.Session
	window     *shell.Window
	Line       *widgets.FieldEntry
	Found      *status.Text
	Table      *widgets.Table
	Prose      *paperview.ProseView
	focusOrder *widgets.FocusOrder

	manual  handbook.Book // in the language of the desk
	hits    []handbook.Hit
	Chapter string // the one that is open
}

func NewHandbookScreen(f *session.Session) shell.Screen {
	return &HandbookScreen{session: f, manual: handbook.In(f.Code())}
}

// Acts are opening the book, also at the chapter of the screen in front.
func (s *HandbookScreen) Acts() []shell.Act {
	return []shell.Act{{Everywhere: true, Command: widgets.Command{
		ID: "handbook.help", Title: s.session.Say("Help with this screen"), Group: s.session.Say("Go to"), Keys: []widgets.Key{widgets.Bare(fyne.KeyF1)},
		Do: func() { s.Help(s.window.Front()) },
	}}}
}

// Build makes the list and the page.
func (s *HandbookScreen) Build(w *shell.Window) fyne.CanvasObject {
	s.window = w
	s.Line, s.Found = widgets.NewFieldEntry(), status.NewText()
	s.Found.Lines = 2
	s.Line.OnEdit = s.look
	s.Line.OnDown = func() { s.focusOrder.Focus("table") }
	s.Line.OnCommit = func(string) string { return "page" }
	s.Table = widgets.NewTable(nil)
	s.Table.Empty = w.Session.Say("Nothing is written about that. Try another word.")
	s.Table.OnChoose = func(i int, _ string) { s.open(s.hits[i]) }
	s.Table.OnOpen = func(int, string) { s.focusOrder.Focus("page") }
	s.Table.OnLetter = func(letter rune) {
		s.focusOrder.Focus("line")
		s.Line.TypedRune(letter)
	}
	s.Prose = paperview.NewProseView()
	s.focusOrder = widgets.NewFocusOrder(w.UI)
	s.focusOrder.OnEscape = s.escape
	s.focusOrder.Add("line", s.Line)
	s.focusOrder.Name("line", w.Session.Say("Find"))
	s.focusOrder.Add("table", s.Table)
	s.focusOrder.Add("page", s.Prose)
	s.look("")
	list := container.NewBorder(container.NewVBox(shell.Titled(w.Session.Say("Handbook"), s.Line), s.Found), nil, nil, nil, s.Table)
	return container.New(shell.ListAndPage, list, s.Prose)
}

// look lists the passages that match the words typed; with none, the chapters.
func (s *HandbookScreen) look(words string) {
	s.hits = s.manual.Search(words)
	list := make([]model.Row, len(s.hits))
	for i, h := range s.hits {
		list[i] = model.Row{Key: fmt.Sprintf("%s %d", h.Chapter, h.Block), Cells: []string{hitName(h)}}
	}
	where := model.Column{Title: s.session.Say("Chapters"), Width: 20, Grow: true}
	if words != "" {
		where.Title = s.session.Say("Found in")
	}
	s.Table.SetColumns([]model.Column{where})
	s.Table.SetRows(list)
	s.Found.Say(model.Plain, s.session.Say("Type a word or two, and the places where they stand are listed."))
	if len(s.hits) > 0 && words != "" {
		s.Table.SetChosen(list[0].Key)
		s.open(s.hits[0])
	}
}

// hitName returns the name of a passage in the list.
func hitName(h handbook.Hit) string {
	if h.Section == "" {
		return h.Title
	}
	return h.Section + " – " + h.Title
}

// open shows a passage in its chapter.
func (s *HandbookScreen) open(h handbook.Hit) {
	c, ok := s.manual.ByID(h.Chapter)
	if !ok {
		return
	}
	s.Chapter = h.Chapter
	s.Prose.Open(Passages(c), h.Block)
	if s.Line.Text != "" {
		s.Found.Say(model.Plain, h.Passage)
	}
}

// Help opens the chapter of a screen.
func (s *HandbookScreen) Help(screen string) {
	c := s.manual.For(screen)
	s.Line.SetText("")
	s.look("")
	s.Table.SetChosen(c.ID + " 0")
	s.open(handbook.Hit{Chapter: c.ID})
	s.window.Go("handbook")
	s.focusOrder.Focus("page")
}

// escape empties the line, then goes back to the screen before.
func (s *HandbookScreen) escape() bool {
	if s.Line.Text != "" {
		s.Line.SetText("")
		s.look("")
		s.focusOrder.Focus("line")
		return true
	}
	s.window.GoBack()
	return true
}

// Show opens the first chapter the first time and moves the focus to the line.
func (s *HandbookScreen) Show() {
	if s.Chapter == "" {
		s.open(s.hits[0])
		s.Table.SetChosen(s.Table.Rows()[0].Key)
	}
	s.focusOrder.Focus("line")
	s.Line.SelectAll()
}

// Refresh has nothing to do: the book does not change.
func (s *HandbookScreen) Refresh() {}

// FocusOrder returns the tab order: the line, the list, the page.
func (s *HandbookScreen) FocusOrder() *widgets.FocusOrder { return s.focusOrder }

// Hint says how to read.
func (s *HandbookScreen) Hint() string {
	return s.session.Say("Type to search. Down goes into the list, Enter to the page, Escape back to where you were.")
}

// Passages are a chapter's blocks as package paperview sets them.
func Passages(c handbook.Chapter) []paperview.Passage {
	out := make([]paperview.Passage, len(c.Blocks))
	for i, b := range c.Blocks {
		p := paperview.Passage{Kind: PassageKinds[b.Kind], Rows: b.Rows, Lines: b.Lines}
		if b.Number != "" {
			p.Mark = b.Number + "."
		}
		for _, span := range b.Text {
			p.Spans = append(p.Spans, paperview.Span{Text: span.Text, Bold: span.Bold})
		}
		out[i] = p
	}
	return out
}

var PassageKinds = map[handbook.Kind]paperview.PassageKind{
	handbook.Title: paperview.PassageTitle, handbook.Heading: paperview.PassageHeading, handbook.Paragraph: paperview.PassageText,
	handbook.Bullet: paperview.PassagePoint, handbook.Step: paperview.PassagePoint, handbook.Table: paperview.PassageTable,
	handbook.Sum: paperview.PassageSum, handbook.Caution: paperview.PassageCaution,
}
