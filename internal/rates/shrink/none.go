package shrink

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/rates/rule"
)

// None takes nothing off for water.
var None = &Method{
	ID: "none", Said: "none",
	Read: rule.NoKeys[Rule], Lines: rule.NoLines[Rule], Ticket: rule.Figures[Rule],
	Nothing:   message.Words("this edition takes nothing off for water"),
	Explained: "nothing comes off for water. The load is paid by the weight it has, however wet it is; what wetness costs is then in the drying charge or in a discount.",
}
