package load

import (
	"slices"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// allowed lists the phases in which each kind of fact may be written.
var allowed = map[string][]Phase{
	Opened{}.Kind():     {NotOpened},
	Amended{}.Kind():    {OnYard, Ready},
	Weighed{}.Kind():    {OnYard, Ready},
	Sampled{}.Kind():    {OnYard, Ready},
	Accepted{}.Kind():   {OnYard, Ready},
	Answered{}.Kind():   {OnYard, Ready},
	Refused{}.Kind():    {OnYard, Ready},
	Withdrawn{}.Kind():  {OnYard},
	Settled{}.Kind():    {OnYard, Ready},
	Issued{}.Kind():     {Ready},
	Printed{}.Kind():    {Ticketed, Void, Corrected},
	Voided{}.Kind():     {Ticketed},
	Superseded{}.Kind(): {Ticketed},
	Reissued{}.Kind():   {Void},
}

// Allow returns the reason why a fact cannot be written now, or nil. It looks at the load's phase
// and at the fact itself.
func (l *Load) Allow(f Fact) error {
	if !slices.Contains(allowed[f.Kind()], l.phase()) {
		return message.WrongPhase.Errorf("%s; %s", l.phaseSentence(), l.instead(f))
	}
	switch f := f.(type) {
	case Opened:
		return firstWrong(f.check(), f.Details.check())
	case Amended:
		return f.Details.check()
	case Weighed:
		return firstWrong(l.mayCarry(f.Carried), f.Weighing.check())
	case Sampled:
		return firstWrong(l.mayCarry(f.Carried), f.Sample.check())
	case Accepted:
		return firstWrong(l.mayCarry(f.Carried), f.check())
	case Answered:
		return firstWrong(l.mayCarry(f.Carried), f.check())
	case Refused:
		return needsReason(f.Reason, "a load is refused")
	case Withdrawn:
		return l.mayWithdraw()
	case Voided:
		return needsReason(f.Reason, "a ticket is voided")
	case Superseded:
		return needsReason(f.Reason, "a ticket is corrected")
	case Issued:
		return f.check()
	case Reissued:
		return l.mayReissue()
	case Settled:
		if l.Missing() != nil {
			return message.WrongPhase.Errorf("load %s cannot be settled: %s", l.ID, l.Missing()[0].Sentence)
		}
	}
	return nil
}

func (l *Load) phase() Phase {
	if l.Phase == "" {
		return NotOpened
	}
	return l.Phase
}

// phaseSentence describes the phase of the load.
func (l *Load) phaseSentence() message.Text {
	switch l.phase() {
	case NotOpened:
		return message.New("The load has not been opened")
	case OnYard:
		return message.New("Load %v is on the yard and not settled", l.ID)
	case TurnedAway:
		return message.New("Load %v was refused (%v)", l.ID, l.Ended.Reason)
	case TakenBack:
		return message.New("Load %v was withdrawn", l.ID)
	case Ready:
		return message.New("Load %v is settled, its ticket is not issued", l.ID)
	case Ticketed:
		return message.New("Ticket %d is issued", l.Number)
	case Void:
		if l.Reissue.By > 0 {
			return message.New("Ticket %d is void and was reissued as ticket %d", l.Number, l.Reissue.By)
		}
		return message.New("Ticket %d is void (%v)", l.Number, l.Ended.Reason)
	}
	return message.New("Ticket %d was corrected by ticket %d", l.Number, l.Ended.By)
}

// instead advises what to do in place of a refused fact.
func (l *Load) instead(f Fact) message.Text {
	switch {
	case l.phase() == NotOpened:
		return message.New("open it first")
	case f.Kind() == Opened{}.Kind():
		return message.New("open a new load for another truck")
	case l.phase() == Ticketed && f.Kind() == Issued{}.Kind():
		return message.New("print it again as a reprint")
	case l.phase() == Ticketed && f.Kind() == Reissued{}.Kind():
		return message.New("void it first, or correct it")
	case l.phase() == Ticketed:
		return message.New("correct the ticket, or void it and weigh again")
	case l.phase() == OnYard && f.Kind() == Issued{}.Kind():
		return message.New("settle it first")
	case l.phase() == OnYard || l.phase() == Ready:
		return message.New("issue the ticket first")
	case l.Successor() > 0:
		return message.New("go on with ticket %d", l.Successor())
	case l.phase() == Void:
		return message.New("reissue it, or open a new load")
	}
	return message.New("open a new load")
}

// mayCarry lets only a load that corrects or reissues a ticket take facts over
// from it.
func (l *Load) mayCarry(carried *Stamp) error {
	if carried == nil || l.InPlaceOf() > 0 {
		return nil
	}
	return message.WrongPhase.Errorf("load %s corrects no ticket and has nothing to carry over; weigh and test this load itself", l.ID)
}

// mayReissue allows one replacement of a void ticket. Should that one turn out wrong it is itself
// corrected, or voided and reissued.
func (l *Load) mayReissue() error {
	if l.Reissue.By == 0 {
		return nil
	}
	return message.WrongPhase.Errorf("%s; %s", l.phaseSentence(), l.instead(Reissued{}))
}

// mayWithdraw lets only a load be taken back that no scale has seen.
func (l *Load) mayWithdraw() error {
	if !l.CanWithdraw() {
		return message.WrongPhase.Errorf("load %s was weighed and is not withdrawn; refuse it, with the reason", l.ID)
	}
	return nil
}

func firstWrong(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

func (a Accepted) check() error {
	if strings.TrimSpace(a.Limit) == "" {
		return message.WrongPhase.Errorf("no limit is named that is to be accepted; name the one the load was stopped by")
	}
	return needsReason(a.Reason, "a limit is accepted")
}

func (a Answered) check() error {
	if strings.TrimSpace(a.Guard) == "" {
		return message.WrongPhase.Errorf("an answer names the question it answers; name the guard that asked")
	}
	return needsReason(a.Reason, "a question about a load is answered")
}

func needsReason(reason, act string) error {
	if strings.TrimSpace(reason) == "" {
		return message.WrongPhase.Errorf("%s only with a reason; type one", message.Words(act))
	}
	return nil
}

func (o Opened) check() error {
	switch {
	case o.Corrects > 0 && o.Reissues > 0:
		return message.WrongPhase.Errorf("a load corrects a ticket or reissues a void one, not both; open one for each")
	case o.Corrects > 0:
		return needsReason(o.Reason, "a ticket is corrected")
	case o.Reissues > 0:
		return needsReason(o.Reason, "a void ticket is reissued")
	}
	return nil
}

func (i Issued) check() error {
	if i.Number <= 0 {
		return message.WrongPhase.Errorf("ticket numbers begin at 1; %d is none", i.Number)
	}
	if i.Weigher == "" {
		return message.WrongPhase.Errorf("a ticket carries the weigher's full name; type it in the set-up or sign in")
	}
	return nil
}

func (d Details) check() error {
	switch {
	case d.Direction != Inbound && d.Direction != Outbound:
		return message.WrongPhase.Errorf("a load is inbound or outbound, not %q", d.Direction)
	case d.Day.IsZero():
		return message.WrongPhase.Errorf("the load has no day; give the business day it was delivered on")
	case d.Price != nil && d.Price.Sign() <= 0:
		return message.WrongPhase.Errorf("the price is %s; type a price above zero, or leave it for later", d.Price)
	}
	return nil
}

func (w Weighing) check() error {
	switch {
	case w.Which != Gross && w.Which != Tare:
		return message.WrongPhase.Errorf("a weight is gross or tare, not %q", w.Which)
	case w.Weight.Unit() != quantity.Lb && w.Weight.Unit() != quantity.Kg:
		return message.WrongPhase.Errorf("%s is %s; a truck is weighed in lb or kg", w.Which, w.Weight)
	case w.Weight.Sign() <= 0:
		return message.WrongPhase.Errorf("%s is %s; weigh the truck again", w.Which, w.Weight)
	case w.Source == StoredTare && w.Which != Tare:
		return message.WrongPhase.Errorf("only a tare can be a stored one; weigh the loaded truck")
	case w.Source == StoredTare && w.Taken.IsZero():
		return message.WrongPhase.Errorf("a stored tare says on which day it was weighed; store the truck's tare again, or weigh it empty")
	case w.Source == ByHand && strings.TrimSpace(w.Reason) == "":
		return message.WrongPhase.Errorf("a weight is typed by hand only with a reason; type one")
	}
	return nil
}

func (s Sample) check() error {
	if s.Moisture == nil {
		return nil
	}
	m := s.Moisture.Percent
	if m.Unit() != quantity.Percent || m.Sign() <= 0 || !m.Less(quantity.Int(100, quantity.Percent)) {
		return message.WrongPhase.Errorf("moisture is %s; it lies above 0 %% and below 100 %%, wet basis. Test again or type the figure again", m)
	}
	return nil
}
