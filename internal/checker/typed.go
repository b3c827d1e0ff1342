package checker

import (
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/slipcode"
)

// field is one box of the form.
type field struct {
	id, label string
	unit      string
	yesNo     bool
	must      bool
	words     bool // more than one figure
}

// Form is the boxes of the calculator for an edition, by its hash.
func (c *Checker) Form(language, edition string) string {
	s := c.sheet(language)
	e, ok := c.edition(edition)
	if !ok {
		return ""
	}
	s.boxes(fields(s, e))
	s.put(`<details><summary>%s</summary>`, s.Say("A trailer weighed apart, or several owners"))
	s.boxes(seldomFields(s, e))
	s.put(`</details><fieldset><legend>%s</legend>`, s.Say("What the slip says (may stay empty)"))
	s.boxes(saidFields(s, e))
	s.put(`</fieldset>`)
	return s.String()
}

func (s *sheet) boxes(fields []field) {
	for _, f := range fields {
		if f.yesNo {
			s.put(`<label class="tick"><input type="checkbox" name="%s" value="yes"> %s</label>`, f.id, f.label)
			continue
		}
		mode, required := "decimal", ""
		if f.words {
			mode = "text"
		}
		if f.must {
			required = ` required`
		}
		s.put(`<label>%s <span class="unit">%s</span><input name="%s" inputmode="%s" autocomplete="off"`+required+`></label>`, f.label, f.unit, f.id, mode)
	}
}

// The ids of the boxes that every grain has.
const (
	grossBox, tareBox, moistureBox, priceBox = "gross", "tare", "moisture", "price"
	factorBox, saidBox                       = "factor.", "said."
)

func fields(s *sheet, e *rates.Edition) []field {
	weight := e.Units.Weight.String()
	out := []field{
		{id: grossBox, label: s.Say("Gross, the truck full"), unit: weight, must: true},
		{id: tareBox, label: s.Say("Tare, the truck empty"), unit: weight, must: true},
		{id: moistureBox, label: s.Say("Moisture"), unit: "%", must: true},
		{id: priceBox, label: s.Say("Price"), unit: quantity.Dollar.Per(e.Units.Settle).String()},
	}
	for _, f := range asked(e) {
		out = append(out, field{id: factorBox + string(f.ID), label: s.printer.Word(f.Name), unit: f.Unit.String(), yesNo: f.YesNo})
	}
	return out
}

// asked are the factors besides moisture that the edition's rules look at.
func asked(e *rates.Edition) []grain.Factor {
	var out []grain.Factor
	if dockage, has := e.Commodity.Dockage(); has {
		out = append(out, dockage)
	}
	for _, d := range e.Discounts {
		if d.Factor.ID != grain.Moisture {
			if f, ok := e.Commodity.Factor(d.Factor.ID); ok {
				out = append(out, f)
			}
		}
	}
	return out
}

// saidLines are the lines that somebody may type from a slip.
var saidLines = []string{settle.LineSettled, settle.LineQuantity, settle.LineDrying, settle.LinePayable}

func saidFields(s *sheet, e *rates.Edition) []field {
	units := map[string]string{settle.LineSettled: e.Units.Weight.String(), settle.LineQuantity: e.Units.Settle.String()}
	var out []field
	for _, line := range saidLines {
		unit := units[line]
		if unit == "" {
			unit = "$"
		}
		out = append(out, field{id: saidBox + line, label: s.printer.Text(slipcode.Line{Name: line}.Label()), unit: unit})
	}
	return out
}

// Work settles what was typed under an edition, on a day.
func (c *Checker) Work(language, edition, day string, typed map[string]string) string {
	s := c.sheet(language)
	e, ok := c.edition(edition)
	if !ok {
		s.box(warn, s.Say("No rates are chosen"), s.Say("Choose the posted rates first, or open their file."))
		return s.String()
	}
	if date, err := quantity.ParseDate(day); err == nil {
		e = e.By(tablesOn(e.Units.Weight == quantity.Kg, date))
	}
	r := typist{s: s, e: e, typed: typed}
	facts := r.facts()
	a := ask{facts: facts, owner: r.owner(facts.Shares)}
	lines := r.said(a)
	if len(r.problems) > 0 {
		s.box(wrong, s.Say("Not everything can be read"), r.problems...)
		return s.String()
	}
	settled, err := settle.Settle(facts, e)
	if err != nil {
		s.box(wrong, s.Say("This cannot be settled"), strings.Split(s.printer.Error(err), "\n")...)
		return s.String()
	}
	a.engine = settled.Engine
	s.put(`<section><h2>%s</h2>`, s.Say("What it comes to"))
	s.pairs([2]string{s.Say("Net"), settled.Net.PrintedIn(s.printer)}, [2]string{s.Say("Settled"), a.printed(s, settled, settle.LineSettled)},
		[2]string{s.Say("Quantity"), a.printed(s, settled, settle.LineQuantity)}, [2]string{s.Say("Payable"), a.printed(s, settled, settle.LinePayable)})
	s.put(`</section>`)
	if len(lines) > 0 {
		compared(s, slipcode.Code{Lines: lines}.Compare(settled))
	}
	c.shown(s, a, settled)
	cautions(s)
	return s.String()
}

// typist reads what was typed, and collects everything that cannot be read.
type typist struct {
	s        *sheet
	e        *rates.Edition
	typed    map[string]string
	problems []string
}

// figure reads a box; false for one that is empty or cannot be read.
func (r *typist) figure(id, name string, unit quantity.Unit, must bool) (quantity.Amount, bool) {
	text := strings.TrimSpace(r.typed[id])
	if text == "" {
		if must {
			r.problems = append(r.problems, r.s.Say("%v: type the figure from the slip.", name))
		}
		return quantity.Amount{}, false
	}
	text, err := quantity.WithPoint(name, text, r.s.printer.Figures())
	if err != nil {
		r.problems = append(r.problems, sentence(r.s.printer.Error(err)))
		return quantity.Amount{}, false
	}
	a, err := quantity.Field{Name: name, Unit: unit, Places: 6, Min: quantity.Zero(unit), Max: quantity.Int(100_000_000, unit)}.Parse(text)
	if err != nil {
		r.problems = append(r.problems, sentence(r.s.printer.Error(err)))
		return quantity.Amount{}, false
	}
	return a, true
}

func (r *typist) facts() settle.Facts {
	source := message.New("as typed")
	var f settle.Facts
	gross, _ := r.figure(grossBox, r.s.Say("Gross"), r.e.Units.Weight, true)
	tare, _ := r.figure(tareBox, r.s.Say("Tare"), r.e.Units.Weight, true)
	f.Drafts = append([]settle.Draft{{Gross: gross, Tare: tare, GrossSource: source, TareSource: source}}, r.trailer(source)...)
	f.Shares = r.shares()
	if m, ok := r.figure(moistureBox, r.s.Say("Moisture"), quantity.Percent, true); ok {
		f.Moisture = settle.Reading{Percent: m, Source: source}
	}
	if p, ok := r.figure(priceBox, r.s.Say("Price"), quantity.Dollar.Per(r.e.Units.Settle), false); ok {
		f.Price = &settle.Price{Amount: p, Source: source}
	}
	for _, factor := range asked(r.e) {
		id := factorBox + string(factor.ID)
		found := settle.Finding{Factor: factor.ID, Amount: quantity.Zero(quantity.Count), Source: source}
		if factor.YesNo {
			found.Present = r.typed[id] != ""
			f.Findings = append(f.Findings, found)
		} else if a, ok := r.figure(id, r.s.printer.Word(factor.Name), factor.Unit, false); ok {
			found.Amount = a
			f.Findings = append(f.Findings, found)
		}
	}
	return f
}

// said are the lines that were typed from a slip, those of the owner it is for.
func (r *typist) said(of ask) []slipcode.Line {
	var out []slipcode.Line
	for i, line := range saidLines {
		f := saidFields(r.s, r.e)[i]
		if said, ok := r.figure(f.id, f.label, quantity.Plain, false); ok {
			out = append(out, slipcode.Line{Name: of.mine(line), Figure: said})
		}
	}
	return out
}
