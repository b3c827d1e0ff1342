package grain

import (
	"slices"
	"strings"

	"tenthpoint/internal/message"
)

// MoistureGrains lists the names the order knows, in its own order.
func (t *Tables) MoistureGrains() []string {
	names := make([]string, len(t.classes))
	for i, row := range t.classes {
		names[i] = row.grain
	}
	return names
}

// MoistureGrains lists the names under which the order knows this commodity.
// Barley and wheat have several, and barley's differ: the clerk or the edition
// chooses.
func (c Commodity) MoistureGrains() []string { return slices.Clone(c.moistureGrains) }

// nameMoistureGrains sets each commodity's names in the order.
func (t *Tables) nameMoistureGrains() {
	for i := range t.commodities {
		c := &t.commodities[i]
		for _, row := range t.classes {
			if c.CanadaKind != "" && row.kind() == c.CanadaKind {
				c.moistureGrains = append(c.moistureGrains, row.grain)
			}
		}
	}
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

func (t *Tables) findMoistureRow(grain string) (moistureRow, error) {
	var near []string
	for _, row := range t.classes {
		if strings.EqualFold(row.grain, strings.TrimSpace(grain)) {
			return row, nil
		}
		if firstWord(row.grain) == firstWord(grain) {
			near = append(near, row.grain)
		}
	}
	if len(near) == 0 {
		near = t.MoistureGrains()
	}
	return moistureRow{}, message.Invalid.Errorf("%q has no moisture classes; choose one of: %s", grain, strings.Join(near, "; "))
}

func firstWord(s string) string {
	word, _, _ := strings.Cut(strings.ToLower(strings.TrimSpace(s)), " ")
	return word
}
