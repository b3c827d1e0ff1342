package terminal

import (
	"fmt"

	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/title"
)

// Standing returns the status of a ticket in a line.
func Standing(l *load.Load) message.Text {
	switch l.Phase {
	case load.Void:
		if l.Reissue.By > 0 {
			return message.New("Ticket %d is void: %v. Ticket %d was issued in its place.", l.Number, l.Ended.Reason, l.Reissue.By)
		}
		return message.New("Ticket %d is void: %v.", l.Number, l.Ended.Reason)
	case load.Corrected:
		return message.New("Ticket %d was corrected by ticket %d: %v.", l.Number, l.Ended.By, l.Ended.Reason)
	case load.Ticketed:
		if l.Corrects > 0 {
			return message.New("Ticket %d is in force; it corrects ticket %d: %v.", l.Number, l.Corrects, l.Why)
		}
		if l.Reissues > 0 {
			return message.New("Ticket %d is in force; it was issued in place of ticket %d, void: %v.", l.Number, l.Reissues, l.Why)
		}
		return message.New("Ticket %d is in force.", l.Number)
	}
	return message.New("Load %v is %s.", l.ID, string(l.Phase))
}

// Ticket is a ticket for programs.
type Ticket struct {
	Ticket  string `json:"ticket"`
	Load    string `json:"load"`
	Status  string `json:"status"`
	Copy    string `json:"copy,omitempty"`
	Code    string `json:"code"`
	Edition string `json:"edition,omitempty"`
	// The tickets before and after it, where one takes the place of another.
	Corrects    string `json:"corrects,omitempty"`
	CorrectedBy string `json:"corrected_by,omitempty"`
	Reissues    string `json:"reissues,omitempty"`
	ReissuedAs  string `json:"reissued_as,omitempty"`
	// Titles are whose grain it is and under what, owner by owner.
	Titles  []Title           `json:"titles"`
	Figures map[string]string `json:"figures"`
	Files   []string          `json:"files,omitempty"`
}

// Title is whose an owner's part is, for programs.
type Title struct {
	Owner  string `json:"owner"`
	Share  string `json:"share,omitempty"`
	Whose  string `json:"whose"`
	Under  string `json:"under"`
	Number string `json:"number,omitempty"`
	Price  string `json:"price,omitempty"`
	// PostedPrice is the posted price that the price was typed at.
	PostedPrice string `json:"posted_price,omitempty"`
}

// TitlesJSON are the titles of a load, owner by owner.
func TitlesJSON(l *load.Load) []Title {
	d := l.Details
	out := make([]Title, 0, max(1, len(d.Shares)))
	for i, deal := range d.Deals() {
		one := Title{Owner: d.Grower.Name, Whose: string(deal.Owner()), Under: string(deal.Under), Number: deal.No}
		if deal.Under == title.Nothing {
			one.Under = string(title.Undecided)
		}
		if len(d.Shares) > 0 {
			one.Owner, one.Share = d.Shares[i].Name, d.Shares[i].Parts.Figure()+"/"+d.Shares[i].Of.Figure()
		}
		if deal.Price != nil {
			one.Price = deal.Price.Written()
		}
		if deal.Posted != nil {
			one.PostedPrice = deal.Posted.Price.Written()
		}
		out = append(out, one)
	}
	return out
}

// TicketJSON is a ticket settled again, for programs.
func (p *Session) TicketJSON(l *load.Load) (Ticket, error) {
	s, err := office.Resettle(p, p.Desk, l)
	if err != nil {
		return Ticket{}, err
	}
	code, err := office.Code(p, p.Desk, l)
	return Ticket{
		Ticket: fmt.Sprint(l.Number), Load: l.ID, Status: string(l.Phase), Code: code,
		Edition: l.Settled.Edition, Figures: SettlementJSON(s).Figures, Titles: TitlesJSON(l),
		Corrects: numberOrNone(l.Corrects), CorrectedBy: numberOrNone(l.Ended.By), Reissues: numberOrNone(l.Reissues), ReissuedAs: numberOrNone(l.Reissue.By),
	}, err
}

// numberOrNone is a ticket's number as text; nothing where there is no ticket.
func numberOrNone(n int64) string {
	if n == 0 {
		return ""
	}
	return fmt.Sprint(n)
}

// AnswerFlags say how much of a new ticket is shown.
type AnswerFlags struct {
	Show bool `help:"Show the whole slip with its working; without it, one line." group:"paper"`
	JSON bool `help:"Print for programs: every figure as text."`
}

// HandOut prints a copy of a ticket: its files, and its line, its text or its JSON.
// That it was printed is written down last: where the folder cannot be written or the
// program ends before, the next paper is the original still.
func (p *Session) HandOut(l *load.Load, f PaperFlags, how AnswerFlags) error {
	if err := p.handOut(l, l.Copies, f, how); err != nil {
		return err
	}
	_, err := scalehouse.RecordPrint(p, p.Desk, l.Number)
	return err
}

func (p *Session) handOut(l *load.Load, copyNo int64, f PaperFlags, how AnswerFlags) error {
	files, text, err := p.Paper(f, l, copyNo)
	if err != nil {
		return err
	}
	switch {
	case how.JSON:
		out, err := p.TicketJSON(l)
		if err != nil {
			return err
		}
		out.Copy, out.Files = fmt.Sprint(copyNo), files
		return p.PrintJSON(out)
	case how.Show:
		fmt.Fprint(p.Stdout, text)
	default:
		if err := p.sayResult(l); err != nil {
			return err
		}
	}
	for _, file := range files {
		p.Say("Written: %s", file)
	}
	return nil
}

// sayResult is a ticket in a line.
func (p *Session) sayResult(l *load.Load) error {
	s, err := office.Resettle(p, p.Desk, l)
	if err != nil {
		return err
	}
	if s.Edition == nil {
		p.Say("Ticket %d: net %s.", l.Number, s.Net.Printed())
		return nil
	}
	payable := s.Payable.Printed()
	if settle.AwaitsPrice(s.Payable) {
		payable = p.Printer.Text(l.Details.Under.Unpriced())
	}
	p.Say("Ticket %d: net %s, settled %s, payable %s.", l.Number, s.Net.Printed(), s.Quantity.Printed(), payable)
	return nil
}
