package elevator

import (
	"slices"

	"tenthpoint/internal/message"
)

// PIN is the lock of a person's name, with what was tried on it.
type PIN struct {
	Name string `json:"name"`
	Lock string `json:"lock,omitempty"` // empty once it was taken away
	// Wrong counts the PINs typed wrongly since the last right one, Tried is when the last was.
	Wrong int    `json:"wrong,string,omitempty"`
	Tried string `json:"tried,omitempty"`
	// Reason is why the PIN was taken away.
	Reason string `json:"reason,omitempty"`
}

// Kind names the fact in the journal.
func (PIN) Kind() string { return "house.pin" }

// PINAct is an act that a house may ask a PIN for.
type PINAct string

// Managers' acts ask for one as soon as a manager has one; the others where the house says so.
const (
	WeightActs PINAct = "weights"
	TicketActs PINAct = "tickets"
	SampleActs PINAct = "samples"
	ListActs   PINAct = "lists"
)

// Message is the act in words.
func (a PINAct) Message() message.Text {
	switch a {
	case WeightActs:
		return message.New("weights")
	case TicketActs:
		return message.New("tickets")
	case SampleActs:
		return message.New("samples")
	}
	return message.New("lists")
}

// PINActs are those a house chooses from.
func PINActs() []PINAct { return []PINAct{WeightActs, TicketActs, SampleActs, ListActs} }

// checkPINActs returns what is wrong with the choice, or nothing.
func (p Profile) checkPINActs() error {
	for _, act := range p.AskPIN {
		if !slices.Contains(PINActs(), act) {
			return message.Invalid.Errorf("a PIN is asked for weights, tickets, samples or lists, not for %q.", string(act))
		}
	}
	return nil
}
