package yard

import (
	"time"

	"tenthpoint/internal/journal"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/ask"
)

// lastTicket is the ticket just issued: the clerk reads it out to the driver. It stays where its
// figures stood until the next truck is weighed.
type lastTicket struct {
	number  int64
	truck   string
	figures []model.Figure
	issued  string // when, as the book writes times
}

// lastTicketOf collects it from a form whose load is about to leave.
func lastTicketOf(f *LoadForm) *lastTicket {
	figures := Preview{session: f.session, now: f.Now}.figures()
	for i := range figures {
		figures[i].State = model.Locked
	}
	return &lastTicket{figures: figures, truck: session.TruckText(f.Now.Load.Details.Truck)}
}

// show puts the last ticket in the place of the figures of a truck that is not weighed yet.
func (l *lastTicket) show(p *Preview) {
	if l == nil || len(p.now.Load.Weighings) > 0 {
		return
	}
	p.Figures = l.figures
	if p.Margin.Text != "" {
		return
	}
	said := p.session.Say("Ticket %d, truck %s. Ctrl+Shift+P prints it again.", l.number, l.truck)
	if l.isFresh(p.session.Desk.Now()) {
		said = p.session.Say("Ticket %d, truck %s. Ctrl+Shift+P prints it again, Ctrl+Shift+V voids it.", l.number, l.truck)
	}
	p.Margin = model.Status{State: model.Locked, Text: said}
}

// regret is the time in which a ticket that was issued by mistake is voided by one key. The truck still
// stands at the window then.
const regret = time.Minute

// isFresh reports whether the ticket was issued just now.
func (l *lastTicket) isFresh(now string) bool {
	if l == nil {
		return false
	}
	from, err1 := time.Parse(journal.TimeLayout, l.issued)
	to, err2 := time.Parse(journal.TimeLayout, now)
	return err1 == nil && err2 == nil && !to.Before(from) && to.Sub(from) <= regret
}

// CanVoidLast reports whether the last ticket may be voided from here: it was issued at this desk
// within the minute.
func (y *Yard) CanVoidLast() bool { return y.last.isFresh(y.session.Desk.Now()) }

// VoidLast asks why the ticket just issued is void, and voids it.
func (y *Yard) VoidLast() {
	if !y.CanVoidLast() {
		return
	}
	ask.Void(y.session, y.last.number, func() {
		if y.blank.last == y.last {
			y.blank.last = nil
		}
		y.last = nil
		y.session.Window.Redraw()
	})
}
