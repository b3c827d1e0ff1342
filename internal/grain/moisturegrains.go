package grain

import (
	"fmt"
	"strings"
)

// MoistureGrains lists the names the order knows, in its own order.
func MoistureGrains() []string {
	names := make([]string, len(moistureClasses))
	for i, row := range moistureClasses {
		names[i] = row.grain
	}
	return names
}

// MoistureGrains lists the names under which the order knows this commodity.
// Barley and wheat have several, and barley's differ: the clerk or the edition
// chooses.
func (c Commodity) MoistureGrains() []string {
	var names []string
	for _, row := range moistureClasses {
		if c.CanadaKind != "" && row.kind() == c.CanadaKind {
			names = append(names, row.grain)
		}
	}
	return names
}

// kind is the grain without the region and class that some rows add: "Wheat"
// for "Wheat - Canada Western Red Spring".
func (row moistureRow) kind() string {
	kind, _, _ := strings.Cut(row.grain, " - ")
	if strings.HasPrefix(kind, "Mixed grain") {
		return "Mixed grain"
	}
	return kind
}

func findMoistureRow(grain string) (moistureRow, error) {
	var near []string
	for _, row := range moistureClasses {
		if strings.EqualFold(row.grain, strings.TrimSpace(grain)) {
			return row, nil
		}
		if firstWord(row.grain) == firstWord(grain) {
			near = append(near, row.grain)
		}
	}
	if len(near) == 0 {
		near = MoistureGrains()
	}
	return moistureRow{}, fmt.Errorf("%q has no moisture classes; choose one of: %s", grain, strings.Join(near, "; "))
}

func firstWord(s string) string {
	word, _, _ := strings.Cut(strings.ToLower(strings.TrimSpace(s)), " ")
	return word
}
