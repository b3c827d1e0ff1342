// Package sums holds the commands that work without a book: a settlement, a batch
// of them, the pure water formula, a grade.
package sums

import (
	"fmt"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/settle"
)

// Settle is the command that settles a load that is in no book.
type Settle struct {
	terminal.LanguageFlag
	terminal.RatesFlags
	terminal.RuleSetFlags
	Commodity string         `help:"The grain, by id or name." placeholder:"GRAIN"`
	Schedule  string         `help:"The schedule of rates." default:"main"`
	Day       string         `help:"The day of delivery, which picks the edition. Without it, today." placeholder:"YYYY-MM-DD"`
	Gross     string         `help:"Weight of the loaded truck; lb unless it says kg." placeholder:"WEIGHT"`
	Tare      string         `help:"Weight of the empty truck." placeholder:"WEIGHT"`
	Net       string         `help:"Net weight, in place of gross and tare." placeholder:"WEIGHT"`
	Moisture  string         `help:"Moisture, percent wet basis." placeholder:"PERCENT"`
	Factor    []string       `sep:"none" help:"Another result of the sample; may be repeated." placeholder:"FACTOR=RESULT"`
	Price     string         `help:"Price per bushel, hundredweight or tonne, as the rates settle. Without it, no price." placeholder:"MONEY"`
	Share     []string       `sep:"none" help:"An owner's part; may be repeated." placeholder:"OWNER=2/3"`
	Accept    []string       `sep:"none" help:"A limit to settle beyond, by its id; may be repeated." placeholder:"LIMIT"`
	JSON      bool           `help:"Print for programs: every figure as text."`
	Width     terminal.Width `help:"Width of the printed working, in letters." default:"76"`

	Batch string `help:"Settle every row of a CSV file instead; see below." placeholder:"IN.CSV"`
	Out   string `help:"Where the settled rows of --batch go. Without it, to standard output." placeholder:"OUT.CSV"`
}

func (Settle) Help() string {
	return `The working is printed line by line: each figure, the arithmetic that made it, the rounding and the row of the edition it came from. Nothing is written down.

    tenth settle --commodity corn --gross 52300 --tare 24300 --moisture 18.0
    tenth settle --commodity corn --gross 52300 --tare 24300 --moisture 18.0 \
        --factor test-weight=53.1 --factor musty=yes --price 4.12
    tenth settle --commodity corn --gross 52300 --tare 24300 --moisture 18.0 \
        --share Ada=2/3 --share Bo=1/3 --json

A batch has one load in a row, a row on one line. These are its columns, in any
order:

    gross, tare, moisture   required
    net                     in place of gross and tare
    commodity               required, unless --commodity is given for all rows
    load                    a name of your own; comes back in the output
    schedule, day, price    instead of --schedule, --day and --price
    accept                  limits to settle beyond, by the ids of their
                            discounts, parted by blanks
    factor.ID               a result, such as factor.test-weight; empty is
                            not tested

--commodity, --schedule, --day, --price and --accept hold for every row that
says nothing else; flags of one load are refused beside --batch. A cell that a
spreadsheet would run as a formula comes back with an apostrophe before it.

A column that is not in this list is refused by name, and so is a file without
the required ones. A row that cannot be settled is reported with its line, its
column and the reason; all other rows are settled, and the exit status is not 0.

Moisture lies between 3 and 60 %, with two decimals at most; protein goes up to
60 %, a price has four decimals, a weight seven digits. What comes out has the
size of each deduction: "bushels" are of the dry weight, "quantity" of the
settled one, and "adjustments" is premiums less discounts and charges.

    tenth settle --batch loads.csv --out settled.csv`
}

// usualWidth is the default of --width.
const usualWidth terminal.Width = 76

func (c Settle) Run(t *terminal.Terminal) error {
	set, err := c.ReadRates("")
	if err != nil {
		return err
	}
	laws, err := c.ReadLaws(c.Schedules)
	if err != nil {
		return err
	}
	loads := reader{set, laws, t.LocalDate(), t.Printer.Figures()}
	if c.Batch != "" {
		terminal.CollectSeldom()
		return c.batch(t, loads)
	}
	if c.Out != "" {
		return terminal.Refusal("Leave it out; the settlement is printed", "--out is for --batch")
	}
	s, err := c.one(loads)
	if err != nil {
		return err
	}
	if c.JSON {
		return t.PrintJSON(terminal.SettlementJSON(s))
	}
	t.Say("%s", terminal.EditionLine(s.Edition))
	t.Say("")
	fmt.Fprint(t.Stdout, s.Sheet.TextIn(int(c.Width), t.Printer))
	return nil
}

// one settles the load of the flags.
func (c Settle) one(loads reader) (*settle.Settlement, error) {
	cells := terminal.Texts{
		"commodity": c.Commodity, "schedule": c.Schedule, "day": c.Day, "gross": c.Gross, "tare": c.Tare, "net": c.Net,
		"moisture": c.Moisture, "price": c.Price,
	}
	if err := wanting(cells, append([]string{"commodity"}, neededOf(cells)...)...); err != nil {
		return nil, err
	}
	if err := cells.PutResults(c.Factor); err != nil {
		return nil, err
	}
	given, err := loads.read(cells)
	if err != nil {
		return nil, err
	}
	for _, text := range c.Share {
		p, err := entry.ParseOwnerShare(text)
		if err != nil {
			return nil, err
		}
		given.facts.Shares = append(given.facts.Shares, settle.Share{Owner: p.Owner, Parts: p.Parts, Of: p.Of})
	}
	if given.facts.Accepted, err = terminal.Accepted(given.edition, c.Accept); err != nil {
		return nil, err
	}
	return settle.Settle(given.facts, given.edition)
}

// wanting names every cell that is empty and must not be.
func wanting(cells map[string]string, names ...string) error {
	missing := ""
	for _, name := range names {
		if cells[name] == "" {
			missing += " --" + name
		}
	}
	if missing == "" {
		return nil
	}
	return terminal.Refusal("Give it, as in: tenth settle --commodity corn --gross 52300 --tare 24300 --moisture 18.0", "something is missing:%s", missing)
}
