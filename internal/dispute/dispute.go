package dispute

import (
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Phase is the stage of a dispute.
type Phase string

// The phases of a dispute.
const (
	NotRaised Phase = ""
	Open      Phase = "open"
	Testing   Phase = "sample sent"
	Tested    Phase = "result in"
	Closed    Phase = "decided"
)

// Dispute is the state of a dispute, replayed from its facts.
type Dispute struct {
	ID       string    `json:"id"`
	Phase    Phase     `json:"phase"`
	Raised   Raised    `json:"raised"`
	Sent     *Sent     `json:"sent,omitempty"`
	Resulted *Resulted `json:"resulted,omitempty"`
	Decided  *Decided  `json:"decided,omitempty"`
}

// allowed lists the phases in which each kind of fact may be written. A dispute
// about rates needs no sample, so it may be decided at any time.
var allowed = map[string][]Phase{
	Raised{}.Kind():   {NotRaised},
	Sent{}.Kind():     {Open},
	Resulted{}.Kind(): {Open, Testing},
	Decided{}.Kind():  {Open, Testing, Tested},
}

// Apply applies one fact, or returns an error that says why it cannot follow.
func (d *Dispute) Apply(f Fact) error {
	if !slices.Contains(allowed[f.Kind()], d.Phase) {
		return d.cannot(f)
	}
	switch f := f.(type) {
	case Raised:
		if f.Ticket <= 0 || f.By == "" || f.Claim == "" {
			return message.WrongPhase.Errorf("a dispute names the ticket, who raises it and what is claimed; one of them is empty")
		}
		d.Phase, d.Raised = Open, f
	case Sent:
		if f.Sample == "" || f.To == "" || f.SealedBy == "" {
			return message.WrongPhase.Errorf("a sample is sent with its number, who sealed it and where to; one of them is empty")
		}
		if quantity.Recorded(f.Mass) && (f.Mass.Unit() != quantity.Gram || f.Mass.Sign() <= 0) {
			return message.Invalid.Errorf("%s of the sample was sent; write grams, such as 1000 g", f.Mass)
		}
		if d.Raised.About == "moisture" && !f.Airtight {
			return message.WrongPhase.Errorf("moisture is at issue: the sample must be sealed airtight, or it dries on the way. Seal it so and say so")
		}
		d.Phase, d.Sent = Testing, &f
	case Resulted:
		if f.By == "" || f.Finding == "" {
			return message.WrongPhase.Errorf("a result says who tested and what was found; one of them is empty")
		}
		d.Phase, d.Resulted = Tested, &f
	case Decided:
		if err := f.check(); err != nil {
			return err
		}
		d.Phase, d.Decided = Closed, &f
	}
	return nil
}

func (f Decided) check() error {
	switch {
	case f.Decision == "":
		return message.WrongPhase.Errorf("a decision needs words: what was settled on, and why")
	case f.Stands && f.Corrected != 0:
		return message.WrongPhase.Errorf("the ticket stands or is corrected by ticket %d, not both", f.Corrected)
	case !f.Stands && f.Corrected == 0:
		return message.WrongPhase.Errorf("a ticket that does not stand is corrected first; name the corrected ticket")
	}
	return nil
}

func (d *Dispute) cannot(f Fact) error {
	switch {
	case d.Phase == NotRaised:
		return message.NotFound.Errorf("there is no such dispute; raise it first, naming the ticket")
	case f.Kind() == Raised{}.Kind():
		return message.WrongPhase.Errorf("dispute %s is raised already", d.ID)
	case d.Phase == Closed:
		return message.WrongPhase.Errorf("dispute %s was decided on %s; raise a new one if there is a new doubt", d.ID, d.Decided.Day)
	case d.Phase == Testing:
		return message.WrongPhase.Errorf("the sample of dispute %s was sent to %s already; write the result down when it comes", d.ID, d.Sent.To)
	}
	return message.WrongPhase.Errorf("the result of dispute %s is in; decide it", d.ID)
}
