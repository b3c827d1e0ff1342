package explanation

import (
	"strings"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
)

// compared is a line that is set side by side.
type compared struct{ id, title string }

// compared are those lines, in money as far as the ticket's engine has them.
func (c *composer) compared() []compared {
	lines := []compared{
		{settle.LineMoisture, "Moisture %"}, {settle.LineWater, "Water"}, {settle.LineHandling, "Handling"}, {settle.LineSettled, "Settled"}, {settle.LineQuantity, "Settled"},
		{settle.LineDrying, "Drying $"},
	}
	if c.Settlement.Charges != nil {
		return append(lines, compared{settle.LineCharges, "Charges $"}, compared{settle.LinePayable, "Payable $"})
	}
	return append(lines, compared{settle.LineDiscounts, "Discounts $"}, compared{settle.LinePremiums, "Premiums $"}, compared{settle.LinePayable, "Payable $"})
}

// whatIfs adds the ticket settled again with one thing different each time.
func (c *composer) whatIfs() {
	if len(c.WhatIfs) == 0 {
		return
	}
	c.put(report.Heading{Text: "What another figure would have made"})
	t := report.Table{Name: "what if", Columns: []report.Column{{Title: "If"}}}
	for _, line := range c.compared() {
		t.Columns = append(t.Columns, report.Column{Title: c.unitTitle(line.id, line.title), Align: report.Right})
	}
	t.Rows = append(t.Rows, report.Row{Cells: c.row("this ticket", c.Settlement)})
	for _, w := range c.WhatIfs {
		if w.Settlement != nil {
			t.Rows = append(t.Rows, report.Row{Cells: c.row(w.Name, w.Settlement)})
		}
	}
	c.put(t, c.changes())
	for _, w := range c.WhatIfs {
		if w.Settlement == nil {
			c.put(report.Para{Text: "With " + w.Name + " the load could not have been settled: " + w.Refused})
		}
	}
	c.put(report.Para{Text: "The bare water formula takes off the water alone, from the same trigger to the same moisture, and nothing for handling: " +
		"W × (Mi − Mf) ÷ (100 − Mf). What the posted rates take beyond it is handling, by that name or within a rate per point."})
}

func (c *composer) unitTitle(id, title string) string {
	s, ok := c.Settlement.Sheet.Step(id)
	if !ok || title[len(title)-1] == '$' || title[len(title)-1] == '%' {
		return title
	}
	return title + " " + s.Value().Unit().String()
}

func (c *composer) row(name string, s *settle.Settlement) []string {
	cells := []string{name}
	for _, line := range c.compared() {
		cells = append(cells, c.cell(s, line.id))
	}
	return cells
}

// cell is a line's figure without its unit, which is in the heading of the column; a
// figure in another unit than the ticket's keeps it.
func (c *composer) cell(s *settle.Settlement, id string) string {
	step, ok := s.Sheet.Step(id)
	if !ok {
		return ""
	}
	if settle.AwaitsPrice(step) {
		return c.unpriced(step).String()
	}
	own, ok := c.Settlement.Sheet.Step(id)
	if ok && own.Value().Unit() != step.Value().Unit() {
		return step.Printed()
	}
	return step.Value().In(quantity.Plain).Fixed(decimals(step))
}

// decimals returns the number of decimals a step is printed with.
func decimals(s *worksheet.Step) int32 {
	_, rest, _ := strings.Cut(s.Printed(), ".")
	return int32(len(rest) - len(strings.TrimLeft(rest, "0123456789")))
}

// changes are the differences from the ticket.
func (c *composer) changes() report.Table {
	t := report.Table{Name: "what if, difference", Columns: []report.Column{{Title: "Difference from the ticket, if"}}}
	for _, line := range c.compared() {
		t.Columns = append(t.Columns, report.Column{Title: c.unitTitle(line.id, line.title), Align: report.Right})
	}
	for _, w := range c.WhatIfs {
		if w.Settlement == nil {
			continue
		}
		comparison := settle.Compare(c.Settlement, w.Settlement)
		cells := []string{w.Name}
		for _, line := range c.compared() {
			cells = append(cells, c.change(comparison, line.id))
		}
		t.Rows = append(t.Rows, report.Row{Cells: cells})
	}
	return t
}

func (c *composer) change(of *settle.Comparison, id string) string {
	line, ok := of.Line(id)
	if !ok {
		return changeOfTotal(of, id)
	}
	if line.Change == nil {
		return ""
	}
	one := line.Before
	if one == nil {
		one = line.After
	}
	if settle.AwaitsPrice(one) {
		return c.unpriced(one).String()
	}
	a := line.Change.Value().In(quantity.Plain)
	return signed(a, a.Fixed(decimals(one)))
}

// changeOfTotal is the change of a sum of lines, which a comparison line by line has not.
func changeOfTotal(of *settle.Comparison, id string) string {
	before, ok := of.Before.Sheet.Step(id)
	after, found := of.After.Sheet.Step(id)
	if !ok || !found || before.Value().Unit() != after.Value().Unit() || currencyOf(of.Before) != currencyOf(of.After) {
		return ""
	}
	a := after.Value().Sub(before.Value()).In(quantity.Plain)
	return signed(a, a.Fixed(decimals(before)))
}

func currencyOf(s *settle.Settlement) string {
	if s.Edition == nil {
		return ""
	}
	return s.Edition.Units.Currency
}

// signed writes a plus before a difference above zero.
func signed(a quantity.Amount, text string) string {
	if a.Sign() > 0 {
		return "+" + text
	}
	return text
}
