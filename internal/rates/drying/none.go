package drying

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/rates/rule"
)

// None charges nothing.
var None = &Method{
	ID: "none", Said: "none",
	Read: rule.NoKeys[Rule], Lines: rule.NoLines[Rule], Ticket: rule.Figures[Rule],
	Nothing:   message.Words("this edition charges nothing for drying"),
	Explained: "drying is not charged.",
}
