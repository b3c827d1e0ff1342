package tickets

import (
	"strconv"
	"strings"

	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// row is one ticket of the list with its settlement as recorded.
type row struct {
	office.Found
	session *session.Session
	summary settle.Summary
	settled bool // there is a summary of the recorded settlement
	state   model.Status
}

func rowOf(f *session.Session, found office.Found) row {
	s, err := found.Recorded().Summary()
	return row{found, f, s, err == nil, ticketState(f.Language, found)}
}

func (r row) number() string {
	if r.Ticket == 0 {
		return session.NoFigure
	}
	return strconv.FormatInt(r.Ticket, 10)
}

// when is the day and the time a load was issued or turned away.
func (r row) when() (day, hour string) {
	at := r.IssuedAt
	if r.Ticket == 0 {
		at = r.EndedAt
	}
	day, hour, _ = strings.Cut(r.session.Desk.Local(at), " ")
	return day, hour
}

func (r row) day() string {
	day, _ := r.when()
	return r.session.ShortDay(day)
}

func (r row) hour() string {
	_, hour := r.when()
	return hour
}

func (r row) net() string {
	return session.FigureIn(r.summary.ScaleNet, r.settled, r.session.Desk.Profile().WeightUnit(), 0)
}

func (r row) moisture() string {
	if !r.settled || r.summary.Moisture == nil {
		return session.NoFigure
	}
	return session.FigureIn(*r.summary.Moisture, true, quantity.Percent, 1)
}

// bushels returns the dry quantity: bushels where they are used, else the quantity settled.
func (r row) bushels() string {
	a, counted := r.summary.DryQuantity()
	return session.FigureIn(a, r.settled && counted, quantity.Bushel, 2)
}

// payable returns the amount payable, or that the price comes later.
func (r row) payable() string {
	switch {
	case !r.settled || r.summary.Weighed:
		return session.NoFigure
	case r.summary.Priced():
		return r.summary.Payable.Fixed(2)
	}
	return r.session.Say("later")
}

// ticketState is the state of a ticket, in a word.
func ticketState(in session.Language, r office.Found) model.Status {
	switch load.Phase(r.Phase) {
	case load.Void:
		if r.ReissuedBy != 0 {
			return model.Status{State: model.Stop, Text: in.Say("void, see %d", r.ReissuedBy)}
		}
		return model.Status{State: model.Stop, Text: in.Say("void")}
	case load.Corrected:
		return model.Status{State: model.Locked, Text: in.Say("corrected")}
	case load.TurnedAway:
		return model.Status{State: model.Stop, Text: in.Say("refused")}
	}
	switch {
	case r.Corrects != 0:
		return model.Status{State: model.Wait, Text: in.Say("corrects %d", r.Corrects)}
	case r.Reissues != 0:
		return model.Status{State: model.Wait, Text: in.Say("reissues %d", r.Reissues)}
	case r.Manual != "":
		return model.Status{State: model.Warn, Text: in.Say("manual weight")}
	}
	return model.Status{State: model.OK, Text: in.Say("issued")}
}
