package rates

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/message"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/rates/shrink"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
)

// ratesCompare settles one load twice.
type ratesCompare struct {
	terminal.BookFlags
	First    string `arg:"" help:"The edition, by id or file." placeholder:"EDITION"`
	Second   string `arg:"" optional:"" help:"The other edition." placeholder:"OTHER"`
	Water    bool   `help:"Against the pure water formula, in place of another edition."`
	Moisture string `required:"" help:"Moisture, percent wet basis." placeholder:"PERCENT"`
	trialFlags
	Width terminal.Width `help:"Width of the printed working, in letters." default:"76"`
	JSON  bool           `help:"Print for programs: every figure as text."`
}

func (ratesCompare) Help() string {
	return `Line by line, in pounds, bushels and money: what the first takes, what the second takes, and the second less the first. Below it stands what each edition takes beyond the water. A rate per point above the formula takes handling by another name: from 20 to 15 %, 1.4 % a point takes 1.12 % of the wet weight more than the water.

    tenth rates compare corn-main-2026 corn-river-2025 --moisture 20 --factor test-weight=55
    tenth rates compare corn-river-2025 --water --moisture 20 --factor test-weight=55 --price 4.12`
}

func (c ratesCompare) Run(t *terminal.Terminal) error {
	first, second, err := c.sides(t)
	if err != nil {
		return err
	}
	one, err := c.settle(first)
	if err != nil {
		return err
	}
	other, err := c.settle(second)
	if err != nil {
		return err
	}
	beyond := []*beyondWater{}
	for _, side := range []*tried{one, other} {
		if b, err := side.beyond(); err != nil {
			return err
		} else if b != nil {
			beyond = append(beyond, b)
		}
	}
	both := settle.Compare(one.settlement, other.settlement)
	both.Lines = slices.DeleteFunc(both.Lines, func(l settle.Line) bool { return l.ID == "gross" || l.ID == "tare" }) // no truck was weighed
	if c.JSON {
		return t.PrintJSON(comparisonJSON(both, beyond))
	}
	t.Say("%s", terminal.EditionLine(first))
	if c.Water {
		t.Say("Against the pure water formula, W x (Mi - Mf) / (100 - Mf), down to %s.\n", first.Shrink.To.Amount.Written())
	} else {
		t.Say("%s\n", terminal.EditionLine(second))
	}
	if a, b := first.Units.Currency, second.Units.Currency; a != b {
		t.Say("The first pays in %s, the second in %s: their money is not subtracted.\n", a, b)
	}
	printCompared(t, both, first.ID, cmp.Or(c.Second, t.Printer.Text(message.New("pure water"))))
	for _, b := range beyond {
		t.Say("\n%s", b.edition.ID)
		fmt.Fprint(t.Stdout, b.Sheet.TextIn(int(c.Width), t.Printer))
	}
	return nil
}

// sides are the two to compare.
func (c ratesCompare) sides(t *terminal.Terminal) (first, second *rates.Edition, err error) {
	if first, err = c.edition(t, c.BookFlags, c.First); err != nil {
		return nil, nil, err
	}
	switch {
	case c.Water == (c.Second != ""):
		return nil, nil, terminal.Refusal("Name another edition, or say --water", "%s is to be compared with one thing", first.ID)
	case c.Water && first.Shrink.Method == shrink.None:
		return nil, nil, terminal.Refusal("Compare it with another edition", "%s shrinks nothing, so there is no moisture that the formula could bring the load down to", first.ID)
	case c.Water:
		return first, rates.PureWater(first), nil
	}
	if second, err = c.edition(t, c.BookFlags, c.Second); err != nil {
		return nil, nil, err
	}
	if first.Commodity.ID != second.Commodity.ID {
		return nil, nil, terminal.Refusal("Compare two editions of one grain", "%s is for %s and %s for %s", first.ID, first.Commodity.ID, second.ID, second.Commodity.ID)
	}
	return first, second, nil
}

// tried is the load under one edition.
type tried struct {
	facts      settle.Facts
	settlement *settle.Settlement
}

func (c ratesCompare) settle(e *rates.Edition) (*tried, error) {
	facts, err := c.facts(e)
	if err != nil {
		return nil, err
	}
	moisture, err := entry.Moisture().Parse(c.Moisture)
	if err != nil {
		return nil, err
	}
	facts.Moisture = settle.Reading{Percent: moisture, Source: message.New("as given")}
	s, err := settle.Settle(facts, e)
	return &tried{facts, s}, err
}

// beyondWater is the part of an edition's shrink beyond the water.
type beyondWater struct {
	edition *rates.Edition
	*settle.BeyondWater
}

// beyond returns nil for the bare formula itself, and for an edition that shrinks to no moisture.
func (t *tried) beyond() (*beyondWater, error) {
	e := t.settlement.Edition
	if e.Hash == "" || e.Shrink.Method == shrink.None {
		return nil, nil
	}
	b, err := settle.TakenBeyondWater(t.settlement, t.facts)
	return &beyondWater{e, b}, err
}

// printCompared prints two settlements side by side.
func printCompared(t *terminal.Terminal, c *settle.Comparison, first, second string) {
	rows := [][]string{{"", first, second, t.Printer.Text(message.New("difference"))}}
	for _, l := range c.Lines {
		rows = append(rows, []string{t.Printer.Text(l.Label), sideOf(l.Before), sideOf(l.After), changeOf(l)})
	}
	printColumns(t, rows)
}

// changeOf is the second side less the first as printed.
func changeOf(l settle.Line) string {
	switch {
	case l.Change == nil:
		return "in other units"
	case l.Before != nil && settle.AwaitsPrice(l.Before):
		return ""
	}
	return l.Change.Printed()
}

// sideOf is a line of one settlement as printed.
func sideOf(step *worksheet.Step) string {
	if step == nil {
		return "-"
	}
	return terminal.InWords(step)
}

// printColumns prints rows of figures: the first column from the left, the others at
// the right of theirs.
func printColumns(t *terminal.Terminal, rows [][]string) {
	widths := make([]int, len(rows[0]))
	for _, row := range rows {
		for i, cell := range row {
			widths[i] = max(widths[i], utf8.RuneCountInString(cell))
		}
	}
	for _, row := range rows {
		line := padded(row[0], widths[0])
		for i, cell := range row[1:] {
			line += "  " + strings.Repeat(" ", widths[i+1]-utf8.RuneCountInString(cell)) + cell
		}
		t.Say("%s", line)
	}
}
