package tickets

import (
	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Headline describes what happened to the chosen ticket.
func (t *Ticket) Headline() model.Status {
	l := t.load
	if l == nil {
		return model.Status{}
	}
	local := t.session.Desk.Local
	switch l.Phase {
	case load.Void:
		if l.Reissue.By != 0 {
			return model.Status{State: model.Stop, Text: t.session.Say("Void, reissued as ticket %d: %s", l.Reissue.By, l.Ended.Reason)}
		}
		return model.Status{State: model.Stop, Text: t.session.Say("Void since %s, by %s: %s", local(l.Ended.At), l.Ended.Who, l.Ended.Reason)}
	case load.Corrected:
		return model.Status{State: model.Locked, Text: t.session.Say("Corrected by ticket %d on %s: %s", l.Ended.By, local(l.Ended.At), l.Ended.Reason)}
	case load.TurnedAway:
		return model.Status{State: model.Stop, Text: t.session.Say("Rejected %s by %s: %s", local(l.Ended.At), l.Ended.Who, l.Ended.Reason)}
	}
	text := t.session.Say("Issued %s by %s, %s.", local(l.Issued.At), l.Weigher, copiesText(t.session.Language, l.Copies))
	if place := session.InPlaceText(t.session.Language, l); place != "" {
		return model.Status{State: model.Wait, Text: place + " · " + text}
	}
	return model.Status{State: model.OK, Text: text}
}

func copiesText(in session.Language, copies int64) string {
	switch copies {
	case 0:
		return in.Say("not printed yet")
	case 1:
		return in.Say("printed once")
	}
	return in.Say("printed %d times", copies)
}

// IsOpen reports whether there is one.
func (t *Ticket) IsOpen() bool { return t.load != nil }

// CanReprint reports whether there is a ticket to print.
func (t *Ticket) CanReprint() bool { return t.load != nil && t.load.Number != 0 }

// CanChange reports whether the chosen ticket may be corrected or voided.
func (t *Ticket) CanChange() bool {
	return t.load != nil && t.load.Phase == load.Ticketed
}

// WhyNotChange returns why the chosen ticket may not be changed.
func (t *Ticket) WhyNotChange() string {
	l := t.load
	switch {
	case l == nil:
		return t.session.Say("No ticket is open.")
	case l.Reissue.By != 0:
		return alreadyReissued(t.session.Language, l)
	case l.Phase == load.Void:
		return t.session.Say("Ticket %d is void already.", l.Number)
	case l.Phase == load.Corrected:
		return t.session.Say("Ticket %d was corrected by ticket %d. Go on with that one.", l.Number, l.Ended.By)
	}
	return t.session.Say("This load has no ticket.")
}

// CanReissue reports whether the chosen ticket is void and its grain has no other
// ticket yet.
func (t *Ticket) CanReissue() bool {
	l := t.load
	return l != nil && l.Phase == load.Void && l.Reissue.By == 0
}

// WhyNotReissue returns why the chosen ticket may not be reissued.
func (t *Ticket) WhyNotReissue() string {
	l := t.load
	switch {
	case l != nil && l.Reissue.By != 0:
		return alreadyReissued(t.session.Language, l)
	case t.CanChange():
		return t.session.Say("Ticket %d is in force. Only a void ticket is reissued.", l.Number)
	}
	return t.WhyNotChange()
}

func alreadyReissued(in session.Language, l *load.Load) string {
	return in.Say("Ticket %d is void and was reissued as ticket %d. Go on with that one.", l.Number, l.Reissue.By)
}
