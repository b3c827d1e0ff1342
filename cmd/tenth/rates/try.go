package rates

import (
	"encoding/csv"
	"errors"
	"fmt"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/report"
	"tenthpoint/internal/settle/trial"
)

// ratesTry settles one load at a grid of moistures.
type ratesTry struct {
	terminal.BookFlags
	Edition string `arg:"" help:"The edition, by id or file." placeholder:"EDITION"`
	From    string `help:"First moisture. Without it, what the rates bring grain down to." placeholder:"PERCENT"`
	To      string `help:"Last moisture. Without it, ten points above the first." placeholder:"PERCENT"`
	Step    string `help:"From one moisture to the next." default:"0.5" placeholder:"POINTS"`
	trialFlags
	CSV  bool `name:"csv" help:"Print lines for a spreadsheet: plain figures, units in the first line."`
	JSON bool `help:"Print for programs: every figure as text."`
}

func (ratesTry) Help() string {
	return `Everything but the moisture stays the same from row to row. "Taken" is water and handling in percent of the wet weight; the last column is what one unit as delivered brings or, while the price comes later, is charged. A moisture the rates turn away says why.

    tenth rates try corn-main-2026
    tenth rates try corn-river-2025 --factor test-weight=55 --price 4.12 --from 14.5 --to 25 --step 0.1
    tenth rates try new-corn.toml --csv > new-corn.csv`
}

// spreadsheetRows are rows of which no cell is run as a formula: the words of an
// edition reach the column of refusals.
func spreadsheetRows(rows [][]string) [][]string {
	out := make([][]string, len(rows))
	for i, row := range rows {
		out[i] = make([]string, len(row))
		for n, cell := range row {
			out[i][n] = report.SpreadsheetCell(cell)
		}
	}
	return out
}

func (c ratesTry) Run(t *terminal.Terminal) error {
	e, err := c.edition(t, c.BookFlags, c.Edition)
	if err != nil {
		return err
	}
	grid, err := c.grid(e)
	if err != nil {
		return err
	}
	facts, err := c.facts(e)
	if err != nil {
		return err
	}
	tried := trial.Of(e, facts, grid)
	if reason, none := allRefused(tried); none {
		return errors.Join(terminal.Refusal("Give results with --factor, and limits to settle beyond with --accept", "no moisture of this grid can be settled under %s", e.ID), message.Err("", reason))
	}
	switch {
	case c.CSV:
		return csv.NewWriter(t.Stdout).WriteAll(spreadsheetRows(tried.Records()))
	case c.JSON:
		records := tried.Records()
		return t.PrintJSON(map[string]any{"edition": editionForJSON(e), "columns": records[0], "rows": records[1:]})
	}
	draft := facts.Drafts[0]
	t.Say("%s", terminal.EditionLine(e))
	t.Say("A load of %s at every moisture.\n", draft.Gross.Sub(draft.Tare))
	fmt.Fprint(t.Stdout, tried.Text())
	return nil
}

// grid returns the moistures asked for.
func (c ratesTry) grid(e *rates.Edition) ([]quantity.Amount, error) {
	first, err := c.first(e)
	if err != nil {
		return nil, err
	}
	last := first.Add(quantity.Int(10, quantity.Percent))
	if c.To != "" {
		if last, err = terminal.ParsePercent("To", c.To); err != nil {
			return nil, err
		}
	}
	step, err := terminal.ParsePercent("Step", c.Step)
	if err != nil {
		return nil, err
	}
	first = first.Add(tenths) // so that every moisture shows its tenth
	switch grid := trial.Grid(first, last, step); {
	case step.Sign() <= 0:
		return nil, terminal.Refusal("Give a step above zero, such as --step 0.5", "a grid in steps of %s never ends", step)
	case len(grid) == 0:
		return nil, terminal.Refusal("Swap the two", "the grid begins at %s and ends before it, at %s", first, last)
	case last.More(grid[len(grid)-1].Add(step)):
		return nil, terminal.Refusal("Give a longer --step", "from %s to %s in steps of %s are more than %d rows", first, last, step, len(grid))
	default:
		return grid, nil
	}
}

var tenths = quantity.Of("0.0", quantity.Percent)

// first is the moisture that the grid begins at.
func (c ratesTry) first(e *rates.Edition) (quantity.Amount, error) {
	if c.From != "" {
		return terminal.ParsePercent("From", c.From)
	}
	for _, cell := range []rule.Cell{e.Shrink.To, e.Drying.To} {
		if cell.Given() {
			return cell.Amount, nil
		}
	}
	moisture, _ := e.Commodity.Factor(grain.Moisture)
	return moisture.Min, nil
}

// allRefused reports that no row could be settled, with the reason of the first.
func allRefused(tried *trial.Trial) (reason message.Text, none bool) {
	for _, row := range tried.Rows {
		if row.Settlement != nil {
			return message.Text{}, false
		}
	}
	return tried.Rows[0].Refused, true
}
