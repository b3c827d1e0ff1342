package daysheet

import (
	"fmt"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// paper begins a document with the elevator's head; what was settled by example rates is an example.
func paper(p elevator.Profile, title, about message.Text, example bool, day quantity.Date) report.Document {
	d := report.Of(p, day)
	d.Title, d.About, d.Footer = title, about, orders
	if example {
		d.MarkExample()
	}
	return d
}

// orders is printed at the foot of every paper.
var orders = law.ToConfirm(message.New("Every total is the sum of the lines printed above it. Local law, the weights-and-measures authority, " +
	"the licensed weighmaster and the official inspector outrank the program that made this paper."))

// Compose makes the paper of a day: the part the manager signs, and after it every ticket of the
// day.
func Compose(s Sheet, p elevator.Profile) report.Document {
	d := paper(p, message.New("Day sheet"), message.Name(s.Day.String()), s.Example, s.Day)
	c := composer{Sheet: s, doc: &d}
	if s.Closed == nil {
		d.Marks = append(d.Marks, message.New("DAY NOT CLOSED"))
	}
	c.head()
	c.received()
	c.charged()
	c.put(c.HourBars(), c.SpreadBars())
	c.places()
	c.dispositions()
	c.position()
	c.numbers()
	c.doubts()
	c.evening()
	c.put(report.Signing{Names: []message.Text{message.New("Manager, full name and signature"), message.New("Date")}})
	c.tickets()
	return d
}

// composer writes a day's paper.
type composer struct {
	Sheet
	doc *report.Document
}

func (c *composer) put(blocks ...report.Block) { c.doc.Blocks = append(c.doc.Blocks, blocks...) }

func (c *composer) heading(text message.Text) { c.put(report.Heading{Text: text}) }

func (c *composer) say(text message.Text) { c.put(report.Para{Text: text}) }

func (c *composer) head() {
	pairs := []report.Pair{{Label: message.New("Tickets"), Value: c.Numbers.Message()}}
	if c.Last > 0 {
		pairs = append(pairs, report.Pair{Label: message.New("Last number before"), Value: message.Name(fmt.Sprint(c.Last))})
	}
	pairs = append(pairs, report.Pair{Label: message.New("Rejected"), Value: loads(len(c.Refused))})
	if c.Closed == nil {
		c.put(report.Pairs{Pairs: append(pairs, report.Pair{Label: message.New("Closed"), Value: message.New("not yet: figures may still change")})})
		return
	}
	pairs = append(pairs, report.Pair{Label: message.New("Closed by"), Value: message.Name(c.Closed.By + ", " + c.Closed.At)})
	if c.Closed.Remark != "" {
		pairs = append(pairs, report.Pair{Label: message.New("Remark"), Value: message.Name(c.Closed.Remark)})
	}
	if c.Closed.Head != "" {
		pairs = append(pairs, report.Pair{Label: message.New("Head of the book"), Value: message.Name(c.Closed.Head)})
	}
	if !c.Closed.Vouched.IsZero() {
		pairs = append(pairs, report.Pair{Label: message.New("Signature"), Value: c.Closed.Vouched})
	}
	if e := c.Closed.Explained; e != nil {
		pairs = append(pairs, report.Pair{Label: message.New("Entered later, explained"), Value: message.Name(e.Reason + " (" + e.By + ", " + e.At + ")")})
	}
	c.put(report.Pairs{Pairs: pairs})
	if c.Closed.Differs {
		c.put(report.Para{Strong: true, Text: message.New("THIS IS NOT THE SHEET THAT WAS CLOSED. The book gives other figures for this day now than in the evening it was closed. " +
			"Check the book (tenth verify) and go back to a backup before anybody signs.")})
	}
	if c.Closed.Late {
		c.put(report.Para{Strong: true, Text: message.New("SOMETHING ENTERED LATER COUNTS ON THIS DAY OR BEFORE IT. The sheet is the one that was closed. A manager has to explain what came later (tenth day explain).")})
	}
}

func loads(n int) message.Text {
	if n == 0 {
		return message.New("no load")
	}
	return message.Count(n, "%d load", "%d loads")
}
