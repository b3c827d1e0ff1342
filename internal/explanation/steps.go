package explanation

import (
	"slices"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/report"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
)

// steps describes the working, each of its sections under a heading.
func (c *composer) steps() report.Steps {
	var out report.Steps
	for _, under := range c.Settlement.Sheet.Sections() {
		out.Steps = append(out.Steps, report.Step{Label: c.printer.Text(under.Title), Part: true})
		for _, s := range under.Steps {
			out.Steps = append(out.Steps, c.step(s))
		}
	}
	return out
}

// step describes one step: in words, in figures, with its reason and its source.
func (c *composer) step(s *worksheet.Step) report.Step {
	out := report.Step{Label: c.printer.Text(s.Label()), Figure: s.PrintedIn(c.printer), Skipped: s.Kind() == worksheet.NotApplied}
	if settle.AwaitsPrice(s) {
		out.Figure = c.printer.Text(c.unpriced(s))
		return out
	}
	if out.Skipped {
		out.Figure = c.printer.Say("nothing")
	}
	if words := s.FormulaIn(c.printer); words != "" && len(s.Uses()) > 0 && words != c.printer.Text(s.Uses()[0].Label()) {
		out.Explain = append(out.Explain, words)
	}
	out.Explain = append(out.Explain, s.ExplainAs(c.printer, s.Note(), worksheet.Unsourced)...)
	if source := c.sourced(s.Source()); source != "" {
		out.Explain = append(out.Explain, source)
	}
	return out
}

// unpriced takes the place of a figure that depends on the price.
func (c *composer) unpriced(s *worksheet.Step) message.Text {
	return c.Load.Details.Under.Remark(s.Note())
}

// sourced returns the source of a step's figure or rule: the row of the rates, quoted once, or the
// law, instrument or person.
func (c *composer) sourced(source message.Text) string {
	if source.IsZero() {
		return ""
	}
	text, line := quote(c.Settlement.Edition, source)
	switch {
	case text == "":
		return c.printer.Say("Source: %s.", source)
	case slices.Contains(c.quoted, line):
		return c.printer.Say("Posted rates, line %d, as above.", line)
	}
	c.quoted = append(c.quoted, line)
	return c.printer.Say("Posted rates, line %d: %s.", line, message.Own(strings.ReplaceAll(text, `"`, "")))
}
