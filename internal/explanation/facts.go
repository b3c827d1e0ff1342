package explanation

import (
	"tenthpoint/internal/dispute"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
)

// Facts are the input of a proof.
type Facts struct {
	House      elevator.Profile
	Load       *load.Load
	Settlement *settle.Settlement // recalculated from the edition in the book
	Code       string             // the check code on the slip
	OverDry    *settle.OverDry    // loss on grain drier than the base; nil for any other
	// Clock turns the time of a fact into the elevator's own.
	Clock func(at string) string
	// Meters say the status of the meters that were used when the
	// sample was tested.
	Meters  []message.Text
	WhatIfs []WhatIf
	// Correction sets the ticket this one corrects beside it; nil when it
	// corrects none.
	Correction *settle.Comparison
	Disputes   []dispute.Dispute
	// Rule is the time limit for another test; its Source is empty when the elevator follows no
	// known rule.
	Rule dispute.Rule
	Due  quantity.Date
}

// WhatIf is the load settled with one thing different.
type WhatIf struct {
	// Name is the difference: "moisture 17.9 %".
	Name       message.Text
	Settlement *settle.Settlement
	// Refused says why it could not be settled so; the settlement is then nil.
	Refused message.Text
}
