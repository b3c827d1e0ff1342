package daysheet

import (
	"fmt"
	"time"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// exampleMark is printed on every paper of an invented elevator.
const exampleMark = "EXAMPLE - NOT FOR TRADE"

// paper begins a document with the elevator's head.
func paper(p elevator.Profile, title, about string, example bool, day quantity.Date) report.Document {
	d := report.Document{Title: title, About: about, Language: p.Language, Made: morning(day), Footer: orders}
	for _, line := range []string{p.Business, joined(", ", p.Street, p.Town), p.Phone, p.Licence} {
		if line != "" {
			d.House = append(d.House, line)
		}
	}
	if p.Demo || example {
		d.Marks = append(d.Marks, exampleMark)
	}
	return d
}

// orders is printed at the foot of every paper.
const orders = "Every total is the sum of the lines printed above it. Local law, the weights-and-measures authority, " +
	"the licensed weighmaster and the official inspector outrank the program that made this paper."

// morning is the moment a paper about a day is dated.
func morning(day quantity.Date) time.Time {
	return time.Date(day.Year(), time.Month(day.Month()), day.Day(), 0, 0, 0, 0, time.UTC)
}

func joined(between string, parts ...string) string {
	out := ""
	for _, p := range parts {
		if p != "" && out != "" {
			out += between
		}
		out += p
	}
	return out
}

// Compose makes the paper of a day: the part the manager signs, and after it every ticket of the
// day.
func Compose(s Sheet, p elevator.Profile) report.Document {
	d := paper(p, "Day sheet", s.Day.String(), s.Example, s.Day)
	c := composer{Sheet: s, doc: &d}
	if s.Closed == nil {
		d.Marks = append(d.Marks, "DAY NOT CLOSED")
	}
	c.head()
	c.received()
	c.charged()
	c.put(c.hourBars(), c.spreadBars())
	c.places()
	c.dispositions()
	c.position()
	c.numbers()
	c.doubts()
	c.evening()
	c.put(report.Signing{Names: []string{"Manager, full name and signature", "Date"}})
	c.tickets()
	return d
}

// composer writes a day's paper.
type composer struct {
	Sheet
	doc *report.Document
}

func (c *composer) put(blocks ...report.Block) { c.doc.Blocks = append(c.doc.Blocks, blocks...) }

func (c *composer) heading(text string) { c.put(report.Heading{Text: text}) }

func (c *composer) say(format string, args ...any) {
	c.put(report.Para{Text: fmt.Sprintf(format, args...)})
}

func (c *composer) head() {
	pairs := []report.Pair{{Label: "Tickets", Value: c.Numbers.String()}}
	if c.Last > 0 {
		pairs = append(pairs, report.Pair{Label: "Last number before", Value: fmt.Sprint(c.Last)})
	}
	pairs = append(pairs, report.Pair{Label: "Turned away", Value: loads(len(c.Refused))})
	if c.Closed == nil {
		c.put(report.Pairs{Pairs: append(pairs, report.Pair{Label: "Closed", Value: "not yet: figures may still change"})})
		return
	}
	pairs = append(pairs, report.Pair{Label: "Closed by", Value: c.Closed.By + ", " + c.Closed.At, Own: true})
	if c.Closed.Remark != "" {
		pairs = append(pairs, report.Pair{Label: "Remark", Value: c.Closed.Remark, Own: true})
	}
	if c.Closed.Head != "" {
		pairs = append(pairs, report.Pair{Label: "Head of the book", Value: c.Closed.Head, Own: true})
	}
	if e := c.Closed.Explained; e != nil {
		pairs = append(pairs, report.Pair{Label: "Entered later, explained", Value: e.Reason + " (" + e.By + ", " + e.At + ")", Own: true})
	}
	c.put(report.Pairs{Pairs: pairs})
	if c.Closed.Differs {
		c.put(report.Para{Strong: true, Text: "THIS IS NOT THE SHEET THAT WAS CLOSED. The book gives other figures for this day now than in the evening it was closed. " +
			"Check the book (tenth verify) and go back to a backup before anybody signs."})
	}
	if c.Closed.Late {
		c.put(report.Para{Strong: true, Text: "SOMETHING ENTERED LATER COUNTS ON THIS DAY OR BEFORE IT. The sheet is the one that was closed. A manager has to explain what came later (tenth day explain)."})
	}
}

func loads(n int) string {
	switch n {
	case 0:
		return "no load"
	case 1:
		return "1 load"
	}
	return fmt.Sprintf("%d loads", n)
}
