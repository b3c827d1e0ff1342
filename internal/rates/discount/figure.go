package discount

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/tomlfile"
)

// readAnswer reads the effect of a row or a yes: a figure, or refusal, or both, the figure then
// being for a load that a manager accepts anyway.
func readAnswer(t *tomlfile.Table, h *rule.Head, of Of) (refuse bool, c rule.Cell, gives rule.Direction) {
	refuse = t.Has("refuse") && t.Bool("refuse")
	if refuse && !t.Has("discount") && !t.Has("premium") {
		return refuse, rule.Cell{}, rule.Docks
	}
	c, gives = readFigure(t, h, of)
	return refuse, c, gives
}

// readFigure reads the amount under "discount" or "premium".
func readFigure(t *tomlfile.Table, h *rule.Head, of Of) (rule.Cell, rule.Direction) {
	key, gives := "discount", rule.Docks
	if t.Has("premium") {
		key, gives = "premium", rule.Pays
		if t.Has("discount") {
			t.AddProblem("discount", message.New("%s has both a discount and a premium", t.Name("")), message.New("Keep the one that is meant."))
			t.OptionalText("discount")
		}
	}
	units := []quantity.Unit{quantity.Percent}
	if of == OfMoney {
		units = rule.PerQuantityUnits()
	}
	c := rule.ReadCell(t, key, units...)
	rule.NotNegative(t, key, c)
	h.NeedsBushel(t, key, c)
	if of != OfMoney && c.Given() && !c.Amount.Less(rule.Hundred) {
		t.AddProblem(key, message.New("%s of the %s leaves nothing", c.Amount.Written(), of), message.New("Write a percent below 100."))
	}
	return c, gives
}
