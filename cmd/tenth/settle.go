package main

import (
	"fmt"
	"time"

	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/working"
)

// settleCommand settles a load that is in no book.
type settleCommand struct {
	ratesFlags
	Commodity string   `help:"The grain, by id or name." placeholder:"GRAIN"`
	Schedule  string   `help:"The schedule of rates." default:"main"`
	Day       string   `help:"The day of delivery, which picks the edition. Without it, today." placeholder:"YYYY-MM-DD"`
	Gross     string   `help:"Weight of the loaded truck; lb unless it says kg." placeholder:"WEIGHT"`
	Tare      string   `help:"Weight of the empty truck." placeholder:"WEIGHT"`
	Moisture  string   `help:"Moisture, percent wet basis." placeholder:"PERCENT"`
	Factor    []string `sep:"none" help:"Another result of the sample; may be repeated." placeholder:"FACTOR=RESULT"`
	Price     string   `help:"Price per bushel, hundredweight or tonne, as the rates settle. Without it, price later." placeholder:"MONEY"`
	Share     []string `sep:"none" help:"An owner's part; may be repeated." placeholder:"OWNER=2/3"`
	Accept    []string `sep:"none" help:"A limit to settle beyond, by its id; may be repeated." placeholder:"LIMIT"`
	JSON      bool     `help:"Print for programs: every figure as text."`
	Width     int      `help:"Width of the printed working, in letters." default:"76"`

	Batch string `help:"Settle every row of a CSV file instead; see below." placeholder:"IN.CSV"`
	Out   string `help:"Where the settled rows of --batch go. Without it, to standard output." placeholder:"OUT.CSV"`
}

func (settleCommand) Help() string {
	return `The working is printed line by line: each figure, the arithmetic that made it, the rounding and the row of the edition it came from. Nothing is written down.

    tenth settle --commodity corn --gross 52300 --tare 24300 --moisture 18.0
    tenth settle --commodity corn --gross 52300 --tare 24300 --moisture 18.0 \
        --factor test-weight=53.1 --factor musty=yes --price 4.12
    tenth settle --commodity corn --gross 52300 --tare 24300 --moisture 18.0 \
        --share Ada=2/3 --share Bo=1/3 --json

A batch has one load in a row. These are its columns, in any order:

    gross, tare, moisture   required
    commodity               required, unless --commodity is given for all rows
    load                    a name of your own; comes back in the output
    schedule, day           instead of --schedule and --day
    price                   empty is price later
    accept                  limits to settle beyond, parted by blanks
    factor.ID               a result, such as factor.test-weight; empty is
                            not tested

A column that is not in this list is refused by name, and so is a file without
the required ones. A row that cannot be settled is reported with its line, its
column and the reason; all other rows are settled, and the exit status is not 0.

    tenth settle --batch loads.csv --out settled.csv`
}

func (c settleCommand) Run(t *terminal) error {
	set, err := c.rates("")
	if err != nil {
		return err
	}
	if c.Batch != "" {
		return c.batch(t, set)
	}
	s, err := c.one(t, set)
	if err != nil {
		return err
	}
	if c.JSON {
		return t.asJSON(settlementJSON(s))
	}
	t.say("%s", editionLine(s.Edition))
	t.say("")
	fmt.Fprint(t.out, s.Sheet.Text(c.Width))
	return nil
}

// one settles the load of the flags.
func (c settleCommand) one(t *terminal, set *rates.Set) (*settle.Settlement, error) {
	cells := map[string]string{
		"commodity": c.Commodity, "schedule": c.Schedule, "day": c.Day, "gross": c.Gross, "tare": c.Tare,
		"moisture": c.Moisture, "price": c.Price,
	}
	if err := wanting(cells, "commodity", "gross", "tare", "moisture"); err != nil {
		return nil, err
	}
	s := sums{set: set, today: t.today()}
	given, err := s.read(cells)
	if err != nil {
		return nil, err
	}
	for _, text := range c.Factor {
		f, err := finding(given.edition.Commodity, text)
		if err != nil {
			return nil, err
		}
		given.find(f)
	}
	for _, text := range c.Share {
		p, err := partIn(text)
		if err != nil {
			return nil, err
		}
		given.facts.Shares = append(given.facts.Shares, settle.Share{Owner: p.owner, Parts: p.parts, Of: p.of})
	}
	given.facts.Accepted = c.Accept
	return settle.Settle(given.facts, given.edition)
}

// today is the day at the terminal.
func (t *terminal) today() quantity.Date {
	return quantity.MustDate(t.clock().In(t.place).Format(time.DateOnly))
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
	return refusal("Give it, as in: tenth settle --commodity corn --gross 52300 --tare 24300 --moisture 18.0", "something is missing:%s", missing)
}

// sums reads loads that are in no book.
type sums struct {
	set   *rates.Set
	today quantity.Date
}

// sum is one such load under its edition.
type sum struct {
	facts   settle.Facts
	edition *rates.Edition
}

func (s *sum) find(f load.Finding) {
	found := settle.Finding{Factor: f.Factor, Present: f.Present, Amount: quantity.Zero(quantity.Count), Source: "as given"}
	if f.Amount != nil {
		found.Amount = *f.Amount
	}
	s.facts.Findings = append(s.facts.Findings, found)
}

// inCell is a fault of one cell.
type inCell struct {
	column string
	error
}

func (e inCell) Unwrap() error { return e.error }

// read makes a load of its cells, by the names of the columns of a batch.
func (s sums) read(cells map[string]string) (*sum, error) {
	c, err := commodityIn(cells["commodity"])
	if err != nil {
		return nil, inCell{"commodity", err}
	}
	day, err := dateIn("Day", cells["day"])
	if err != nil {
		return nil, inCell{"day", err}
	}
	if day.IsZero() {
		day = s.today
	}
	e, err := s.set.On(cells["schedule"], c.ID, day)
	if err != nil {
		return nil, inCell{"day", err}
	}
	out := &sum{edition: e}
	return out, out.figures(cells)
}

// figures reads weights, moisture and price.
func (s *sum) figures(cells map[string]string) error {
	gross, err := weightIn("Gross", cells["gross"], s.edition.Units.Weight)
	if err != nil {
		return inCell{"gross", err}
	}
	tare, err := weightIn("Tare", cells["tare"], s.edition.Units.Weight)
	if err != nil {
		return inCell{"tare", err}
	}
	s.facts.Drafts = []settle.Draft{{Gross: gross, Tare: tare, GrossSource: "as given", TareSource: "as given"}}
	moisture, err := moistureIn(cells["moisture"])
	if err != nil {
		return inCell{"moisture", err}
	}
	s.facts.Moisture = settle.Reading{Percent: moisture, Source: "as given"}
	if cells["price"] == "" {
		return nil
	}
	price, err := priceIn(cells["price"], s.edition.Units.Settle)
	if err != nil {
		return inCell{"price", err}
	}
	s.facts.Price = &settle.Price{Amount: price, Source: "as given"}
	return nil
}

// editionLine says under which rates something was settled.
func editionLine(e *rates.Edition) string {
	if e == nil {
		return "Weighed only: grain that leaves is settled under no rates."
	}
	line := fmt.Sprintf("Rates: %s, %s (%s), SHA-256 %.12s.", e.ID, e.Title, e.Period(), e.Hash)
	if e.Status == rates.Example {
		line += " Example - not for trade."
	}
	return line
}

// settledJSON is a settlement for programs.
type settledJSON struct {
	Edition     string            `json:"edition,omitempty"` // none for grain that leaves
	EditionHash string            `json:"edition_sha256,omitempty"`
	Status      string            `json:"status,omitempty"`
	Figures     map[string]string `json:"figures"`
	Working     *working.Sheet    `json:"working"`
}

func settlementJSON(s *settle.Settlement) settledJSON {
	out := settledJSON{Figures: map[string]string{}, Working: s.Sheet}
	if e := s.Edition; e != nil {
		out.Edition, out.EditionHash, out.Status = e.ID, e.Hash, string(e.Status)
	}
	for name, step := range headFigures(s) {
		out.Figures[name] = inWords(step)
	}
	return out
}

// inWords is a figure as printed, or that its price comes later.
func inWords(step *working.Step) string {
	if isLater(step) {
		return priceLater
	}
	return step.Printed()
}

const priceLater = "price later"

func isLater(step *working.Step) bool {
	return step.Kind() == working.NotApplied && step.Note() == priceLater
}

// headFigures are the lines of a settlement people look for first.
func headFigures(s *settle.Settlement) map[string]*working.Step {
	out := map[string]*working.Step{}
	for name, step := range map[string]*working.Step{
		"gross": s.Gross, "tare": s.Tare, "net": s.Net, "moisture": s.Moisture, "dockage": s.Dockage, "shrink": s.Water,
		"handling": s.Handling, "dry": s.Dry, "quantity": s.Quantity, "bushels": s.Bushels, "drying": s.Drying,
		"price": s.Price, "value": s.Value, "charges": s.Charges, "payable": s.Payable,
	} {
		if step != nil {
			out[name] = step
		}
	}
	return out
}
