package checker

import (
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
)

// shown is everything about a settlement: its curve, what other figures would have made, its working.
func (c *Checker) shown(s *sheet, a ask, settled *settle.Settlement) {
	c.others(s, a, settled)
	curve(s, a, settled)
	working(s, settled)
}

// working is the whole calculation, step by step, with the lines of the rates quoted.
func working(s *sheet, settled *settle.Settlement) {
	s.put(`<details open><summary>%s</summary>`, s.Say("The whole working"))
	s.put(`<p>%s</p>`, s.Say("By rates %v, in force %s, SHA-256 %v; engine %d.", settled.Edition.ID, settled.Edition.Days(), settled.Edition.Hash, int(settled.Engine)))
	quote := quoter{edition: settled.Edition, lines: strings.Split(string(settled.Edition.Text), "\n")}
	for _, part := range settled.Sheet.Sections() {
		s.put(`<h3>%s</h3><ol class="steps">`, s.printer.Text(part.Title))
		for _, step := range part.Steps {
			figure := step.PrintedIn(s.printer)
			if step.Kind() == worksheet.NotApplied {
				figure = s.Say("nothing")
			}
			s.put(`<li><span>%s</span> <b>%s</b>`, s.printer.Text(step.Label()), figure)
			if words := step.FormulaIn(s.printer); words != "" && len(step.Uses()) > 0 {
				s.put(`<small>%s</small>`, words)
			}
			for _, line := range step.ExplainAs(s.printer, step.Note(), worksheet.Unsourced) {
				s.put(`<small>%s</small>`, line)
			}
			if source := quote.of(s, step.Source()); source != "" {
				s.put(`<small>%s</small>`, source)
			}
			s.put(`</li>`)
		}
		s.put(`</ol>`)
	}
	s.put(`</details>`)
}

// quoter quotes the lines of an edition.
type quoter struct {
	edition *rates.Edition
	lines   []string
}

func (q quoter) of(s *sheet, source message.Text) string {
	if source.IsZero() {
		return ""
	}
	at, found := q.edition.LineOf(source)
	if !found || at < 1 || at > len(q.lines) {
		return s.Say("Source: %s.", source)
	}
	return s.Say("Posted rates, line %d: %s.", at, message.Own(strings.TrimSpace(q.lines[at-1])))
}

// tenth is the step that moistures are recorded by.
var tenth = quantity.Of("0.1", quantity.Percent)

// other is the same load settled with one thing changed.
type other struct {
	name    message.Text
	settled *settle.Settlement
	refused string
}

// others are the what-ifs: another tenth, another edition and the pure water formula.
func (c *Checker) others(s *sheet, a ask, settled *settle.Settlement) {
	try := func(name message.Text, f settle.Facts, e *rates.Edition) other {
		again, err := a.engine.Settle(f, e)
		if err != nil {
			return other{name: name, refused: s.printer.Error(err)}
		}
		return other{name: name, settled: again}
	}
	at := settled.Moisture.Value()
	with := func(m quantity.Amount) settle.Facts {
		f := a.facts
		f.Moisture = settle.Reading{Percent: m, Source: message.New("what if")}
		return f
	}
	all := []other{
		{name: message.New("this ticket"), settled: settled},
		try(message.New("a tenth drier"), with(at.Sub(tenth)), settled.Edition),
		try(message.New("a tenth wetter"), with(at.Add(tenth)), settled.Edition),
		try(message.New("the pure water formula"), a.facts, rates.PureWater(settled.Edition)),
	}
	for _, e := range c.editions() {
		if e.Commodity.ID == settled.Edition.Commodity.ID && e.Hash != settled.Edition.Hash && e.Units.Settle == settled.Edition.Units.Settle {
			all = append(all, try(message.New("edition %v, in force %s", e.ID, e.Days()), a.facts, e.By(tablesOn(e.Units.Weight == quantity.Kg, e.From))))
		}
	}
	s.head(s.Say("What another figure would have made"), s.Say("If"), s.Say("Moisture"), s.Say("Settled"), s.Say("Quantity"), s.Say("Payable"), s.Say("Difference"))
	own := a.result(settled)
	for _, o := range all {
		if o.settled == nil {
			s.put(`<tr><th scope="row">%s</th><td colspan="5">%s</td></tr>`, s.printer.Text(o.name), o.refused)
			continue
		}
		s.row(s.printer.Text(o.name), o.settled.Moisture.PrintedIn(s.printer), a.printed(s, o.settled, settle.LineSettled), a.printed(s, o.settled, settle.LineQuantity),
			a.printed(s, o.settled, settle.LinePayable), difference(s, own, a.result(o.settled)))
	}
	s.foot()
}

// printed is a line of a settlement; empty where it awaits a price.
func (a ask) printed(s *sheet, of *settle.Settlement, line string) string {
	step, ok := of.Sheet.Step(a.mine(line))
	if !ok || step.Kind() == worksheet.NotApplied {
		return "–"
	}
	return step.PrintedIn(s.printer)
}

// result is the figure of the load: what is payable, or the quantity while there is no price.
func (a ask) result(of *settle.Settlement) *worksheet.Step {
	if step, ok := of.Sheet.Step(a.mine(settle.LinePayable)); ok && step.Kind() != worksheet.NotApplied {
		return step
	}
	step, _ := of.Sheet.Step(a.mine(settle.LineQuantity))
	return step
}

func difference(s *sheet, from, to *worksheet.Step) string {
	if from == nil || to == nil || from.Value().Unit() != to.Value().Unit() {
		return "–"
	}
	d := to.Value().Sub(from.Value())
	if d.Sign() > 0 {
		return "+" + s.Say("%s", d)
	}
	return s.Say("%s", d)
}

// nameOf is the name of a grain.
func nameOf(s *sheet, e *rates.Edition) string { return s.printer.Word(grain.NameOf(e.Commodity.ID)) }
