package explanation

import (
	"time"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/i18n"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/report"
	"tenthpoint/internal/settle"
)

// Compose makes the proof of a ticket.
func Compose(f Facts) report.Document {
	c := composer{Facts: f, printer: i18n.In(f.House.Language)}
	c.doc = report.Document{
		House: report.Letterhead(f.House), Language: f.House.Language, Title: message.New("Proof of ticket %d", f.Load.Number), About: c.about(), Marks: c.marks(), Made: c.made(),
		Footer: message.New("Figures are exact decimals; each is rounded once, where the line says so. This paper is the ticket's own working and no certificate."),
	}
	c.who()
	c.result()
	c.put(report.Para{Text: message.New("Below is every step in the order it was done. Each uses the figures printed above it, so it can be done again with a pocket calculator. " +
		"A rule that was looked at and changed nothing stands there too, with its reason.")})
	c.put(c.steps())
	c.bench()
	c.overDry()
	c.whatIfs()
	c.correction()
	c.disputes()
	c.byHand()
	return c.doc
}

type composer struct {
	Facts
	doc     report.Document
	printer *message.Printer // for the steps, which are translated part by part
	quoted  []int            // lines of the edition quoted so far
}

func (c *composer) put(blocks ...report.Block) { c.doc.Blocks = append(c.doc.Blocks, blocks...) }

func (c *composer) about() message.Text {
	d := c.Load.Details
	if d.Direction == load.Outbound {
		return message.New("%s, taken out on %s by %v", grain.NameOf(d.Commodity), d.Day, d.Grower.Name)
	}
	return message.New("%s, delivered on %s by %v", grain.NameOf(d.Commodity), d.Day, d.Grower.Name)
}

func (c *composer) marks() []message.Text {
	var out []message.Text
	if e := c.Settlement.Edition; c.House.Demo || e != nil && e.Status == rates.Example {
		out = append(out, report.ExampleMark)
	}
	switch c.Load.Phase {
	case load.Void:
		out = append(out, message.New("VOID"))
	case load.Corrected:
		out = append(out, message.New("CORRECTED BY TICKET %d", c.Load.Ended.By))
	}
	if by := c.Load.Reissue.By; by > 0 {
		out = append(out, message.New("REISSUED AS TICKET %d", by))
	}
	switch {
	case c.Load.Corrects > 0:
		out = append(out, message.New("CORRECTS TICKET %d", c.Load.Corrects))
	case c.Load.Reissues > 0:
		out = append(out, message.New("IN PLACE OF TICKET %d", c.Load.Reissues))
	}
	return out
}

// made returns the time the ticket was issued: the paper covers nothing later, except the status of
// its disputes.
func (c *composer) made() time.Time {
	at, err := time.Parse(time.RFC3339, c.Load.Issued.At)
	if err != nil {
		return time.Time{}
	}
	return at
}

func (c *composer) who() {
	l := c.Load
	pairs := []report.Pair{
		{Label: message.New("Issued"), Value: message.New("%s by %v, counts on %s", c.Clock(l.Issued.At), l.Weigher, l.IssuedDay)},
		{Label: message.New("Truck"), Value: message.Names(", ", []string{l.Details.Truck.ID, l.Details.Truck.Plate, l.Details.Truck.Trailer})},
		{Label: message.New("Retained sample"), Value: c.retained()},
		{Label: message.New("Check code"), Value: message.Name(c.Code)},
	}
	if e := c.Settlement.Edition; e != nil {
		pairs = append(pairs, report.Pair{Label: message.New("Posted rates"), Value: message.New("%v, %q, in force %s", e.ID, e.Title, e.Days())},
			report.Pair{Label: message.New("Rates from"), Value: message.List("; ", message.Own(e.Origin.By), message.Own(e.Origin.Document), issued(e))},
			report.Pair{Label: message.New("SHA-256 of the rates"), Value: message.Name(e.Hash)})
	}
	c.put(report.Pairs{Pairs: pairs})
}

func issued(e *rates.Edition) message.Text {
	if e.Origin.Issued.IsZero() {
		return message.Text{}
	}
	return message.New("issued %s", e.Origin.Issued)
}

func (c *composer) retained() message.Text {
	s := c.Load.Sample
	if s.Kept == "" {
		return message.New("not kept")
	}
	return message.List(", ", message.Own(s.Number), message.Own(s.Kept), message.New("kept through %s", s.Until))
}

// money are the lines of money that the ticket's engine has.
func (c *composer) money() []string {
	if c.Settlement.Charges != nil {
		return []string{settle.LineCharges, settle.LinePayable}
	}
	return []string{settle.LineDiscounts, settle.LinePremiums, settle.LineServices, settle.LinePayable}
}

// result is the ticket in one line of figures.
func (c *composer) result() {
	var pairs []report.Pair
	for _, id := range append([]string{settle.LineNet, settle.LineMoisture, settle.LineSettled, settle.LineQuantity}, c.money()...) {
		s, ok := c.Settlement.Sheet.Step(id)
		if !ok {
			continue
		}
		value := report.Figure(c.side(id).written(s.Value(), s.Printed()))
		if settle.AwaitsPrice(s) {
			value = c.unpriced(s)
		}
		pairs = append(pairs, report.Pair{Label: s.Label(), Value: value})
	}
	c.put(report.Heading{Text: message.New("What the ticket says")}, report.Pairs{Pairs: pairs})
	if c.Settlement.Engine.HasTitles() {
		c.put(report.Para{Text: message.New("Here, and where other figures are set beside the ticket's, + is to the owner and - from the owner, in weight and in money. A step has the size alone, and says in words what it is.")})
	}
}
