package checker

import (
	"encoding/hex"
	"fmt"
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/scaleticket/barcode"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/slipcode"
)

// Check answers for the text of a slip's code.
func (c *Checker) Check(language, text string) string {
	s := c.sheet(language)
	text = strings.TrimSpace(text)
	if text == "" {
		s.box(warn, s.Say("No square was found"), s.Say("Take the picture again: the whole square with white around it, straight and in good light. Or type the figures from the slip below."))
		return s.String()
	}
	if old, err := barcode.ParsePayload(text); err == nil {
		older(s, old)
		return s.String()
	}
	code, err := slipcode.Parse(text)
	if err != nil {
		s.box(wrong, s.Say("This code cannot be checked"), sentence(s.printer.Error(err)))
		return s.String()
	}
	c.signature(s, code)
	c.inBook(s, code)
	said(s, code)
	e, found := c.editionOf(code)
	switch {
	case !found:
		s.box(warn, s.Say("The rates of this ticket are not in this page"),
			s.Say("The ticket was settled by an edition whose SHA-256 begins with %v. Ask the elevator for its posted file, open it below, and read the code again.", hex.EncodeToString(code.Edition[:])))
	case !code.Left.IsWhole():
		s.box(warn, s.Say("The code does not hold everything"), leftOut(s, code.Left))
	default:
		c.again(s, code, e)
	}
	cautions(s)
	return s.String()
}

// sentence begins with a capital and ends with a stop.
func sentence(text string) string {
	if text == "" {
		return ""
	}
	text = strings.ToUpper(text[:1]) + text[1:]
	if strings.HasSuffix(text, ".") {
		return text
	}
	return text + "."
}

// older tells of a code of the first format, which settles nothing.
func older(s *sheet, p barcode.Payload) {
	s.box(warn, s.Say("This slip has the older code"),
		s.Say("It says a few figures and not what they were worked out from, and nobody signed it. Hold these figures against the slip, and type what the slip says below to settle it again."))
	figure := func(a message.Sayable) string { return s.printer.Text(a) }
	s.pairs([2]string{s.Say("Ticket"), fmt.Sprint(p.Ticket)}, [2]string{s.Say("Net"), figure(message.New("%s", p.Net))},
		[2]string{s.Say("Moisture"), figure(message.New("%s", p.Moisture))}, [2]string{s.Say("Quantity"), figure(message.New("%s", p.Dry))}, [2]string{s.Say("Code"), p.Code})
}

// said are the facts of a code, as the slip should have them.
func said(s *sheet, c slipcode.Code) {
	s.put(`<section><h2>%s</h2>`, s.Say("What the code says"))
	all := [][2]string{
		{s.Say("Ticket"), fmt.Sprint(c.Ticket)}, {s.Say("Day"), c.Day.String()}, {s.Say("Grain"), s.printer.Word(grain.NameOf(c.Grain))},
		{s.Say("Net"), s.Say("%s", c.Net())}, {s.Say("Moisture"), s.Say("%s", c.Moisture)},
	}
	if c.Price != nil {
		all = append(all, [2]string{s.Say("Price"), s.Say("%s", *c.Price)})
	}
	if c.Owner > 0 && c.Owner <= len(c.Owners) {
		o := c.Owners[c.Owner-1]
		all = append(all, [2]string{s.Say("Whose slip"), s.Say("owner %d, %s of %s", c.Owner, o.Parts, o.Of)})
	}
	all = append(all, [2]string{s.Say("Code"), c.FindCode()})
	s.pairs(all...)
	if c.NoMoney {
		s.put(`<p>%s</p>`, s.Say("This is the driver's copy: prices and money were left out on purpose."))
	}
	if c.Left != (slipcode.Left{}) {
		s.put(`<p>%s</p>`, leftOut(s, c.Left))
	}
	s.put(`</section>`)
}

// leftOut says what a code had no room for.
func leftOut(s *sheet, l slipcode.Left) string {
	var what []any
	if l.Owners {
		what = append(what, message.New("the parts of the owners"))
	}
	if l.Sample {
		what = append(what, message.New("the results of the sample besides moisture"))
	}
	if l.Lines > 0 {
		what = append(what, message.Count(l.Lines, "%d line of the settlement", "%d lines of the settlement"))
	}
	text := s.Say("There was no room in the code for: %s.", message.List(", ", what...))
	if !l.IsWhole() {
		text += " " + s.Say("Type the figures from the slip below to settle the ticket again.")
	}
	return text
}

// again settles the ticket by its own engine and shows all of it.
func (c *Checker) again(s *sheet, code slipcode.Code, e *rates.Edition) {
	t, known := tables(code)
	if !known {
		s.box(warn, s.Say("Recorded by rules that this page does not have"), s.Say("The rules of its day were taken instead. Where a result was recorded otherwise, a line below may differ."))
	}
	e = e.By(t)
	settled, err := code.Settle(e)
	if err != nil {
		s.box(wrong, s.Say("The ticket cannot be settled again"), sentence(s.printer.Error(err)))
		return
	}
	lines := code.Compare(settled)
	differ := 0
	for _, l := range lines {
		if !l.IsSame() {
			differ++
		}
	}
	switch {
	case differ > 0:
		s.box(wrong, s.Say("The slip does not say what its facts give"), s.printer.Text(message.Count(differ, "%d line differs; it is marked below.", "%d lines differ; they are marked below.")),
			s.Say("Ask the elevator for the ticket's proof, and keep this slip."))
	default:
		s.box(good, s.Say("Every line is the same"), s.printer.Text(message.Count(len(lines), "%d line of the slip was worked again from its weights, results and the posted rates.", "%d lines of the slip were worked again from its weights, results and the posted rates.")),
			s.Say("Hold the paper beside the figures below: they are what the code says."))
	}
	compared(s, lines)
	s.put(`<div id="more"></div>`)
}

// More is the what-ifs of a ticket that can be settled again, and its whole
// working. It belongs into the answer of [Checker.Check]; worked out apart, so that nobody waits for
// it who only wants to know whether the slip is right.
func (c *Checker) More(language, text string) string {
	s := c.sheet(language)
	code, err := slipcode.Parse(strings.TrimSpace(text))
	if err != nil {
		return ""
	}
	e, found := c.editionOf(code)
	if !found {
		return ""
	}
	t, _ := tables(code)
	settled, err := code.Settle(e.By(t))
	if err != nil {
		return ""
	}
	c.shown(s, ask{engine: settled.Engine, facts: code.Facts(), owner: code.Owner}, settled)
	return s.String()
}

// compared are the lines of the slip beside those worked again.
func compared(s *sheet, lines []slipcode.Compared) {
	s.head(s.Say("Line by line"), s.Say("Line"), s.Say("The slip says"), s.Say("Worked again"), "")
	for _, l := range lines {
		label, worked, is := s.printer.Text(l.Label()), "", s.Say("not the same")
		if l.Step != nil {
			label, worked = s.printer.Text(l.Step.Label()), l.Step.PrintedIn(s.printer)
		}
		if l.IsSame() {
			is = s.Say("same")
			s.row(label, worked, worked, is)
			continue
		}
		s.put(`<tr class="differs">`)
		s.put(`<th scope="row">%s</th><td>%s</td><td>%s</td><td>✗ %s</td></tr>`, label, s.Say("%s", l.Said), worked, is)
	}
	s.foot()
}

// ask is the settlement asked for: by which engine, of which facts, for whom.
type ask struct {
	engine settle.Engine
	facts  settle.Facts
	owner  int
}

// mine is a line of the whole load, or that of the owner whose slip it is.
func (a ask) mine(line string) string {
	if a.owner > 0 {
		return settle.OwnLine(a.owner, line)
	}
	return line
}

// cautions are what a check does not say.
func cautions(s *sheet) {
	s.put(`<section><h2>%s</h2><ul>`, s.Say("What this does not say"))
	for _, text := range []string{
		s.Say("The elevator's moisture meter is no official test. This page works with the figures of the slip; whether they are right it cannot know."),
		s.Say("Another test can be asked for while the sample is kept: the slip has its day. Ask the elevator, or the official inspection agency of your place."),
		s.Say("A square can be copied from one paper to another: compare number, day and weights with your own slip."),
		s.Say("Local law and the weights and measures authority outrank this page. Confirm locally."),
	} {
		s.put(`<li>%s</li>`, text)
	}
	s.put(`</ul></section>`)
}
