package load

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/quantity"
)

// Phase is the stage of a load.
type Phase string

// The phases of a load.
const (
	NotOpened  Phase = "not opened"
	OnYard     Phase = "on the yard"
	TurnedAway Phase = "refused"
	TakenBack  Phase = "withdrawn"
	Ready      Phase = "settled"
	Ticketed   Phase = "issued"
	Void       Phase = "void"
	Corrected  Phase = "corrected"
)

// Stamp says who wrote a fact, where and when.
type Stamp struct {
	At   string `json:"at"`
	Who  string `json:"who"`
	Desk string `json:"desk"`
}

// orCarried is the stamp of the fact taken over from another ticket, if it was.
func (s Stamp) orCarried(carried *Stamp) Stamp {
	if carried != nil {
		return *carried
	}
	return s
}

// StampedWeighing is a weighing with its stamp.
type StampedWeighing struct {
	Weighing
	Stamp
}

// Load is the state of one truckload, replayed from its facts. The zero Load has not been opened.
type Load struct {
	ID       string
	Phase    Phase
	Opened   Stamp
	Details  Details
	Corrects int64  // number of the ticket it corrects, or zero
	Reissues int64  // number of the void ticket it reissues, or zero
	Why      string // why it corrects or reissues it
	Chain    bool   // what rests on the ticket it corrects follows when it is issued
	// Weighings are the weights in force, one for each draft and side, in the
	// order first taken. Earlier ones for the same side are struck, and listed.
	Weighings []StampedWeighing
	Struck    []StampedWeighing
	Sample    Sample
	Sampled   Stamp // of the last result
	Accepted  []AcceptedLimit
	Answers   []Answer // to questions of the elevator's guards, in order
	Settled   *Settled
	Number    int64
	Weigher   string
	Issued    Stamp
	IssuedDay quantity.Date
	// Onward is the bin that the grain went on to from the one of its details, as a rule.
	Onward string
	Copies int64 // printed so far, the original among them
	// SlipCode is the format of the code on its slip; 0 is the first.
	SlipCode int64
	Letters  string // before the number on paper
	// Balance is what was owed for it when the books of the house were opened here; nil for a load that
	// came over the scale.
	Balance *Balance
	// Slip is the paper it was entered from again; nil for a ticket of this book.
	Slip *Slip

	charts *chart.Set             // the moisture charts its tests were looked up in
	clock  func(at string) string // the elevator's own time; nil leaves times as the facts have them
	Ended  Ending
	// Reissue is the ticket that a void one was reissued as; its zero is none.
	Reissue Reissue
}

// Balance is what is owed for grain of the books before: what was settled, and nothing of how.
type Balance struct {
	Quantity quantity.Amount // in the unit of the settlement
	Settled  quantity.Amount // the settled weight
}

// Reissue is the ticket that the grain of a void one has now. Day is the business
// day it counts in.
type Reissue struct {
	By  int64
	Day quantity.Date
	Stamp
}

// AcceptedLimit is a limit a manager has accepted.
type AcceptedLimit struct {
	Accepted
	Stamp
}

// Answer is an answer with its stamp.
type Answer struct {
	Answered
	Stamp
}

// Ending says how a load or a ticket ended, when it was not simply issued.
type Ending struct {
	Reason string
	By     int64 // number of the correcting ticket
	Day    quantity.Date
	Stamp
}

// Replay replays the facts of one load. A fact that does not follow from those before it is an
// error that names it.
func Replay(id string, facts []Stamped) (*Load, error) {
	l := &Load{ID: id, Phase: NotOpened}
	for i, f := range facts {
		if err := l.Apply(f); err != nil {
			return nil, message.Errorf("load %s, fact %d (%s): %w", id, i+1, f.Fact.Kind(), err)
		}
	}
	return l, nil
}

// Stamped is a fact with its stamp.
type Stamped struct {
	Fact
	Stamp
}

// Apply applies one fact, or returns an error that says why it cannot follow.
func (l *Load) Apply(f Stamped) error {
	if err := l.Allow(f.Fact); err != nil {
		return err
	}
	switch fact := f.Fact.(type) {
	case Opened:
		l.Phase, l.Opened, l.Details = OnYard, f.Stamp, fact.Details
		l.Corrects, l.Reissues, l.Why, l.Chain = fact.Corrects, fact.Reissues, fact.Reason, fact.Chain
	case Amended:
		l.Details = fact.Details
		l.unsettle()
	case Weighed:
		l.weigh(StampedWeighing{fact.Weighing, f.Stamp.orCarried(fact.Carried)})
	case Sampled:
		l.Sample, l.Sampled = fact.Sample, f.Stamp.orCarried(fact.Carried)
		l.unsettle()
	case Accepted:
		l.Accepted = append(l.Accepted, AcceptedLimit{fact, f.Stamp.orCarried(fact.Carried)})
	case Answered:
		l.Answers = append(l.Answers, Answer{fact, f.Stamp.orCarried(fact.Carried)})
	case Refused:
		l.end(TurnedAway, Ending{Reason: fact.Reason, Day: fact.Day, Stamp: f.Stamp})
	case Withdrawn:
		l.end(TakenBack, Ending{Stamp: f.Stamp})
	case Settled:
		l.Phase, l.Settled = Ready, &fact
	case Issued:
		l.Phase, l.Number, l.Weigher = Ticketed, fact.Number, fact.Weigher
		l.Issued, l.IssuedDay, l.Onward, l.SlipCode, l.Slip = f.Stamp, fact.Day, fact.Onward, fact.SlipCode, fact.Slip
		l.Letters = fact.Letters
	case Printed:
		l.Copies++
	case Voided:
		l.end(Void, Ending{Reason: fact.Reason, Day: fact.Day, Stamp: f.Stamp})
	case Superseded:
		l.end(Corrected, Ending{Reason: fact.Reason, By: fact.By, Day: fact.Day, Stamp: f.Stamp})
	case Reissued:
		l.Reissue = Reissue{By: fact.By, Day: fact.Day, Stamp: f.Stamp}
	}
	return nil
}

func (l *Load) end(p Phase, e Ending) { l.Phase, l.Ended = p, e }

// InPlaceOf is the number of the ticket whose place this load's ticket takes,
// because it corrects it or reissues it; zero when it takes none.
func (l *Load) InPlaceOf() int64 { return max(l.Corrects, l.Reissues) }

// Successor is the number of the ticket that took the place of this load's;
// zero while none has.
func (l *Load) Successor() int64 { return max(l.Ended.By, l.Reissue.By) }

// unsettle drops a settlement that new facts have overtaken.
func (l *Load) unsettle() {
	l.Phase, l.Settled = OnYard, nil
}

// weigh puts a weight in force and strikes the one it replaces.
func (l *Load) weigh(t StampedWeighing) {
	l.unsettle()
	for i, old := range l.Weighings {
		if old.Which == t.Which && old.Draft == t.Draft {
			l.Struck = append(l.Struck, old)
			l.Weighings[i] = t
			return
		}
	}
	l.Weighings = append(l.Weighings, t)
}

// Weight is the weight in force for a side of a draft.
func (l *Load) Weight(which Which, draft string) (StampedWeighing, bool) {
	for _, w := range l.Weighings {
		if w.Which == which && w.Draft == draft {
			return w, true
		}
	}
	return StampedWeighing{}, false
}

// Drafts are the names of the drafts begun, in order; a single draft has an
// empty name.
func (l *Load) Drafts() []string {
	var names []string
	seen := map[string]bool{}
	for _, w := range l.Weighings {
		if !seen[w.Draft] {
			seen[w.Draft] = true
			names = append(names, w.Draft)
		}
	}
	return names
}

// Manual reports whether any weight in force was typed by hand.
func (l *Load) Manual() bool {
	for _, w := range l.Weighings {
		if w.Source == ByHand {
			return true
		}
	}
	return false
}

// Net is gross less tare of the weights in force, over all drafts; known is
// false while one of them is missing or they do not agree in unit.
func (l *Load) Net() (net quantity.Amount, known bool) {
	for i, draft := range l.Drafts() {
		gross, okGross := l.Weight(Gross, draft)
		tare, okTare := l.Weight(Tare, draft)
		if !okGross || !okTare || gross.Weight.Unit() != tare.Weight.Unit() {
			return quantity.Amount{}, false
		}
		one := gross.Weight.Sub(tare.Weight)
		if i == 0 {
			net = one
		} else if net.Unit() == one.Unit() {
			net = net.Add(one)
		} else {
			return quantity.Amount{}, false
		}
		known = true
	}
	return net, known
}

// CanWithdraw reports whether the load is on the yard and was never weighed, so that it may be taken
// back as if its truck had not come.
func (l *Load) CanWithdraw() bool {
	return l.Phase == OnYard && len(l.Weighings)+len(l.Struck) == 0
}
