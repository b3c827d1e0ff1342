package rates

import (
	"strconv"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/ratefiles"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/rates/draft"
	"tenthpoint/internal/tomlfile"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Making is an edition of the house while a manager makes it: its figures one by one, what is wrong
// with them, and what they would take beside the edition it was begun from.
type Making struct {
	session  *session.Session
	draft    draft.Draft
	begun    bool
	chosen   int // the line of the text whose figure is changed
	edition  *rates.Edition
	problems tomlfile.Problems
	house    error // why it does not go with the other editions of the house
	named    map[string]named
	loads    *triedLoads
}

// named are the words of a figure.
type named struct{ section, label string }

// NewMaking makes the screen's list, with nothing begun.
func NewMaking(f *session.Session) *Making {
	return &Making{session: f, loads: newTriedLoads(f), named: map[string]named{}}
}

// Refresh takes up the edition that one's own is to be begun from, if another was chosen.
func (m *Making) Refresh() {
	id := m.session.RatesBegun
	if id == "" {
		return
	}
	m.session.RatesBegun = ""
	e, found := m.session.Desk.Rates().ByID(id)
	if !found {
		return
	}
	today := m.session.Desk.Today()
	m.loads, m.named = newTriedLoads(m.session), map[string]named{}
	m.name(e, draft.MakeMine(e, draft.Head{}).Figures())
	m.draft, m.begun = draft.MakeMine(e, draft.Head{
		ID: m.freeID(e), From: today.String(), Issued: today.String(), By: m.session.Desk.Profile().Business,
		Document: m.session.Say("made at the desk from %v", e.ID),
	}), true
	m.chosen = 0
	m.check()
	if figures := m.figures(); len(figures) > 0 {
		m.chosen = figures[0].Line
	}
}

// freeID is a name that no edition has: grain, schedule and the year, with a number where it is taken.
func (m *Making) freeID(e *rates.Edition) string {
	base := strings.Join([]string{e.Commodity.ID, e.Schedule, strconv.Itoa(m.session.Desk.Today().Year())}, "-")
	id := base
	for n := 2; ; n++ {
		if _, taken := m.session.Desk.Rates().ByID(id); !taken {
			return id
		}
		id = base + "-" + strconv.Itoa(n)
	}
}

// Begun reports whether an edition is being made.
func (m *Making) Begun() bool { return m.begun }

// check reads the draft as files are read, and the whole house with it.
func (m *Making) check() {
	m.edition, m.problems = m.draft.Check("")
	m.house = nil
	if m.edition == nil {
		return
	}
	m.name(m.edition, m.draft.Figures())
	_, m.house = ratefiles.WithOwn(m.session.RatesFolder, m.edition)
}

// name notes the words of each figure as the posted rates have them.
func (m *Making) name(e *rates.Edition, figures []draft.Figure) {
	words := map[int]named{}
	for _, l := range e.Lines() {
		if _, known := words[l.At]; !known {
			words[l.At] = named{m.session.Text(l.Section), m.session.Text(l.Label)}
		}
	}
	section := ""
	for _, f := range figures {
		n, known := words[f.Line]
		if known {
			section = n.section
		} else {
			n = named{section, f.Key}
		}
		m.named[keyOf(f)] = n
	}
}

// keyOf is a figure's name that stays while others are changed.
func keyOf(f draft.Figure) string {
	return strings.Join([]string{f.Table, strconv.Itoa(f.Row), f.Key}, " ")
}

// figures are those that may be changed: the mark of the house stays.
func (m *Making) figures() []draft.Figure {
	if !m.begun {
		return nil
	}
	var out []draft.Figure
	for _, f := range m.draft.Figures() {
		if f.Table != "edition" || f.Key != "status" {
			out = append(out, f)
		}
	}
	return out
}

// columns of the list.
func (m *Making) columns() model.Columns[draft.Figure] {
	return model.Columns[draft.Figure]{
		model.Words(m.session.Say("Part"), 8, func(f draft.Figure) string { return m.words(f).section }).Wishing(18),
		model.Words(m.session.Say("Figure"), 10, func(f draft.Figure) string { return m.words(f).label }).Wishing(22).Growing(),
		model.Words(m.session.Say("Value"), 10, func(f draft.Figure) string { return f.Value }).Wishing(16),
	}
}

// words are the words of a figure; the word of the file where there are none.
func (m *Making) words(f draft.Figure) named {
	if n, known := m.named[keyOf(f)]; known {
		return n
	}
	return named{f.Table, f.Key}
}

// Columns are the columns of the list.
func (m *Making) Columns() []model.Column { return m.columns().Heads() }

// Rows are the figures, those with a mistake marked.
func (m *Making) Rows() []model.Row {
	columns := m.columns()
	var out []model.Row
	for _, f := range m.figures() {
		row := model.Row{Key: strconv.Itoa(f.Line), Cells: columns.Cells(f)}
		if _, wrong := m.wrong(f.Line); wrong {
			row.State = model.Stop
		}
		out = append(out, row)
	}
	return out
}

// wrong is the problem of a line.
func (m *Making) wrong(line int) (message.Text, bool) {
	for _, p := range m.problems {
		if p.Line == line {
			return message.List(" ", p.What, p.Remedy), true
		}
	}
	return message.Text{}, false
}

// Empty returns what to do while nothing is begun.
func (m *Making) Empty() string {
	return m.session.Say("Choose an edition under Rates and press Ctrl+M: its copy is made yours here.")
}

// Choose takes a figure by the key of its row.
func (m *Making) Choose(key string) { m.chosen, _ = strconv.Atoi(key) }

// Chosen is the key of the figure that is changed.
func (m *Making) Chosen() string { return strconv.Itoa(m.chosen) }

// figure is the one that is changed.
func (m *Making) figure() (draft.Figure, bool) {
	for _, f := range m.figures() {
		if f.Line == m.chosen {
			return f, true
		}
	}
	return draft.Figure{}, false
}

// Field is the field in which the chosen figure is changed.
func (m *Making) Field() model.Field {
	f, some := m.figure()
	if !some {
		return model.Field{ID: "value", Label: m.session.Say("Value")}
	}
	n := m.words(f)
	field := model.Field{ID: "value", Label: session.Join(": ", n.section, n.label), Value: f.Value}
	if wrong, is := m.wrong(f.Line); is {
		field.State, field.Note = model.Stop, m.session.Text(wrong)
	}
	return field
}

// Type takes another value of the chosen figure.
func (m *Making) Type(value string) {
	if f, some := m.figure(); some && f.Value != value {
		m.draft = m.draft.Set(f.Line, value)
		m.check()
	}
}

// Next goes to the figure after the chosen one.
func (m *Making) Next() {
	figures := m.figures()
	for i, f := range figures {
		if f.Line == m.chosen && i+1 < len(figures) {
			m.chosen = figures[i+1].Line
			return
		}
	}
}

// CanChangeRows reports whether the chosen figure is in a row of a table.
func (m *Making) CanChangeRows() bool { return m.begun && m.draft.CanChangeRows(m.chosen) }

// AddRow adds a row after that of the chosen figure, and goes to it.
func (m *Making) AddRow() {
	m.draft, m.chosen = m.draft.AddRow(m.chosen)
	m.check()
}

// RemoveRow takes the row of the chosen figure out.
func (m *Making) RemoveRow() {
	figures, at := m.figures(), 0
	for i, f := range figures {
		if f.Line == m.chosen {
			at = i
		}
	}
	row := figures[at]
	for at > 0 && figures[at].Table == row.Table && figures[at].Row == row.Row {
		at--
	}
	m.draft = m.draft.RemoveRow(m.chosen)
	m.chosen = figures[at].Line
	m.check()
}

// Headline says whether it could be saved, or how much is wrong.
func (m *Making) Headline() model.Status {
	switch {
	case !m.begun:
		return model.Status{}
	case len(m.problems) > 0:
		return model.Status{State: model.Stop, Text: m.session.Say("Mistakes: %d. The rates in force stay as they are until there is none.", len(m.problems))}
	case m.house != nil:
		return model.Status{State: model.Stop, Text: m.session.Sentence(m.house)}
	case m.draft.SameFigures():
		return model.Status{State: model.Warn, Text: m.session.Say("Every figure is still that of %s.", m.draft.Base().ID)}
	}
	return model.Status{State: model.OK, Text: m.session.Say("There is no mistake in it.")}
}
