package handling

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/rates/rule"
)

// None takes nothing off for handling.
var None = &Method{
	ID: "none", Said: "none",
	Read: rule.NoKeys[Rule], Lines: rule.NoLines[Rule], Ticket: rule.Figures[Rule],
	Nothing:   message.Words("this edition takes nothing for handling"),
	Explained: "nothing comes off for handling. A load loses only its water, and the loss of dust and spill is the elevator's.",
}
