package paysheet

import (
	"fmt"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Handover is money of a levy that was handed on to its fund. It is written down here; no bank is told.
// What a fund is owed is all that sheets took, less all that was handed on, so that a sheet void later
// is taken off the next handover.
type Handover struct {
	Levy   string `json:"levy"`
	Number int64  `json:"number,string"` // from 1, for each levy
	// Through is the last day whose sheets it is for.
	Through   quantity.Date   `json:"through"`
	Day       quantity.Date   `json:"day"`
	Amount    quantity.Amount `json:"amount"`              // $, above zero
	Reference string          `json:"reference,omitempty"` // number of the check or the transfer
	By        string          `json:"by"`
	Voided    *Voided         `json:"voided,omitempty"`
}

// Kind names the fact in the journal.
func (Handover) Kind() string { return "money.handover" }

// ID is the handover's name among the records of the book.
func (h Handover) ID() string { return fmt.Sprintf("%s %d", h.Levy, h.Number) }

// InForce reports whether the handover counts.
func (h Handover) InForce() bool { return h.Voided == nil }

// Check returns what is wrong with the handover, or nil.
func (h Handover) Check() error {
	switch {
	case h.Levy == "":
		return message.Invalid.Errorf("name the levy that is handed on")
	case h.Amount.Unit() != quantity.Dollar || h.Amount.Sign() <= 0 || !Cents.Apply(h.Amount).Equal(h.Amount):
		return message.Invalid.Errorf("%s is no sum to pay; it is whole cents above zero", h.Amount)
	case h.Through.After(h.Day):
		return message.Invalid.Errorf("what is handed on on %s is not for sheets up to %s; that day is later", h.Day, h.Through)
	case h.Day.IsZero() || h.Through.IsZero() || h.By == "":
		return message.Invalid.Errorf("a handover has days and a person; one of them is empty")
	}
	return nil
}

// HandedOn is the sum of the handovers of a levy that are in force.
func HandedOn(all []Handover, levy string) quantity.Amount {
	sum := quantity.Zero(quantity.Dollar)
	for _, h := range all {
		if h.Levy == levy && h.InForce() {
			sum = sum.Add(h.Amount)
		}
	}
	return sum
}
