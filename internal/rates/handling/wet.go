package handling

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/worksheet"
)

// OfWet is a percent of the wet weight, added to the water shrink.
var OfWet = &Method{
	ID:   "wet",
	Said: "percent of the wet weight, added to the shrink",
	Read: readRate, Lines: postRate, Caution: largeRate,
	Work:      func(rate, wet, _ *worksheet.Step) worksheet.Expr { return worksheet.PercentOf(rate, wet) },
	Ticket:    func(Rule) message.Text { return message.New("of the wet weight") },
	Explained: "a percent of the wet weight, added to the water. The same percent is taken however much water came off.",
}
