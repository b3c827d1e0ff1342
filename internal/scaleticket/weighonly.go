package scaleticket

import (
	"tenthpoint/internal/load"
	"tenthpoint/internal/worksheet"
)

// Grain that leaves is only weighed, under no rates: its slip has the weights
// and the bushels by legal weight, and neither dry figures nor money are still
// to come.

// isWeighedOnly reports whether the load leaves under no rates.
func (t *facts) isWeighedOnly() bool {
	return t.l.Details.Direction == load.Outbound && t.Edition == nil
}

// weighedBushels is the step of the bushels by legal weight; nil where the
// weights are not whole or the grain has no bushel.
func weighedBushels(t *facts) *worksheet.Step {
	if t.weightsOnly == nil {
		return nil
	}
	return t.weightsOnly.Bushels
}

// weighedHeadline is the net and its bushels, and the moisture if somebody
// tested it.
func weighedHeadline(p *part) {
	p.put(headNet(p.facts))
	if p.l.Sample.Moisture != nil {
		p.put(headMoisture(p.facts))
	}
	if b := weighedBushels(p.facts); b != nil {
		p.put(Line{Field: "bushels", Label: p.w.LegalBushels, Value: p.w.printed(b), Emphasis: true})
	}
}

// weighedSettlement says that there is none, and where the bushels are from.
func weighedSettlement(p *part) {
	p.put(Line{Field: "edition", Label: p.w.Rates, Value: p.w.WeighedOnly})
	if b := weighedBushels(p.facts); b != nil {
		p.put(Line{Kind: Pair, Field: "bushels", Label: p.w.LegalBushels, Value: p.w.printed(b), Notes: some(p.w.worked(b)), Emphasis: true})
	}
}

// weighedWorking is every step of the weights.
func weighedWorking(p *part) {
	for _, step := range p.weightsOnly.Sheet.Steps() {
		p.put(Line{Label: p.w.say(step.Label()), Value: p.w.printed(step), Notes: step.ExplainIn(p.w.Printer)})
	}
}
