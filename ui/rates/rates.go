package rates

import (
	"cmp"
	"context"
	"slices"
	"strings"

	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// RatesView is what is shown of the chosen edition.
type RatesView int

// The views of an edition.
const (
	RatesRows     RatesView = iota // everything it says
	RatesTry                       // one load, wetter and wetter
	RatesCompare                   // beside another, and the bare water formula
	RatesProblems                  // what is wrong in the elevator's own files
)

// Rates is the list of the editions the desk knows, with what the chosen one
// says and does.
type Rates struct {
	session *session.Session
	shows   RatesView
	chosen  string // edition id
	other   string // the one it is compared with
	tries   map[string]tryLoad

	rewritten map[string]bool // editions whose text was changed under their id

	trial    *trialTable
	compared *comparedTable
}

// NewRates makes the list. The first edition in hand is the first in force.
func NewRates(f *session.Session) *Rates {
	r := &Rates{session: f, tries: map[string]tryLoad{}}
	if len(f.RatesWrong) > 0 {
		r.shows = RatesProblems
	}
	return r
}

// Shows is what is shown now.
func (r *Rates) Shows() RatesView { return r.shows }

// Turn shows something else of the edition.
func (r *Rates) Turn(to RatesView) { r.shows = to }

// Reload takes the editions anew and forgets the loads that were tried.
func (r *Rates) Reload() {
	r.tries = map[string]tryLoad{}
	r.forget()
	var err error
	if r.rewritten, err = office.RewrittenEditions(context.Background(), r.session.Desk); err != nil {
		r.session.Fail(err)
	}
	if r.edition() == nil {
		r.chosen = ""
		if all := r.sorted(); len(all) > 0 {
			r.chosen = all[0].ID
		}
	}
}

// forget drops what was worked out.
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

// HasEdition reports whether an edition is in hand.
func (r *Rates) HasEdition() bool { return r.edition() != nil }

func (r *Rates) edition() *rates.Edition {
	e, _ := r.session.Desk.Rates().ByID(r.chosen)
	return e
}

// standing says whether an edition counts today, the ones that do first.
type editionStanding int

const (
	usedToday editionStanding = iota
	inForce
	yetToCome
	overtaken
	past
)

func (r *Rates) standing(e *rates.Edition) editionStanding {
	today := r.session.Desk.Today()
	now, err := r.session.Desk.Rates().On(e.Schedule, e.Commodity.ID, today)
	schedule, taken := r.session.Desk.Profile().Schedule(e.Commodity.ID)
	switch {
	case err == nil && now.ID == e.ID && taken && schedule == e.Schedule:
		return usedToday
	case err == nil && now.ID == e.ID:
		return inForce
	case today.Between(e.From, e.Until):
		return overtaken
	case today.Before(e.From):
		return yetToCome
	}
	return past
}

// sorted are the editions: those in use first, each sort by grain.
func (r *Rates) sorted() []*rates.Edition {
	all := slices.Clone(r.session.Desk.Rates().All())
	slices.SortStableFunc(all, func(a, b *rates.Edition) int {
		return cmp.Or(cmp.Compare(r.standing(a), r.standing(b)), cmp.Compare(session.GrainName(a.Commodity.ID), session.GrainName(b.Commodity.ID)),
			cmp.Compare(a.Schedule, b.Schedule), b.From.Cmp(a.From))
	})
	return all
}

// Rows are the editions: grain, id, status, and whether it counts today.
func (r *Rates) Rows() []model.Row {
	all := r.sorted()
	out := make([]model.Row, len(all))
	for i, e := range all {
		stands := r.standingWords(e)
		out[i] = model.Row{Key: e.ID, State: stands.State, Cells: []string{session.GrainName(e.Commodity.ID), e.ID, statusWord(e.Status), stands.Text}}
	}
	return out
}

func (r *Rates) standingWords(e *rates.Edition) model.Remark {
	if r.rewritten[e.ID] {
		return model.Remark{State: model.Warn, Text: session.Say("text changed")}
	}
	switch r.standing(e) {
	case usedToday:
		return model.Remark{State: model.OK, Text: session.Say("used here")}
	case inForce:
		return model.Remark{State: model.Plain, Text: session.Say("in force")}
	case yetToCome:
		return model.Remark{State: model.Wait, Text: session.Say("from %s", r.session.Date(e.From))}
	case overtaken:
		return model.Remark{State: model.Locked, Text: session.Say("corrected")}
	}
	return model.Remark{State: model.Locked, Text: session.Say("over")}
}

// statusWord is the mark of an edition in the list.
func statusWord(s rates.Status) string {
	switch s {
	case rates.Example:
		return session.Say("EXAMPLE")
	case rates.House:
		return session.Say("house")
	}
	return session.Say("statute")
}

// Empty is what to do when there are no rates.
func (r *Rates) Empty() string {
	return session.Say("There are no rates, so nothing can be settled. Ctrl+P tells what is wrong with the files.")
}

// Headline says what the chosen edition is and where it comes from. Invented
// ones are marked before anything else.
func (r *Rates) Headline() model.Remark {
	e := r.edition()
	if e == nil {
		return model.Remark{}
	}
	text := session.Join(" ", session.Say(e.Title)+".", session.Say("In force %s.", periodOf(r.session, e)), session.Say("%s, issued %s.", e.Origin.By, r.session.Date(e.Origin.Issued)))
	if e.Corrects != "" {
		text = session.Join(" ", text, session.Say("Corrects %s.", e.Corrects))
	}
	if r.rewritten[e.ID] {
		return model.Remark{State: model.Warn, Text: session.Say("Tickets were settled under another text of %s. They keep theirs; new ones follow this. Give a changed text a new id that corrects the old.", e.ID)}
	}
	if e.Status == rates.Example {
		return model.Remark{State: model.Warn, Text: session.Join(" ", session.Say("EXAMPLE, not for trade."), text)}
	}
	return model.Remark{State: model.OK, Text: session.Join(" ", text, e.Origin.Document)}
}

// periodOf is the days an edition is in force, as the desk writes days.
func periodOf(f *session.Session, e *rates.Edition) string {
	if e.Until == (quantity.Date{}) {
		return session.Say("from %s", f.Date(e.From))
	}
	return session.Say("%s to %s", f.Date(e.From), f.Date(e.Until))
}

// Paper is the rows of the edition, or the problems of the files.
func (r *Rates) Paper() []scaleticket.PaperLine {
	if r.shows == RatesProblems {
		return r.problems()
	}
	e := r.edition()
	if e == nil {
		return nil
	}
	lines := []scaleticket.PaperLine{{Kind: scaleticket.PaperTitle, Left: e.ID}}
	section := ""
	for _, l := range e.Lines() {
		if l.Section != section {
			section = l.Section
			lines = append(lines, scaleticket.PaperLine{Kind: scaleticket.PaperHeading, Left: strings.ToUpper(session.Say(section))})
		}
		lines = append(lines, ruleLine(session.Say(l.Label), session.Say(l.Value)))
	}
	return lines
}

// longValue is from how many letters a value stands under its label rather
// than beside it.
const longValue = 34

// ruleLine is one thing an edition says.
func ruleLine(label, value string) scaleticket.PaperLine {
	if len([]rune(value)) > longValue {
		return scaleticket.PaperLine{Kind: scaleticket.PaperPair, Left: label, Note: value}
	}
	return scaleticket.PaperLine{Kind: scaleticket.PaperPair, Left: label, Right: value}
}
