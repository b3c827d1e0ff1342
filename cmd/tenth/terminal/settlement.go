package terminal

import (
	"fmt"

	"tenthpoint/internal/message"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
)

// EditionLine says under which rates something was settled.
func EditionLine(e *rates.Edition) message.Text {
	if e == nil {
		return message.New("Weighed only: grain that leaves is settled under no rates.")
	}
	line := message.New("Rates: %v, %v (%s), SHA-256 %v.", OneLine(e.ID), OneLine(e.Title), e.Days(), fmt.Sprintf("%.12s", e.Hash))
	if e.Status == rates.Example {
		return message.List(" ", line, message.New("Example - not for trade."))
	}
	return line
}

// Settlement is a settlement for programs.
type Settlement struct {
	Edition     string            `json:"edition,omitempty"` // none for grain that leaves
	EditionHash string            `json:"edition_sha256,omitempty"`
	Status      string            `json:"status,omitempty"`
	Figures     map[string]string `json:"figures"`
	Working     *worksheet.Sheet  `json:"working"`
	// Titles are whose grain it is and under what, owner by owner; none for a load in no book.
	Titles []Title `json:"titles,omitempty"`
}

// SettlementJSON is a settlement with its working, for programs.
func SettlementJSON(s *settle.Settlement) Settlement {
	out := Settlement{Figures: map[string]string{}, Working: s.Sheet}
	if e := s.Edition; e != nil {
		out.Edition, out.EditionHash, out.Status = e.ID, e.Hash, string(e.Status)
	}
	for name, step := range HeadFigures(s) {
		out.Figures[name] = InWords(step)
	}
	return out
}

// InWords is a figure as printed, or why there is no price.
func InWords(step *worksheet.Step) string {
	if settle.AwaitsPrice(step) {
		return step.Note().String()
	}
	return step.Printed()
}

// HeadFigures are the lines of a settlement people look for first.
func HeadFigures(s *settle.Settlement) map[string]*worksheet.Step {
	out := map[string]*worksheet.Step{}
	for name, step := range map[string]*worksheet.Step{
		"gross": s.Gross, "tare": s.Tare, "net": s.Net, "moisture": s.Moisture, "dockage": s.Dockage, "shrink": s.Water,
		"handling": s.Handling, "dry": s.Dry, "quantity": s.Quantity, "bushels": s.Bushels, "drying": s.Drying,
		"price": s.Price, "value": s.Value, "charges": s.Charges, "payable": s.Payable,
		"discounts": s.Discounts, "premiums": s.Premiums, "adjustments": s.Adjustments, "net_value": s.NetValue,
	} {
		if step != nil {
			out[name] = step
		}
	}
	if s.Services != nil {
		out["charges"] = s.Services
	}
	return out
}
