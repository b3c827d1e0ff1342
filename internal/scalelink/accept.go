package scalelink

import "tenthpoint/internal/message"

// Reason names why a reading is no weight for a ticket.
type Reason string

const (
	InMotion     Reason = "in motion"
	NotAtRest    Reason = "rest not known"
	OutOfRange   Reason = "out of range"
	BrokenScale  Reason = "indicator fault"
	NotGross     Reason = "not gross"
	WrongUnit    Reason = "wrong unit"
	NotAboveZero Reason = "not above zero"
	OffDivision  Reason = "not whole divisions"
	OverCapacity Reason = "over capacity"
)

// Refusal is one reason with its sentence.
type Refusal struct {
	Reason   Reason
	Sentence message.Text
}

// Refused is the error of a reading that is not taken. It holds every reason,
// never only the first.
type Refused []Refusal

// Error is every reason in English, a line each.
func (r Refused) Error() string { return r.Message().String() }

// Message is every reason, a line each.
func (r Refused) Message() message.Text {
	sentences := make([]any, len(r))
	for i, refusal := range r {
		sentences[i] = refusal.Sentence
	}
	return message.List("\n", sentences...)
}

// Unwrap makes it a refusal.
func (r Refused) Unwrap() error { return message.Refused }

// Has reports whether the reason is among them.
func (r Refused) Has(reason Reason) bool {
	for _, refusal := range r {
		if refusal.Reason == reason {
			return true
		}
	}
	return false
}

func (r *Refused) add(reason Reason, sentence message.Text) {
	*r = append(*r, Refusal{reason, sentence})
}

// Accept returns nil when the reading may go on a ticket, else a [Refused]: it must be at rest,
// gross, in the scale's unit, above zero, in whole divisions and not over 105 % of capacity.
func (s Scale) Accept(r Reading) error {
	var no Refused
	s.refuseState(r, &no)
	if r.Mode == Net {
		no.add(NotGross, message.New("%v shows a net weight: a tare is held in the indicator. Clear it, so that the gross is shown; tares are taken off on the ticket.", s.Name))
	}
	if r.Weight.Unit() != s.Capacity.Unit() {
		no.add(WrongUnit, message.New("%v shows %s and is set up in %s. Change the indicator's unit back, or the scale's set-up.", s.Name, r.Weight, s.Capacity.Unit()))
	} else if r.hasWeight() {
		s.refuseWeight(r, &no)
	}
	if len(no) == 0 {
		return nil
	}
	return no
}

func (s Scale) refuseState(r Reading, no *Refused) {
	switch r.State {
	case Unsaid:
		no.add(NotAtRest, message.New("%v does not tell whether %s is at rest. Set how many equal readings count as rest, or describe the motion letter in the scale's profile.", s.Name, r.Weight))
	case Motion:
		no.add(InMotion, message.New("%v is still moving at %s. Wait for the truck to stand still, brakes set and nobody on the deck.", s.Name, r.Weight))
	case Under:
		no.add(OutOfRange, message.New("%v says the weight is below what it can show. See the deck clear, zero the indicator, then weigh.", s.Name))
	case Over:
		no.add(OutOfRange, message.New("%v says the weight is above what it can show. Take the truck off the deck.", s.Name))
	case Fault:
		no.add(BrokenScale, message.New("%v says it has a fault. Do not weigh until it has been looked at.", s.Name))
	}
}

func (s Scale) refuseWeight(r Reading, no *Refused) {
	switch {
	case r.Weight.Sign() < 0:
		no.add(NotAboveZero, message.New("%v reads %s, below zero. See the deck clear, zero the indicator, then weigh.", s.Name, r.Weight))
	case r.Weight.IsZero():
		no.add(NotAboveZero, message.New("%v reads %s: nothing is on the deck.", s.Name, r.Weight))
	}
	if below := s.below(r.Weight); !s.isWhole(r.Weight) {
		no.add(OffDivision, message.New("%v reads %s, which is not whole divisions of %s: %s is, and %s is left over. Check the division in the scale's set-up and the columns in its profile.", s.Name, r.Weight, s.Division, below, r.Weight.Sub(below)))
	}
	if most := s.Most(); r.Weight.More(most) {
		no.add(OverCapacity, message.New("%v reads %s; no more than %s may be weighed (capacity %s x 105 / 100, NIST Handbook 44 S.1.7): %s too much. Take the truck off and weigh it on a larger scale.", s.Name, r.Weight, most, s.Capacity, r.Weight.Sub(most)))
	}
}
