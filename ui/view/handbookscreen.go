package view

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/handbook"
	"tenthpoint/ui/kit"
	"tenthpoint/ui/model"
	"tenthpoint/ui/present"
)

// handbookScreen is the book that lies on the desk: what is looked for at the
// left, the chapter at the right.
type handbookScreen struct {
	window *Window
	line   *kit.FieldEntry
	found  *kit.Note
	table  *kit.Table
	prose  *kit.ProseView
	ring   *kit.Ring

	manual  handbook.Book // in the language of the desk
	hits    []handbook.Hit
	chapter string // the one that is open
}

func newHandbookScreen(*present.Frame) Screen {
	return &handbookScreen{manual: handbook.In(Language())}
}

// Acts are opening the book, also at the chapter of the screen in front.
func (s *handbookScreen) Acts() []Act {
	return []Act{{Everywhere: true, Command: kit.Command{
		ID: "handbook.help", Title: present.Say("Help with this screen"), Group: present.Say("Go to"), Keys: []kit.Key{kit.Bare(fyne.KeyF1)},
		Do: func() { s.help(s.window.place()) },
	}}}
}

// Build makes the list and the page.
func (s *handbookScreen) Build(w *Window) fyne.CanvasObject {
	s.window = w
	s.line, s.found = kit.NewFieldEntry(), kit.NewNote()
	s.found.Lines = 2
	s.line.OnEdit = s.look
	s.line.OnDown = func() { s.ring.Focus("table") }
	s.line.OnCommit = func(string) string { return "page" }
	s.table = kit.NewTable(nil)
	s.table.Empty = present.Say("Nothing is written about that. Try another word.")
	s.table.OnChoose = func(i int, _ string) { s.open(s.hits[i]) }
	s.table.OnOpen = func(int, string) { s.ring.Focus("page") }
	s.table.OnLetter = func(letter rune) {
		s.ring.Focus("line")
		s.line.TypedRune(letter)
	}
	s.prose = kit.NewProseView()
	s.ring = kit.NewRing(w.stage)
	s.ring.OnEscape = s.escape
	s.ring.Add("line", s.line)
	s.ring.Add("table", s.table)
	s.ring.Add("page", s.prose)
	s.look("")
	list := container.NewBorder(container.NewVBox(titled(present.Say("Handbook"), s.line), s.found), nil, nil, nil, s.table)
	return container.New(listAndPage{}, list, s.prose)
}

// look lists what fits the words typed; with none, the chapters.
func (s *handbookScreen) look(words string) {
	s.hits = s.manual.Search(words)
	list := make([]model.Row, len(s.hits))
	for i, h := range s.hits {
		list[i] = model.Row{Key: fmt.Sprintf("%s %d", h.Chapter, h.Block), Cells: []string{hitName(h)}}
	}
	where := wordsColumn(present.Say("Chapters"), 20)
	if words != "" {
		where.Title = present.Say("Found in")
	}
	where.Grow = true
	s.table.SetColumns([]kit.Column{where})
	s.table.SetRows(list)
	s.found.Say(model.Plain, present.Say("Type a word or two, and the places where they stand are listed."))
	if len(s.hits) > 0 && words != "" {
		s.table.SetChosen(list[0].Key)
		s.open(s.hits[0])
	}
}

// hitName is what a passage is called in the list.
func hitName(h handbook.Hit) string {
	if h.Section == "" {
		return h.Title
	}
	return h.Section + " – " + h.Title
}

// open shows a passage in its chapter.
func (s *handbookScreen) open(h handbook.Hit) {
	c, ok := s.manual.ByID(h.Chapter)
	if !ok {
		return
	}
	s.chapter = h.Chapter
	s.prose.Open(passages(c), h.Block)
	if s.line.Text != "" {
		s.found.Say(model.Plain, h.Passage)
	}
}

// help opens the chapter of a screen.
func (s *handbookScreen) help(screen string) {
	c := s.manual.For(screen)
	s.line.SetText("")
	s.look("")
	s.table.SetChosen(c.ID + " 0")
	s.open(handbook.Hit{Chapter: c.ID})
	s.window.Go("handbook")
	s.ring.Focus("page")
}

// escape empties the line, then goes back to the screen before.
func (s *handbookScreen) escape() bool {
	if s.line.Text != "" {
		s.line.SetText("")
		s.look("")
		s.ring.Focus("line")
		return true
	}
	s.window.goBack()
	return true
}

// Show opens the first chapter the first time and puts the keyboard in the
// line.
func (s *handbookScreen) Show() {
	if s.chapter == "" {
		s.open(s.hits[0])
		s.table.SetChosen(s.table.Rows()[0].Key)
	}
	s.ring.Focus("line")
	s.line.SelectAll()
}

// Refresh has nothing to do: the book does not change.
func (s *handbookScreen) Refresh() {}

// Ring is the order of the keyboard: the line, the list, the page.
func (s *handbookScreen) Ring() *kit.Ring { return s.ring }

// Hint says how to read.
func (s *handbookScreen) Hint() string {
	return present.Say("Type to search. Down goes into the list, Enter to the page, Escape back to where you were.")
}

// passages are a chapter's blocks as the kit sets them.
func passages(c handbook.Chapter) []kit.Passage {
	out := make([]kit.Passage, len(c.Blocks))
	for i, b := range c.Blocks {
		p := kit.Passage{Kind: passageKinds[b.Kind], Rows: b.Rows, Lines: b.Lines}
		if b.Number != "" {
			p.Mark = b.Number + "."
		}
		for _, span := range b.Text {
			p.Spans = append(p.Spans, kit.Span{Text: span.Text, Bold: span.Bold})
		}
		out[i] = p
	}
	return out
}

var passageKinds = map[handbook.Kind]kit.PassageKind{
	handbook.Title: kit.PassageTitle, handbook.Heading: kit.PassageHeading, handbook.Paragraph: kit.PassageText,
	handbook.Bullet: kit.PassagePoint, handbook.Step: kit.PassagePoint, handbook.Table: kit.PassageTable,
	handbook.Sum: kit.PassageSum, handbook.Caution: kit.PassageCaution,
}
