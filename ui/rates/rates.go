package rates

import (
	"context"
	"strings"

	"tenthpoint/internal/office"
	"tenthpoint/internal/rates"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// RatesView is a view of the chosen edition.
type RatesView int

// The views of an edition.
const (
	RatesRows     RatesView = iota // all its rules
	RatesTry                       // one load, wetter and wetter
	RatesCompare                   // beside another, and the pure water formula
	RatesProblems                  // mistakes in the elevator's own files
)

// Rates is the list of the loaded editions, with the text and results of the chosen one.
type Rates struct {
	session *session.Session
	shows   RatesView
	chosen  string // edition id
	other   string // the one it is compared with
	loads   *triedLoads

	rewritten map[string]bool // editions whose text was changed under their id

	trial, compared *Table
}

// NewRates makes the list. The first edition chosen is the first in force.
func NewRates(f *session.Session) *Rates {
	r := &Rates{session: f, loads: newTriedLoads(f)}
	if len(f.RatesWrong) > 0 {
		r.shows = RatesProblems
	}
	return r
}

// Shows is the view shown now.
func (r *Rates) Shows() RatesView { return r.shows }

// Turn shows something else of the edition.
func (r *Rates) Turn(to RatesView) { r.shows = to }

// Reload reads the editions again and forgets the loads that were tried.
func (r *Rates) Reload() {
	r.loads = newTriedLoads(r.session)
	r.forget()
	var err error
	if r.rewritten, err = office.RewrittenEditions(context.Background(), r.session.Desk); err != nil {
		r.session.Fail(err)
	}
	r.chosen = session.KeepChosen(sorted(r.session), func(e *rates.Edition) string { return e.ID }, r.chosen)
}

// forget invalidates the cached results.
func (r *Rates) forget() { r.trial, r.compared = nil, nil }

// Choose takes an edition.
func (r *Rates) Choose(id string) {
	if id != r.chosen {
		r.chosen, r.other = id, ""
		r.forget()
	}
}

// Chosen is the id of the chosen edition; empty when there is none.
func (r *Rates) Chosen() string { return r.chosen }

// HasEdition reports whether an edition is chosen.
func (r *Rates) HasEdition() bool { return r.edition() != nil }

func (r *Rates) edition() *rates.Edition {
	e, _ := r.session.Desk.Rates().ByID(r.chosen)
	return e
}

// columns of the list.
func (r *Rates) columns() model.Columns[*rates.Edition] {
	return model.Columns[*rates.Edition]{
		model.Words(r.session.Say("Grain"), 6, func(e *rates.Edition) string { return r.session.GrainName(e.Commodity.ID) }).Wishing(18).Growing().Dropped(1),
		model.Words(r.session.Say("Edition"), 17, func(e *rates.Edition) string { return e.ID }).Wishing(20),
		model.Words(r.session.Say("Status"), 8, func(e *rates.Edition) string { return statusWord(r.session.Language, e.Status) }).Dropped(1),
		model.Words(r.session.Say("Today"), 8, func(e *rates.Edition) string { return r.today(e).Text }).Wishing(12).Stated(),
	}
}

// Columns are the columns of the list.
func (r *Rates) Columns() []model.Column { return r.columns().Heads() }

// Rows are the editions, those in use first.
func (r *Rates) Rows() []model.Row {
	columns, all := r.columns(), sorted(r.session)
	out := make([]model.Row, len(all))
	for i, e := range all {
		out[i] = model.Row{Key: e.ID, State: r.today(e).State, Cells: columns.Cells(e)}
	}
	return out
}

// today returns the status of an edition today, or that its text was changed.
func (r *Rates) today(e *rates.Edition) model.Status {
	if r.rewritten[e.ID] {
		return model.Status{State: model.Warn, Text: r.session.Say("text changed")}
	}
	return statusOf(r.session, e).words(r.session, e)
}

// Empty returns what to do when there are no rates.
func (r *Rates) Empty() string {
	return r.session.Say("There are no rates, so nothing can be settled. Ctrl+P tells what is wrong with the files.")
}

// Headline describes the chosen edition and its origin. Invented ones are marked first of all.
func (r *Rates) Headline() model.Status {
	e := r.edition()
	if e == nil {
		return model.Status{}
	}
	text := session.Join(" ", r.session.Say(e.Title)+".", r.session.Say("In force %s.", periodOf(r.session, e)), r.session.Say("%s, issued %s.", e.Origin.By, r.session.Date(e.Origin.Issued)))
	if e.Corrects != "" {
		text = session.Join(" ", text, r.session.Say("Corrects %s.", e.Corrects))
	}
	if r.rewritten[e.ID] {
		return model.Status{State: model.Warn, Text: r.session.Say("Tickets were settled under another text of %s. They keep theirs; new ones follow this. Give a changed text a new id that corrects the old.", e.ID)}
	}
	if e.Status == rates.Example {
		return model.Status{State: model.Warn, Text: session.Join(" ", r.session.Say("EXAMPLE, not for trade."), text)}
	}
	return model.Status{State: model.OK, Text: session.Join(" ", text, e.Origin.Document)}
}

// Paper is the rows of the edition, or the problems of the files.
func (r *Rates) Paper() []model.CardLine {
	if r.shows == RatesProblems {
		return ownFiles(r.session)
	}
	e := r.edition()
	if e == nil {
		return nil
	}
	lines := []model.CardLine{{Kind: model.CardTitle, Left: e.ID}}
	section := ""
	for _, l := range e.Lines() {
		if under := r.session.Text(l.Section); under != section {
			section = under
			lines = append(lines, model.CardLine{Kind: model.CardHeading, Left: strings.ToUpper(section)})
		}
		lines = append(lines, ruleLine(r.session.Text(l.Label), r.session.Text(l.Value)))
	}
	return lines
}

// longValue is the length from which a value is below its label rather than beside it.
const longValue = 34

// ruleLine is one rule of an edition.
func ruleLine(label, value string) model.CardLine {
	if len([]rune(value)) > longValue {
		return model.CardLine{Kind: model.CardPair, Left: label, Note: value}
	}
	return model.CardLine{Kind: model.CardPair, Left: label, Right: value}
}
