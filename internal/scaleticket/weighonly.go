package scaleticket

import (
	"tenthpoint/internal/load"
	"tenthpoint/internal/worksheet"
)

// Grain that leaves is only weighed, under no rates: its slip has the weights
// and the bushels by legal weight, and neither dry figures nor money are still
// to come.

// isWeighedOnly reports whether the load leaves under no rates.
func (c *composer) isWeighedOnly() bool {
	return c.l.Details.Direction == load.Outbound && c.Edition == nil
}

// weighedBushels is the step of the bushels by legal weight; nil where the
// weights are not whole or the grain has no bushel.
func (c *composer) weighedBushels() *worksheet.Step {
	if c.weightsOnly == nil {
		return nil
	}
	return c.weightsOnly.Bushels
}

// weighedHeadline is the net and its bushels, and the moisture if somebody
// tested it.
func (c *composer) weighedHeadline() {
	c.put(c.headNet())
	if c.l.Sample.Moisture != nil {
		c.put(c.headMoisture())
	}
	if b := c.weighedBushels(); b != nil {
		c.put(Line{Field: "bushels", Label: c.w.LegalBushels, Value: b.Printed(), Emphasis: true})
	}
}

// weighedSettlement says that there is none, and where the bushels are from.
func (c *composer) weighedSettlement() {
	c.put(Line{Field: "edition", Label: c.w.Rates, Value: c.w.WeighedOnly})
	if b := c.weighedBushels(); b != nil {
		c.put(Line{Kind: Pair, Field: "bushels", Label: c.w.LegalBushels, Value: b.Printed(), Notes: some(c.worked(b)), Emphasis: true})
	}
}

// weighedWorking is every step of the weights.
func (c *composer) weighedWorking() {
	for _, step := range c.weightsOnly.Sheet.Steps() {
		c.put(Line{Label: c.w.say(step.Label()), Value: step.Printed(), Notes: step.ExplainIn(c.w.Say)})
	}
}
