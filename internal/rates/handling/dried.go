package handling

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/worksheet"
)

// OfDried is a percent of the weight after water shrink, so that the two factors
// multiply.
var OfDried = &Method{
	ID:   "dried",
	Said: "percent of the weight after water shrink",
	Read: readRate, Lines: postRate, Caution: largeRate,
	Work:      func(rate, _, left *worksheet.Step) worksheet.Expr { return worksheet.PercentOf(rate, left) },
	Ticket:    func(Rule) message.Text { return message.New("of the dried weight") },
	Explained: "a percent of the weight that is left when the water is off, so that the two factors multiply. It takes a little less than the same percent of the wet weight.",
}
