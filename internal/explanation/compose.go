package explanation

import (
	"fmt"
	"strings"
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
		House: letterhead(f), Language: f.House.Language, Title: fmt.Sprintf("Proof of ticket %d", f.Load.Number), About: c.about(), Marks: c.marks(), Made: c.made(),
		Footer: "Figures are exact decimals; each is rounded once, where the line says so. This paper is the ticket's own working and no certificate.",
	}
	c.who()
	c.result()
	c.put(report.Para{Text: "Below is every step in the order it was done. Each uses the figures printed above it, so it can be done again with a pocket calculator. " +
		"A rule that was looked at and changed nothing stands there too, with its reason."})
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

func letterhead(f Facts) []string {
	var out []string
	for _, line := range []string{f.House.Business, joined(", ", f.House.Street, f.House.Town), f.House.Phone, f.House.Licence} {
		if line != "" {
			out = append(out, line)
		}
	}
	return out
}

func joined(between string, parts ...string) string {
	var some []string
	for _, p := range parts {
		if p != "" {
			some = append(some, p)
		}
	}
	return strings.Join(some, between)
}

func (c *composer) about() string {
	d := c.Load.Details
	way := "delivered"
	if d.Direction == load.Outbound {
		way = "taken out"
	}
	return fmt.Sprintf("%s, %s on %s by %s", commodity(d.Commodity), way, d.Day, d.Grower.Name)
}

func commodity(id string) string {
	if c, err := grain.ByID(id); err == nil {
		return c.Name
	}
	return id
}

func (c *composer) marks() []string {
	var out []string
	if e := c.Settlement.Edition; c.House.Demo || e != nil && e.Status == rates.Example {
		out = append(out, "EXAMPLE - NOT FOR TRADE")
	}
	switch c.Load.Phase {
	case load.Void:
		out = append(out, "VOID")
	case load.Corrected:
		out = append(out, fmt.Sprintf("CORRECTED BY TICKET %d", c.Load.Ended.By))
	}
	if by := c.Load.Again.By; by > 0 {
		out = append(out, fmt.Sprintf("REISSUED AS TICKET %d", by))
	}
	switch {
	case c.Load.Corrects > 0:
		out = append(out, fmt.Sprintf("CORRECTS TICKET %d", c.Load.Corrects))
	case c.Load.Reissues > 0:
		out = append(out, fmt.Sprintf("IN PLACE OF TICKET %d", c.Load.Reissues))
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
		{Label: "Issued", Value: fmt.Sprintf("%s by %s, counts on %s", c.Clock(l.Issued.At), l.Weigher, l.IssuedDay)},
		{Label: "Truck", Value: joined(", ", l.Details.Truck.ID, l.Details.Truck.Plate, l.Details.Truck.Trailer), Own: true},
		{Label: "Retained sample", Value: c.retained()},
		{Label: "Check code", Value: c.Code, Own: true},
	}
	if e := c.Settlement.Edition; e != nil {
		pairs = append(pairs, report.Pair{Label: "Posted rates", Value: fmt.Sprintf("%s, %q, in force %s", e.ID, e.Title, e.Period())},
			report.Pair{Label: "Rates from", Value: joined("; ", e.Origin.By, e.Origin.Document, c.printer.Text(issued(e))), Own: true},
			report.Pair{Label: "SHA-256 of the rates", Value: e.Hash, Own: true})
	}
	c.put(report.Pairs{Pairs: pairs})
}

func issued(e *rates.Edition) message.Text {
	if e.Origin.Issued.IsZero() {
		return message.Text{}
	}
	return message.New("issued %s", e.Origin.Issued)
}

func (c *composer) retained() string {
	s := c.Load.Sample
	if s.Kept == "" {
		return "not kept"
	}
	return joined(", ", s.Number, s.Kept, "kept through "+s.Until.String())
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
		value := s.Printed()
		if settle.AwaitsPrice(s) {
			value = c.unpriced(s).String()
		}
		pairs = append(pairs, report.Pair{Label: s.Label().String(), Value: value})
	}
	c.put(report.Heading{Text: "What the ticket says"}, report.Pairs{Pairs: pairs})
}
