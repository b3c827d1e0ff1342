package worksheet

import (
	"encoding/json"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// stepJSON is a step as programs read it. Figures are text, never JSON
// numbers.
type stepJSON struct {
	ID       string          `json:"id"`
	Section  message.Text    `json:"section"`
	Label    message.Text    `json:"label"`
	Kind     Kind            `json:"kind"`
	Formula  string          `json:"formula,omitempty"`
	Figures  string          `json:"figures,omitempty"`
	Uses     []string        `json:"uses,omitempty"`
	Exact    quantity.Amount `json:"exact"`
	Rounding string          `json:"rounding"`
	Value    quantity.Amount `json:"value"`
	Printed  string          `json:"printed"`
	Source   message.Text    `json:"source,omitzero"`
	Note     message.Text    `json:"note,omitzero"`
}

// MarshalJSON writes the steps in order.
func (s *Sheet) MarshalJSON() ([]byte, error) {
	out := make([]stepJSON, 0, len(s.steps))
	for _, step := range s.steps {
		out = append(out, step.json())
	}
	return json.Marshal(out)
}

func (s *Step) json() stepJSON {
	j := stepJSON{
		ID: s.id, Section: s.section, Label: s.label, Kind: s.kind,
		Formula: s.Formula(), Figures: s.Figures(),
		Exact: s.exact, Rounding: s.rounding.String(), Value: s.value, Printed: s.Printed(),
		Source: s.source, Note: s.Note(),
	}
	for _, used := range s.Uses() {
		j.Uses = append(j.Uses, used.id)
	}
	return j
}

// Digest lists every figure of the sheet, a line each: id, kind, exact figure, rounding, rounded
// figure. Labels and remarks are left out, so that sheets in different languages have one digest.
func (s *Sheet) Digest() string {
	var b strings.Builder
	for _, step := range s.steps {
		exact, _ := step.exact.MarshalText()
		value, _ := step.value.MarshalText()
		b.WriteString(step.id + "|" + string(step.kind) + "|")
		b.Write(exact)
		b.WriteString("|" + step.rounding.String() + "|")
		b.Write(value)
		b.WriteByte('\n')
	}
	return b.String()
}
