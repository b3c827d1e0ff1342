package settle

import (
	"strings"

	"tenthpoint/internal/working"
)

// mainLines are the lines of a settlement that every slip shows, by the ids of
// their steps.
var mainLines = map[string]bool{
	"gross": true, "tare": true, "net": true, convertedNet: true, "moisture": true,
	"dockage": true, "clean": true, "shrink.water": true, "handling": true, "dry": true,
	"settled": true, "quantity": true, "bushels": true, "drying": true,
	"price": true, "value": true, "charges": true, "payable": true,
}

// Lines are the steps of a settlement that a slip shows and a dispute is about,
// in the order they were worked: weights, results, every deduction, quantities
// and money. What is left out is how they came about.
func (s *Settlement) Lines() []*working.Step {
	var out []*working.Step
	for _, step := range s.Sheet.Steps() {
		if isLine(step.ID()) {
			out = append(out, step)
		}
	}
	return out
}

// isFigure tells which steps are written down with a load: its lines and those
// of its owners.
func isFigure(id string) bool { return isLine(id) || strings.HasPrefix(id, "share.") }

func isLine(id string) bool {
	head, rest, _ := strings.Cut(id, ".")
	isWhole := rest != "" && !strings.Contains(rest, ".")
	return mainLines[id] || isWhole && (head == "factor" || head == "discount")
}
