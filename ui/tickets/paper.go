package tickets

import (
	"context"
	"tenthpoint/ui/model"

	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/paper"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/settle"
	"tenthpoint/ui/session"
)

// PaperOf is the paper shown at the right of the tickets.
type PaperOf int

// The papers of a ticket.
const (
	SlipPaper       PaperOf = iota
	WorkingPaper            // every figure with its sum, recalculated
	DifferencePaper         // to the ticket it replaced, or that replaced it
)

// Ticket is the chosen one: its facts, settled again once, and its papers, each made on first use.
type Ticket struct {
	session *session.Session
	shows   PaperOf
	load    *load.Load
	worked  *settle.Settlement
	err     error
	lines   map[PaperOf][]model.CardLine
	pages   *paper.Layout // of the slip
}

// open looks at another load; no id looks at nothing.
func (t *Ticket) open(id string) {
	t.load, t.worked, t.err, t.pages = nil, nil, nil, nil
	t.lines = map[PaperOf][]model.CardLine{}
	if id == "" {
		return
	}
	ctx := context.Background()
	if t.load, t.err = office.Load(ctx, t.session.Desk, id); t.err != nil {
		t.load = nil
		return
	}
	if t.load.Settled != nil {
		t.worked, t.err = office.Resettle(ctx, t.session.Desk, t.load)
	}
}

// Shows is the paper in front.
func (t *Ticket) Shows() PaperOf { return t.shows }

// Turn brings a paper to the front, or the slip when it is there already.
func (t *Ticket) Turn(to PaperOf) {
	if t.shows == to {
		to = SlipPaper
	}
	t.shows = to
}

// Pages returns the pages of the slip while it is in front; nil while a card is.
func (t *Ticket) Pages() *paper.Layout {
	if t.load == nil || t.err != nil || t.inFront() != SlipPaper {
		return nil
	}
	if t.pages == nil {
		slip, err := t.slip()
		if err != nil {
			t.err = err
			return nil
		}
		pages := session.SlipPages(slip)
		t.pages = &pages
	}
	return t.pages
}

// inFront returns the paper in front: a ticket with no other to differ from shows its slip.
func (t *Ticket) inFront() PaperOf {
	if t.shows == DifferencePaper && t.other() == 0 {
		return SlipPaper
	}
	return t.shows
}

// Card is the card in front: the working, the difference, or what went wrong.
func (t *Ticket) Card() []model.CardLine {
	switch {
	case t.err != nil:
		return []model.CardLine{{Kind: model.CardMark, Left: t.session.Sentence(t.err)}}
	case t.load == nil:
		return nil
	}
	shows := t.inFront()
	if t.lines[shows] == nil {
		t.lines[shows] = t.make(shows)
	}
	return t.lines[shows]
}

func (t *Ticket) make(shows PaperOf) []model.CardLine {
	switch shows {
	case WorkingPaper:
		return t.working()
	case DifferencePaper:
		return t.difference()
	}
	return nil
}

// slip returns the slip as printed originally. A load turned away has a slip with what was known of
// it.
func (t *Ticket) slip() (scaleticket.Document, error) {
	if t.worked == nil {
		return scaleticket.Compose(session.TicketOf(t.session, t.load, nil, 0, nil)), nil
	}
	slip := session.TicketOf(t.session, t.load, t.worked, 0, nil)
	code, err := office.Code(context.Background(), t.session.Desk, t.load)
	if err != nil {
		return scaleticket.Document{}, err
	}
	slip.Code = code
	return scaleticket.Compose(slip), nil
}

// working lists every line with its calculation, recalculated now.
func (t *Ticket) working() []model.CardLine {
	lines := []model.CardLine{{Kind: model.CardTitle, Left: t.session.Say("Working of ticket %d", t.load.Number)}}
	if t.worked == nil {
		return append(lines, model.CardLine{Kind: model.CardText, Left: t.session.Say("This load was never settled, so there is nothing to work out.")})
	}
	agrees := model.CardLine{Kind: model.CardMiddle, Left: t.session.Say("Worked again just now. Every figure is the ticket's.")}
	if wrong := t.disagreement(); wrong != "" {
		agrees = model.CardLine{Kind: model.CardMark, Left: wrong}
	}
	return append(append(append(lines, agrees), session.WorkingLines(t.session.Language, t.worked, t.load.Details.Under)...), session.GradeLines(t.session, t.load)...)
}

// disagreement describes how the ticket and its recalculation differ.
func (t *Ticket) disagreement() string {
	for id, ours := range t.load.Settled.Figures {
		step, ok := t.worked.Sheet.Step(id)
		if !ok {
			return t.session.Say("The ticket has a line %q that the working has not. Verify the book under Equipment.", id)
		}
		if !step.Value().Equal(ours) {
			return t.session.Say("%s is %s on the ticket and %s worked again. Verify the book under Equipment.", step.Label(), ours, step.Value())
		}
	}
	return ""
}

// other is the number of the ticket this one is compared with.
func (t *Ticket) other() int64 {
	switch {
	case t.load == nil:
		return 0
	case t.load.InPlaceOf() != 0:
		return t.load.InPlaceOf()
	}
	return t.load.Successor()
}

// HasDifference reports whether the chosen ticket took another's place, or
// another its.
func (t *Ticket) HasDifference() bool { return t.other() != 0 }

// difference sets the wrong ticket and the right one side by side, line by
// line where they part.
func (t *Ticket) difference() []model.CardLine {
	ctx := context.Background()
	other, err := office.Ticket(ctx, t.session.Desk, t.other())
	if err != nil {
		return []model.CardLine{{Kind: model.CardMark, Left: t.session.Sentence(err)}}
	}
	otherWorked, err := office.Resettle(ctx, t.session.Desk, other)
	if err != nil {
		return []model.CardLine{{Kind: model.CardMark, Left: t.session.Sentence(err)}}
	}
	old, now, oldWorked, nowWorked := other, t.load, otherWorked, t.worked
	if t.load.InPlaceOf() == 0 {
		old, now, oldWorked, nowWorked = t.load, other, t.worked, otherWorked
	}
	lines := []model.CardLine{
		{Kind: model.CardTitle, Left: differenceTitle(t.session.Language, now)},
		{Kind: model.CardMiddle, Left: t.session.Say("ticket %d → ticket %d", old.Number, now.Number)},
		{Kind: model.CardMiddle, Left: now.Why},
		{Kind: model.CardRule},
	}
	facts := session.ChangedFacts(t.session.Language, old, now)
	figures := session.ChangedFigures(t.session.Language, settle.Compare(oldWorked, nowWorked))
	if len(facts)+len(figures) == 0 {
		return append(lines, model.CardLine{Kind: model.CardText, Left: t.session.Say("The two tickets say the same.")})
	}
	return append(append(lines, facts...), figures...)
}

func differenceTitle(in session.Language, now *load.Load) string {
	if now.Reissues != 0 {
		return in.Say("What is not as on the void ticket")
	}
	return in.Say("What the correction changed")
}
