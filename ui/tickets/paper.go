package tickets

import (
	"context"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/office"
	"tenthpoint/internal/paper"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/worksheet"
	"tenthpoint/ui/model"

	"tenthpoint/internal/load"
	"tenthpoint/internal/settle"
	"tenthpoint/ui/session"
)

// PaperOf is what the paper at the right of the tickets shows.
type PaperOf int

// The papers of a ticket.
const (
	SlipPaper       PaperOf = iota
	WorkingPaper            // every figure with its sum, worked again
	DifferencePaper         // to the ticket whose place it took, or which took its
)

// ticketPaper is the paper of one load: it is made once for each that is
// looked at, from the facts and the edition kept in the book.
type ticketPaper struct {
	session *session.Session
	shows   PaperOf
	load    *load.Load
	worked  *settle.Settlement
	err     error
	lines   map[PaperOf][]model.CardLine
	pages   *paper.Layout // of the slip
}

// open looks at another load; no id looks at nothing.
func (p *ticketPaper) open(id string) {
	p.load, p.worked, p.err, p.pages = nil, nil, nil, nil
	p.lines = map[PaperOf][]model.CardLine{}
	if id == "" {
		return
	}
	ctx := context.Background()
	if p.load, p.err = office.Load(ctx, p.session.Desk, id); p.err != nil {
		p.load = nil
		return
	}
	if p.load.Settled != nil {
		p.worked, p.err = office.Resettle(ctx, p.session.Desk, p.load)
	}
}

// Shows is which paper is in front.
func (t *Tickets) Shows() PaperOf { return t.paper.shows }

// Turn brings a paper to the front, or the slip when it is there already.
func (t *Tickets) Turn(to PaperOf) {
	if t.paper.shows == to {
		to = SlipPaper
	}
	t.paper.shows = to
}

// Paper is the paper in front: the pages of the slip, or else a card, the working, the
// difference, or what went wrong.
func (t *Tickets) Paper() (*paper.Layout, []model.CardLine) {
	if pages := t.paper.slipPages(); pages != nil {
		return pages, nil
	}
	return nil, t.paper.card()
}

// slipPages are the pages of the slip while it is in front; nil while a card is.
func (p *ticketPaper) slipPages() *paper.Layout {
	if p.load == nil || p.err != nil || p.inFront() != SlipPaper {
		return nil
	}
	if p.pages == nil {
		slip, err := p.slip()
		if err != nil {
			p.err = err
			return nil
		}
		pages := session.SlipPages(slip)
		p.pages = &pages
	}
	return p.pages
}

// card is the working, the difference, or what went wrong.
func (p *ticketPaper) card() []model.CardLine {
	switch {
	case p.err != nil:
		return []model.CardLine{{Kind: model.CardMark, Left: session.Sentence(p.err)}}
	case p.load == nil:
		return nil
	}
	shows := p.inFront()
	if p.lines[shows] == nil {
		p.lines[shows] = p.make(shows)
	}
	return p.lines[shows]
}

// inFront is what shows: a ticket with no other to differ from shows its slip.
func (p *ticketPaper) inFront() PaperOf {
	if p.shows == DifferencePaper && p.other() == 0 {
		return SlipPaper
	}
	return p.shows
}

func (p *ticketPaper) make(shows PaperOf) []model.CardLine {
	switch shows {
	case WorkingPaper:
		return p.working()
	case DifferencePaper:
		return p.difference()
	}
	return nil
}

// slip is the ticket as its original printed. A load turned away has a slip of
// what was known of it.
func (p *ticketPaper) slip() (scaleticket.Document, error) {
	if p.worked == nil {
		return scaleticket.Compose(session.TicketOf(p.session, p.load, nil, 0, nil)), nil
	}
	t := session.TicketOf(p.session, p.load, p.worked, 0, nil)
	code, err := office.Code(context.Background(), p.session.Desk, p.load)
	if err != nil {
		return scaleticket.Document{}, err
	}
	t.Code = code
	return scaleticket.Compose(t), nil
}

// working is every line with its sum, worked again just now.
func (p *ticketPaper) working() []model.CardLine {
	lines := []model.CardLine{{Kind: model.CardTitle, Left: session.Say("Working of ticket %d", p.load.Number)}}
	if p.worked == nil {
		return append(lines, model.CardLine{Kind: model.CardText, Left: session.Say("This load was never settled, so there is nothing to work out.")})
	}
	agrees := model.CardLine{Kind: model.CardMiddle, Left: session.Say("Worked again just now. Every figure is the ticket's.")}
	if wrong := p.disagreement(); wrong != "" {
		agrees = model.CardLine{Kind: model.CardMark, Left: wrong}
	}
	return append(append(append(lines, agrees), session.WorkingLines(p.worked, p.load.Details.Disposition)...), session.GradeLines(p.session, p.load)...)
}

// disagreement says in a sentence where the ticket and its working part.
func (p *ticketPaper) disagreement() string {
	for id, ours := range p.load.Settled.Figures {
		step, ok := p.worked.Sheet.Step(id)
		if !ok {
			return session.Say("The ticket has a line %q that the working has not. Verify the book under Gear.", id)
		}
		if !step.Value().Equal(ours) {
			return session.Say("%s is %s on the ticket and %s worked again. Verify the book under Gear.", step.Label(), ours, step.Value())
		}
	}
	return ""
}

// other is the number of the ticket this one is compared with.
func (p *ticketPaper) other() int64 {
	switch {
	case p.load == nil:
		return 0
	case p.load.InPlaceOf() != 0:
		return p.load.InPlaceOf()
	}
	return p.load.Successor()
}

// HasDifference reports whether the chosen ticket took another's place, or
// another its.
func (t *Tickets) HasDifference() bool { return t.paper.other() != 0 }

// difference sets the wrong ticket and the right one side by side, line by
// line where they part.
func (p *ticketPaper) difference() []model.CardLine {
	ctx := context.Background()
	other, err := office.Ticket(ctx, p.session.Desk, p.other())
	if err != nil {
		return []model.CardLine{{Kind: model.CardMark, Left: session.Sentence(err)}}
	}
	otherWorked, err := office.Resettle(ctx, p.session.Desk, other)
	if err != nil {
		return []model.CardLine{{Kind: model.CardMark, Left: session.Sentence(err)}}
	}
	old, now, oldWorked, nowWorked := other, p.load, otherWorked, p.worked
	if p.load.InPlaceOf() == 0 {
		old, now, oldWorked, nowWorked = p.load, other, p.worked, otherWorked
	}
	lines := []model.CardLine{
		{Kind: model.CardTitle, Left: differenceTitle(now)},
		{Kind: model.CardMiddle, Left: session.Say("ticket %d → ticket %d", old.Number, now.Number)},
		{Kind: model.CardMiddle, Left: now.Why},
		{Kind: model.CardRule},
	}
	facts := changedFacts(old, now)
	figures := changedFigures(settle.Compare(oldWorked, nowWorked))
	if len(facts)+len(figures) == 0 {
		return append(lines, model.CardLine{Kind: model.CardText, Left: session.Say("The two tickets say the same.")})
	}
	return append(append(lines, facts...), figures...)
}

func differenceTitle(now *load.Load) string {
	if now.Reissues != 0 {
		return session.Say("What is not as on the void ticket")
	}
	return session.Say("What the correction changed")
}

// changedFacts are what was written down otherwise.
func changedFacts(old, now *load.Load) []model.CardLine {
	var lines []model.CardLine
	fact := func(name, before, after string) {
		if before != after {
			lines = append(lines, model.CardLine{Kind: model.CardPair, Left: name, Right: session.OrElse(after, session.Say("none")), Note: session.Say("before: %s", session.OrElse(before, session.Say("none")))})
		}
	}
	fact(session.Say("Grower"), old.Details.Grower.Name, now.Details.Grower.Name)
	fact(session.Say("Shares"), session.SharesText(old), session.SharesText(now))
	fact(session.Say("Commodity"), session.GrainName(old.Details.Commodity), session.GrainName(now.Details.Commodity))
	fact(session.Say("Truck"), session.TruckText(old.Details.Truck), session.TruckText(now.Details.Truck))
	fact(session.Say("Pit or bin"), old.Details.Bin, now.Details.Bin)
	fact(session.Say("Sold or stored"), entry.TermsText(old), entry.TermsText(now))
	return lines
}

// changedFigures are the lines of the settlement that parted, with what they
// were and what they are.
func changedFigures(c *settle.Comparison) []model.CardLine {
	var lines []model.CardLine
	for _, l := range c.Changed() {
		line := model.CardLine{Kind: model.CardPair, Left: session.Say(l.Label), Right: session.Signed(l.Change)}
		if l.ID == settle.LineQuantity || l.ID == settle.LinePayable || l.ID == settle.LineNet {
			line.Kind = model.CardTotal
		}
		line.Note = session.Say("%s → %s", printedOr(l.Before), printedOr(l.After))
		lines = append(lines, line)
	}
	return lines
}

func printedOr(step *worksheet.Step) string {
	if step == nil {
		return session.Say("none")
	}
	return step.Printed()
}
