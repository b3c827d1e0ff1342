package yard

import (
	"slices"

	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// lastTicket is the ticket just issued: the clerk reads it out to the driver. It stays where its
// figures stood until the next truck is weighed.
type lastTicket struct {
	figures []model.Figure
	words   string
}

// lastTicketOf collects it from a form whose load is about to leave.
func lastTicketOf(f *LoadForm) lastTicket {
	figures := slices.Clone(f.Preview().Figures)
	for i := range figures {
		figures[i].State = model.Locked
	}
	return lastTicket{figures, session.TruckText(f.Now.Load.Details.Truck)}
}

// as names the number the ticket was issued under.
func (l lastTicket) as(in session.Language, number int64) *lastTicket {
	l.words = in.Say("Ticket %d, truck %s. Ctrl+Shift+P prints it again.", number, l.words)
	return &l
}

// show puts the last ticket in the place of the figures of a truck that is not weighed yet.
func (l *lastTicket) show(p *Preview) {
	if l == nil || len(p.now.Load.Weighings) > 0 {
		return
	}
	p.Figures = l.figures
	if p.Margin.Text == "" {
		p.Margin = model.Remark{State: model.Locked, Text: l.words}
	}
}
