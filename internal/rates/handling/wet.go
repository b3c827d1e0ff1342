package handling

import (
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/worksheet"
)

// OfWet is a percent of the wet weight, added to the water shrink.
var OfWet = &Method{
	ID:   "wet",
	Said: "percent of the wet weight, added to the shrink",
	Read: readRate, Lines: postRate, Caution: largeRate,
	Work:      func(rate, wet, _ *worksheet.Step) worksheet.Expr { return worksheet.PercentOf(rate, wet) },
	Ticket:    func(Rule) rule.Phrase { return rule.Phrase{Words: "of the wet weight"} },
	Explained: "a percent of the wet weight, added to the water. The same percent is taken however much water came off.",
}
