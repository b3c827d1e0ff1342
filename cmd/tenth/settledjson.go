package main

import (
	"fmt"

	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
)

// editionLine says under which rates something was settled.
func editionLine(e *rates.Edition) string {
	if e == nil {
		return "Weighed only: grain that leaves is settled under no rates."
	}
	line := fmt.Sprintf("Rates: %s, %s (%s), SHA-256 %.12s.", e.ID, e.Title, e.Period(), e.Hash)
	if e.Status == rates.Example {
		line += " Example - not for trade."
	}
	return line
}

// settledJSON is a settlement for programs.
type settledJSON struct {
	Edition     string            `json:"edition,omitempty"` // none for grain that leaves
	EditionHash string            `json:"edition_sha256,omitempty"`
	Status      string            `json:"status,omitempty"`
	Figures     map[string]string `json:"figures"`
	Working     *worksheet.Sheet  `json:"working"`
}

func settlementJSON(s *settle.Settlement) settledJSON {
	out := settledJSON{Figures: map[string]string{}, Working: s.Sheet}
	if e := s.Edition; e != nil {
		out.Edition, out.EditionHash, out.Status = e.ID, e.Hash, string(e.Status)
	}
	for name, step := range headFigures(s) {
		out.Figures[name] = inWords(step)
	}
	return out
}

// inWords is a figure as printed, or that its price comes later.
func inWords(step *worksheet.Step) string {
	if isLater(step) {
		return priceLater
	}
	return step.Printed()
}

const priceLater = "price later"

func isLater(step *worksheet.Step) bool {
	return step.Kind() == worksheet.NotApplied && step.Note() == priceLater
}

// headFigures are the lines of a settlement people look for first.
func headFigures(s *settle.Settlement) map[string]*worksheet.Step {
	out := map[string]*worksheet.Step{}
	for name, step := range map[string]*worksheet.Step{
		"gross": s.Gross, "tare": s.Tare, "net": s.Net, "moisture": s.Moisture, "dockage": s.Dockage, "shrink": s.Water,
		"handling": s.Handling, "dry": s.Dry, "quantity": s.Quantity, "bushels": s.Bushels, "drying": s.Drying,
		"price": s.Price, "value": s.Value, "charges": s.Charges, "payable": s.Payable,
	} {
		if step != nil {
			out[name] = step
		}
	}
	return out
}
