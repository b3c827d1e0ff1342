package explanation

import (
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
)

// compared is a line that is set side by side.
type compared struct {
	id    string
	title message.Text
}

// compared are those lines, in money as far as the ticket's engine has them.
func (c *composer) compared() []compared {
	lines := []compared{
		{settle.LineMoisture, message.New("Moisture")}, {settle.LineWater, message.New("Water")}, {settle.LineHandling, message.New("Handling")},
		{settle.LineSettled, message.New("Settled")}, {settle.LineQuantity, message.New("Settled")}, {settle.LineDrying, message.New("Drying")},
	}
	payable := compared{settle.LinePayable, message.New("Payable")}
	if c.Settlement.Charges != nil {
		return append(lines, compared{settle.LineCharges, message.New("Charges")}, payable)
	}
	return append(lines, compared{settle.LineDiscounts, message.New("Discounts")}, compared{settle.LinePremiums, message.New("Premiums")}, payable)
}

// whatIfs adds the ticket settled again with one thing different each time.
func (c *composer) whatIfs() {
	if len(c.WhatIfs) == 0 {
		return
	}
	c.put(report.Heading{Text: message.New("What another figure would have made")})
	t := report.Table{Name: message.New("what if"), Columns: []report.Column{{Title: message.New("If")}}}
	for _, line := range c.compared() {
		t.Columns = append(t.Columns, c.column(line))
	}
	t.Rows = append(t.Rows, report.Row{Cells: c.row(message.New("this ticket"), c.Settlement)})
	for _, w := range c.WhatIfs {
		if w.Settlement != nil {
			t.Rows = append(t.Rows, report.Row{Cells: c.row(w.Name, w.Settlement)})
		}
	}
	c.put(t, c.changes())
	for _, w := range c.WhatIfs {
		if w.Settlement == nil {
			c.put(report.Para{Text: message.New("With %s the load could not have been settled: %s", w.Name, w.Refused)})
		}
	}
	c.put(report.Para{Text: message.New("The pure water formula takes off the water alone, from the same trigger to the same moisture, and nothing for handling: " +
		"W × (Mi − Mf) ÷ (100 − Mf). What the posted rates take beyond it is handling, by that name or within a rate per point.")})
}

// units of lines that a ticket may lack.
var units = map[string]quantity.Unit{
	settle.LineMoisture: quantity.Percent, settle.LineDrying: quantity.Dollar, settle.LineCharges: quantity.Dollar,
	settle.LineDiscounts: quantity.Dollar, settle.LinePremiums: quantity.Dollar, settle.LinePayable: quantity.Dollar,
}

// column is the column of a line, in the unit of the ticket.
func (c *composer) column(line compared) report.Column {
	unit, known := units[line.id]
	if s, ok := c.Settlement.Sheet.Step(line.id); ok && !known {
		unit = s.Value().Unit()
	}
	return report.Column{Title: line.title, Unit: unit.String(), Align: report.Right}
}

func (c *composer) row(name message.Text, s *settle.Settlement) []message.Text {
	cells := []message.Text{name}
	for _, line := range c.compared() {
		cells = append(cells, c.cell(s, line.id))
	}
	return cells
}

// cell is a line's figure without its unit, which is in the heading of the column; a
// figure in another unit than the ticket's keeps it.
func (c *composer) cell(s *settle.Settlement, id string) message.Text {
	step, ok := s.Sheet.Step(id)
	if !ok {
		return message.Text{}
	}
	if settle.AwaitsPrice(step) {
		return c.unpriced(step)
	}
	own, ok := c.Settlement.Sheet.Step(id)
	if ok && own.Value().Unit() != step.Value().Unit() {
		return report.Figure(step.Printed())
	}
	return report.Figure(c.side(id).written(step.Value(), step.Value().In(quantity.Plain).Fixed(decimals(step))))
}

// decimals returns the number of decimals a step is printed with.
func decimals(s *worksheet.Step) int32 {
	_, rest, _ := strings.Cut(s.Printed(), ".")
	return int32(len(rest) - len(strings.TrimLeft(rest, "0123456789")))
}

// changes are the differences from the ticket.
func (c *composer) changes() report.Table {
	t := report.Table{Name: message.New("what if, difference"), Columns: []report.Column{{Title: message.New("Difference from the ticket, if")}}}
	for _, line := range c.compared() {
		t.Columns = append(t.Columns, c.column(line))
	}
	for _, w := range c.WhatIfs {
		if w.Settlement == nil {
			continue
		}
		comparison := settle.Compare(c.Settlement, w.Settlement)
		cells := []message.Text{w.Name}
		for _, line := range c.compared() {
			cells = append(cells, c.change(comparison, line.id))
		}
		t.Rows = append(t.Rows, report.Row{Cells: cells})
	}
	return t
}

func (c *composer) change(of *settle.Comparison, id string) message.Text {
	line, ok := of.Line(id)
	if !ok {
		return c.changeOfTotal(of, id)
	}
	if line.Change == nil {
		return message.Text{}
	}
	one := line.Before
	if one == nil {
		one = line.After
	}
	if settle.AwaitsPrice(one) {
		return c.unpriced(one)
	}
	a := c.side(id).change(line.Change.Value()).In(quantity.Plain)
	return report.Figure(signed(a, a.Fixed(decimals(one))))
}

// changeOfTotal is the change of a sum of lines, which a comparison line by line has not.
func (c *composer) changeOfTotal(of *settle.Comparison, id string) message.Text {
	before, ok := of.Before.Sheet.Step(id)
	after, found := of.After.Sheet.Step(id)
	if !ok || !found || before.Value().Unit() != after.Value().Unit() || currencyOf(of.Before) != currencyOf(of.After) {
		return message.Text{}
	}
	a := c.side(id).change(after.Value().Sub(before.Value())).In(quantity.Plain)
	return report.Figure(signed(a, a.Fixed(decimals(before))))
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
