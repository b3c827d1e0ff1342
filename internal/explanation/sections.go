package explanation

import (
	"strings"

	"tenthpoint/internal/dispute"
	"tenthpoint/internal/message"
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
	c.put(report.Heading{Text: message.New("How far the moisture can be trusted")})
	var said []any
	if s.Tester != "" {
		said = append(said, message.New("Tested by %v on %s.", s.Tester, c.Clock(c.Load.Sampled.At)))
	}
	for _, sentence := range c.Meters {
		said = append(said, sentence)
	}
	for _, flag := range s.Flags {
		said = append(said, message.New("Flag: %s", flag))
	}
	if len(s.Flags) == 0 && s.Moisture != nil {
		said = append(said, message.New("No flag on the reading was written down."))
	}
	for _, a := range c.Load.Accepted {
		said = append(said, message.New("Overridden by %v: %s, %v.", a.Who, a.Limit, a.Accepted.Reason))
	}
	for _, a := range c.Load.Answers {
		said = append(said, message.New("Asked: %s Answered by %v: %s.", a.Asked, a.Who, message.Words(a.Answered.Reason)))
	}
	c.put(report.Para{Text: message.List(" ", said...)})
}

// overDry writes what the load loses by being drier than its base.
func (c *composer) overDry() {
	if c.OverDry == nil {
		return
	}
	var pairs []report.Pair
	for _, s := range []*worksheet.Step{c.OverDry.Equal, c.OverDry.GivenAway, c.OverDry.Quantity, c.OverDry.Worth} {
		if s != nil {
			pairs = append(pairs, report.Pair{Label: s.Label(), Value: message.List(", ", report.Figure(s.Printed()), s.Note())})
		}
	}
	base, _ := c.OverDry.Sheet.Step("overdry.base")
	c.put(report.Heading{Text: message.New("Drier than the base")},
		report.Para{Text: message.New("The dry matter of this load would weigh more at %s, by W × (100 − Mi) ÷ (100 − Mf).", message.Digits(base.Printed()))},
		report.Pairs{Pairs: pairs})
}

// Differences is every line on which two settlements part, in pounds, bushels
// and money.
func Differences(c *settle.Comparison, before, after message.Text) report.Table {
	t := report.Table{Name: message.New("differences"), Empty: message.New("No line differs."), Columns: []report.Column{
		{Title: message.New("Line")}, {Title: before, Align: report.Right}, {Title: after, Align: report.Right}, {Title: message.New("Difference"), Align: report.Right}}}
	for _, l := range c.Changed() {
		cells := []message.Text{l.Label, {}, {}, message.New("not to be compared")}
		if l.Before != nil {
			cells[1] = report.Figure(l.Before.Printed())
		}
		if l.After != nil {
			cells[2] = report.Figure(l.After.Printed())
		}
		if l.Change != nil {
			cells[3] = report.Figure(difference(l.Change))
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
	before, who, at := c.Load.InPlaceOf(), c.Load.Opened.Who, c.Clock(c.Load.Opened.At)
	heading := message.New("What the correction of ticket %d changed", before)
	because := message.New("Corrected because: %v (%v, %s). Both tickets are kept.", c.Load.Why, who, at)
	if c.Load.Reissues > 0 {
		heading = message.New("What is not as on ticket %d, which is void", before)
		because = message.New("Reissued because: %v (%v, %s). Both tickets are kept; only this one counts.", c.Load.Why, who, at)
	}
	c.put(report.Heading{Text: heading}, report.Para{Text: because},
		Differences(c.Correction, message.New("Ticket %d", before), message.New("Ticket %d", c.Load.Number)))
}

func (c *composer) disputes() {
	if len(c.Disputes) == 0 {
		return
	}
	c.put(report.Heading{Text: message.New("Disputes")})
	for _, d := range c.Disputes {
		c.put(report.Pairs{Pairs: DisputePairs(d)})
	}
}

// DisputePairs is the file of a dispute, line by line.
func DisputePairs(d dispute.Dispute) []report.Pair {
	pairs := []report.Pair{
		{Label: message.New("Dispute"), Value: message.New("%v about ticket %d: %s", d.ID, d.Raised.Ticket, string(d.Phase))},
		{Label: message.New("Raised"), Value: message.New("on %s by %v, about %s", d.Raised.Day, d.Raised.By, d.Raised.About)},
		{Label: message.New("Claim"), Value: message.Name(d.Raised.Claim)},
		{Label: message.New("Another test to be asked for by"), Value: d.Raised.Stated(message.New("%s", d.Raised.Due))},
	}
	if s := d.Sent; s != nil {
		sealed := message.New("sealed by %v", s.SealedBy)
		if s.Airtight {
			sealed = message.New("sealed airtight by %v", s.SealedBy)
		}
		pairs = append(pairs, report.Pair{Label: message.New("Sample sent"),
			Value: message.List(", ", s.Day, message.Own(s.Sample), message.New("sent to %v", s.To), sealed, witnessed(s), sentMore(s))})
	}
	if r := d.Resulted; r != nil {
		var figure message.Text
		if r.Figure != nil {
			figure = report.Figure(r.Figure.Written())
		}
		pairs = append(pairs, report.Pair{Label: message.New("Result"),
			Value: message.List(", ", r.Day, message.Own(r.By), message.Own(r.Certificate), figure, message.Own(r.Finding))})
	}
	if e := d.Decided; e != nil {
		outcome := message.New("the ticket stands")
		if !e.Stands {
			outcome = message.New("corrected by ticket %d", e.Corrected)
		}
		pairs = append(pairs, report.Pair{Label: message.New("Decision"), Value: message.List(", ", e.Day, outcome, message.Own(e.Decision))})
	}
	return pairs
}

// sentMore are the seal, the mass, the other half and who pays.
func sentMore(s *dispute.Sent) message.Text {
	var parts []message.Text
	if s.Seal != "" {
		parts = append(parts, message.New("seal %v", s.Seal))
	}
	if quantity.Recorded(s.Mass) {
		parts = append(parts, report.Figure(s.Mass.Written()))
	}
	if s.Half != "" {
		parts = append(parts, message.New("the other half at %v", s.Half))
	}
	if s.FeeBy != "" {
		parts = append(parts, message.New("the test is paid by %v", s.FeeBy))
	}
	return message.Texts(", ", parts)
}

func witnessed(s *dispute.Sent) message.Text {
	if s.Witness == "" {
		return message.Text{}
	}
	return message.New("certified for the grower by %v", s.Witness)
}
