package explanation

import (
	"fmt"
	"strings"

	"tenthpoint/internal/dispute"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
)

// bench writes how the moisture was tested.
func (c *composer) bench() {
	s := c.Load.Sample
	if s.Moisture == nil && len(c.Meters) == 0 {
		return
	}
	c.put(report.Heading{Text: "How far the moisture can be trusted"})
	var said []string
	if s.Tester != "" {
		said = append(said, fmt.Sprintf("Tested by %s on %s.", s.Tester, c.Clock(c.Load.Sampled.At)))
	}
	said = append(said, c.Meters...)
	for _, flag := range s.Flags {
		_, sentence, found := strings.Cut(flag, ": ")
		if !found {
			sentence = flag
		}
		said = append(said, "Doubt: "+sentence)
	}
	if len(s.Flags) == 0 && s.Moisture != nil {
		said = append(said, "No doubt about the reading was written down.")
	}
	for _, a := range c.Load.Accepted {
		said = append(said, fmt.Sprintf("Let through by %s: %s, %s.", a.Who, a.Limit, a.Accepted.Reason))
	}
	for _, a := range c.Load.Answers {
		said = append(said, fmt.Sprintf("Asked: %s Answered by %s: %s.", a.Asked, a.Who, a.Answered.Reason))
	}
	c.put(report.Para{Text: strings.Join(said, " ")})
}

// overDry writes what the load loses by being drier than its base.
func (c *composer) overDry() {
	if c.OverDry == nil {
		return
	}
	var pairs []report.Pair
	for _, s := range []*worksheet.Step{c.OverDry.Equal, c.OverDry.GivenAway, c.OverDry.Quantity, c.OverDry.Worth} {
		if s != nil {
			pairs = append(pairs, report.Pair{Label: s.Label().String(), Value: joined(", ", s.Printed(), s.Note().String())})
		}
	}
	base, _ := c.OverDry.Sheet.Step("overdry.base")
	c.put(report.Heading{Text: "Drier than the base"},
		report.Para{Text: fmt.Sprintf("The dry matter of this load would weigh more at %s, by W × (100 − Mi) ÷ (100 − Mf).", base.Printed())},
		report.Pairs{Pairs: pairs})
}

// Differences is every line on which two settlements part, in pounds, bushels
// and money.
func Differences(c *settle.Comparison, before, after string) report.Table {
	t := report.Table{Name: "differences", Empty: "No line differs.", Columns: []report.Column{
		{Title: "Line"}, {Title: before, Align: report.Right}, {Title: after, Align: report.Right}, {Title: "Difference", Align: report.Right}}}
	for _, l := range c.Changed() {
		cells := []string{l.Label.String(), "", "", "not to be compared"}
		if l.Before != nil {
			cells[1] = l.Before.Printed()
		}
		if l.After != nil {
			cells[2] = l.After.Printed()
		}
		if l.Change != nil {
			cells[3] = difference(l.Change)
		}
		t.Rows = append(t.Rows, report.Row{Cells: cells})
	}
	return t
}

// difference is a change as it prints. The difference of two percents is in
// points.
func difference(s *worksheet.Step) string {
	text := s.Printed()
	if s.Value().Unit() == quantity.Percent {
		text = strings.TrimSuffix(text, "%") + "pt"
	}
	return signed(s.Value(), text)
}

func (c *composer) correction() {
	if c.Correction == nil {
		return
	}
	heading, because := "What the correction of ticket %d changed", "Corrected because: %s (%s, %s). Both tickets are kept."
	if c.Load.Reissues > 0 {
		heading, because = "What is not as on ticket %d, which is void", "Reissued because: %s (%s, %s). Both tickets are kept; only this one counts."
	}
	before := c.Load.InPlaceOf()
	c.put(report.Heading{Text: fmt.Sprintf(heading, before)},
		report.Para{Text: fmt.Sprintf(because, c.Load.Why, c.Load.Opened.Who, c.Clock(c.Load.Opened.At))},
		Differences(c.Correction, fmt.Sprintf("Ticket %d", before), fmt.Sprintf("Ticket %d", c.Load.Number)))
}

func (c *composer) disputes() {
	if len(c.Disputes) == 0 {
		return
	}
	c.put(report.Heading{Text: "Disputes"})
	for _, d := range c.Disputes {
		c.put(report.Pairs{Pairs: DisputePairs(d)})
	}
}

// DisputePairs is the file of a dispute, line by line.
func DisputePairs(d dispute.Dispute) []report.Pair {
	pairs := []report.Pair{
		{Label: "Dispute", Value: fmt.Sprintf("%s about ticket %d: %s", d.ID, d.Raised.Ticket, d.Phase)},
		{Label: "Raised", Value: fmt.Sprintf("on %s by %s, about %s", d.Raised.Day, d.Raised.By, d.Raised.About)},
		{Label: "Claim", Value: d.Raised.Claim, Own: true},
		{Label: "Another test to be asked for by", Value: d.Raised.Due.String()},
	}
	if s := d.Sent; s != nil {
		sealed := "sealed by " + s.SealedBy
		if s.Airtight {
			sealed = "sealed airtight by " + s.SealedBy
		}
		pairs = append(pairs, report.Pair{Label: "Sample sent", Value: joined(", ", s.Day.String(), s.Sample, "sent to "+s.To, sealed, witnessed(s), sentMore(s))})
	}
	if r := d.Resulted; r != nil {
		figure := ""
		if r.Figure != nil {
			figure = r.Figure.Written()
		}
		pairs = append(pairs, report.Pair{Label: "Result", Value: joined(", ", r.Day.String(), r.By, r.Certificate, figure, r.Finding)})
	}
	if e := d.Decided; e != nil {
		outcome := "the ticket stands"
		if !e.Stands {
			outcome = fmt.Sprintf("corrected by ticket %d", e.Corrected)
		}
		pairs = append(pairs, report.Pair{Label: "Decision", Value: joined(", ", e.Day.String(), outcome, e.Decision)})
	}
	return pairs
}

// sentMore are the seal, the mass, the other half and who pays.
func sentMore(s *dispute.Sent) string {
	var parts []string
	if s.Seal != "" {
		parts = append(parts, "seal "+s.Seal)
	}
	if quantity.Recorded(s.Mass) {
		parts = append(parts, s.Mass.Written())
	}
	if s.Half != "" {
		parts = append(parts, "the other half at "+s.Half)
	}
	if s.FeeBy != "" {
		parts = append(parts, "the test is paid by "+s.FeeBy)
	}
	return strings.Join(parts, ", ")
}

func witnessed(s *dispute.Sent) string {
	if s.Witness == "" {
		return ""
	}
	return "certified for the grower by " + s.Witness
}
