package scaleticket

import (
	"time"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/signing"
	"tenthpoint/internal/title"
)

// Draft is the copy number of a slip that is not a ticket yet: the preview
// while the clerk types.
const Draft = -1

// Ticket is all that a slip is made from.
type Ticket struct {
	House elevator.Profile
	// Load may be incomplete; nil is an empty load.
	Load *load.Load
	// Settlement is nil while the load cannot be settled. What can be known
	// without it still shows.
	Settlement *settle.Settlement
	// Edition is the rates the load will be settled under, where they are known before the
	// settlement, which has its own.
	Edition *rates.Edition
	// Copy is 0 for the original, n for reprint n, Draft for a preview.
	Copy int64
	// For is the recipient of this copy, by the elevator's list: "driver". Empty where the elevator
	// has none.
	For string
	// Code is the short hash a verification finds the ticket by; empty on a
	// preview.
	Code string
	// Key signs the square of the slip; zero leaves it unsigned. HouseKey is the key of the house, zero
	// where it has none: people compare its fingerprint.
	Key      signing.Key
	HouseKey signing.Public
	// Vouched says who signed the ticket; empty on a preview, and in a house without keys.
	Vouched message.Text
	// Owner is 0 for the whole load, n for the slip of the n-th owner, which
	// shows that owner's part only.
	Owner int
	// Problems are the sentences why the load cannot be settled.
	Problems []message.Text
	// Titles are the rules of the place about what stands under a ticket, by the law it was issued
	// under; none where nobody read them.
	Titles title.Rules
	// MeterNote says what is wrong with the moisture meter, such as a check
	// that is overdue; empty when nothing is.
	MeterNote message.Text
	// Zone is the elevator's own time; nil prints the times of the facts as
	// they are written, in UTC.
	Zone *time.Location
	// Words are the printed words; the zero Words are those of the elevator's own language.
	Words Words

	// weightsOnly is the sheet of grain that leaves, with only its weights.
	weightsOnly *settle.Settlement
}

// fillIn sets defaults: an empty load, the words of the elevator's language, the settlement's
// edition.
func (t *Ticket) fillIn() {
	if t.Load == nil {
		t.Load = &load.Load{}
	}
	if t.Words.Ticket == "" {
		t.Words = WordsIn(t.House.Language)
	}
	if t.Settlement != nil && t.Settlement.Edition == nil {
		t.weightsOnly, t.Settlement = t.Settlement, nil
	}
	if t.Settlement != nil {
		t.Edition = t.Settlement.Edition
	}
	if t.Owner > len(t.Load.Details.Shares) || t.Owner < 0 {
		t.Owner = 0
	}
}

// EachCopy returns the ticket once for each copy that the elevator prints.
func (t Ticket) EachCopy() []Ticket {
	if len(t.House.CopiesFor) == 0 {
		return []Ticket{t}
	}
	out := make([]Ticket, len(t.House.CopiesFor))
	for i, name := range t.House.CopiesFor {
		out[i] = t
		out[i].For = name
	}
	return out
}
