package rates

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/settle"
)

// comparedJSON is one load under two editions, for programs.
type comparedJSON struct {
	First  editionJSON        `json:"first"`
	Second editionJSON        `json:"second"`
	Lines  []comparedLineJSON `json:"lines"`
	Beyond []beyondJSON       `json:"beyond_water"`
}

type comparedLineJSON struct {
	ID     string `json:"id"`
	Label  string `json:"label"`
	Before string `json:"before,omitempty"`
	After  string `json:"after,omitempty"`
	Change string `json:"change,omitempty"`
}

type beyondJSON struct {
	Edition  string `json:"edition"`
	Hidden   string `json:"hidden"`
	HiddenOf string `json:"hidden_percent"`
	Handling string `json:"handling"`
	Total    string `json:"total"`
	Percent  string `json:"percent"`
}

func comparisonJSON(c *settle.Comparison, beyond []*beyondWater) comparedJSON {
	out := comparedJSON{First: editionForJSON(c.Before.Edition), Second: editionForJSON(c.After.Edition), Beyond: []beyondJSON{}}
	for _, l := range c.Lines {
		line := comparedLineJSON{ID: l.ID, Label: l.Label.String()}
		if l.Change != nil {
			line.Change = changeOf(l)
		}
		if l.Before != nil {
			line.Before = terminal.InWords(l.Before)
		}
		if l.After != nil {
			line.After = terminal.InWords(l.After)
		}
		out.Lines = append(out.Lines, line)
	}
	for _, b := range beyond {
		out.Beyond = append(out.Beyond, beyondJSON{b.edition.ID, b.Hidden.Printed(), b.HiddenPercent.Printed(), b.Handling.Printed(), b.Total.Printed(), b.Percent.Printed()})
	}
	return out
}
