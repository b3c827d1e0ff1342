package explanation

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"tenthpoint/internal/report"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
)

// steps describes the working, each of its sections under a heading.
func (c *composer) steps() report.Steps {
	var out report.Steps
	section := ""
	for _, s := range c.Settlement.Sheet.Steps() {
		if s.Section() != section {
			section = s.Section()
			out.Steps = append(out.Steps, report.Step{Label: c.say(section), Part: true})
		}
		out.Steps = append(out.Steps, c.step(s))
	}
	return out
}

// step describes one step: in words, in figures, with its reason and its source.
func (c *composer) step(s *worksheet.Step) report.Step {
	out := report.Step{Label: c.say(s.Label()), Figure: s.PrintedIn(c.say), Skipped: s.Kind() == worksheet.NotApplied}
	if settle.AwaitsPrice(s) {
		out.Figure = c.say(c.unpriced(s))
		return out
	}
	if out.Skipped {
		out.Figure = c.say("nothing")
	}
	if words := s.FormulaIn(c.say); words != "" && len(s.Uses()) > 0 && words != c.say(s.Uses()[0].Label()) {
		out.Explain = append(out.Explain, words)
	}
	for _, line := range s.ExplainIn(c.say) {
		if line != "["+c.say(s.Source())+"]" {
			out.Explain = append(out.Explain, line)
		}
	}
	if source := c.sourced(s.Source()); source != "" {
		out.Explain = append(out.Explain, source)
	}
	return out
}

// unpriced takes the place of a figure that depends on the price.
func (c *composer) unpriced(s *worksheet.Step) string {
	return c.Load.Details.Under.Remark(s.Note())
}

// sourced returns the source of a step's figure or rule: the row of the rates, quoted once, or the
// law, instrument or person.
func (c *composer) sourced(source string) string {
	if source == "" {
		return ""
	}
	text, line := quote(c.Settlement.Edition, source)
	switch {
	case text == "":
		return fmt.Sprintf(c.say("Source: %s."), c.say(c.ownTime(source)))
	case slices.Contains(c.quoted, line):
		return fmt.Sprintf(c.say("Posted rates, line %d, as above."), line)
	}
	c.quoted = append(c.quoted, line)
	return fmt.Sprintf(c.say("Posted rates, line %d: %s."), line, strings.ReplaceAll(text, `"`, ""))
}

// ownTime writes the time of a fact, which a source may end with, as the
// elevator's clock has it.
func (c *composer) ownTime(source string) string {
	at := strings.LastIndex(source, ", ") + len(", ")
	if _, err := time.Parse(time.RFC3339, source[max(0, at):]); at < len(", ") || err != nil {
		return source
	}
	return source[:at] + c.Clock(source[at:])
}
