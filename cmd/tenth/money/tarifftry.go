package money

import (
	"fmt"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tariff"
	"tenthpoint/internal/title"
	"tenthpoint/internal/worksheet"
)

// lotFlags are a lot that may not exist, to try tariffs on.
type lotFlags struct {
	Quantity  string         `required:"" help:"How much, in the unit the tariff charges by." placeholder:"FIGURE"`
	Under     string         `default:"stored" help:"What it is held under: stored, receipt, bank, undecided, delayed." placeholder:"TITLE"`
	From      string         `required:"" help:"Day of delivery." placeholder:"YYYY-MM-DD"`
	FieldDone string         `help:"Day of the last load of the field." placeholder:"YYYY-MM-DD"`
	To        string         `help:"Day the charge is reckoned to. Without it, today." placeholder:"YYYY-MM-DD"`
	Act       []string       `help:"Also what this costs; may be repeated." enum:"in,out,issue,renew,replace"`
	Advance   string         `help:"Money advanced on the day of delivery, for its interest." placeholder:"MONEY"`
	Width     terminal.Width `help:"Width of the printed working, in letters." default:"76"`
	JSON      bool           `help:"Print for programs: every figure as text."`
}

// mostLot is beyond any elevator, so that a slip of the finger is seen.
const mostLot = 100_000_000

// work writes the charges of a lot under a tariff.
func (f lotFlags) work(t *terminal.Terminal, e *tariff.Edition) (*worksheet.Sheet, *worksheet.Step, error) {
	amount, err := (quantity.Field{Name: "Quantity", Unit: e.Settle, Places: 2, Min: quantity.Of("0.01", e.Settle), Max: quantity.Int(mostLot, e.Settle)}).Parse(f.Quantity)
	if err != nil {
		return nil, nil, err
	}
	lot, err := f.lot(t)
	if err != nil {
		return nil, nil, err
	}
	s := &worksheet.Sheet{}
	typed := message.New("as given")
	lot.Quantity = s.Given("quantity", message.New("Quantity"), amount, quantity.Unrounded, typed)
	keeping, err := e.Keep(s, "keeping", lot)
	if err != nil {
		return nil, nil, err
	}
	sums := []worksheet.Operand{keeping}
	for i, word := range f.Act {
		act, _ := tariff.ReadAct(word)
		sums = append(sums, e.Fee(s, fmt.Sprintf("fee%d.%s", i+1, word), act, lot.Quantity))
	}
	if f.Advance != "" {
		advance, err := (quantity.Field{Name: "Advance", Unit: quantity.Dollar, Places: 2, Min: quantity.Of("0.01", quantity.Dollar), Max: quantity.Int(mostLot, quantity.Dollar)}).Parse(f.Advance)
		if err != nil {
			return nil, nil, err
		}
		principal := s.Given("advance", message.New("Advance"), advance, quantity.Unrounded, typed)
		sums = append(sums, e.Interest.Charge(e, s, "interest", principal, lot.Delivered, lot.To))
	}
	total := s.Work("total", message.New("All charges"), worksheet.Sum(sums[0], sums[1:]...), e.Money, worksheet.Unsourced)
	return s, total, nil
}

// lot reads the days and the title.
func (f lotFlags) lot(t *terminal.Terminal) (lot tariff.Lot, err error) {
	terms, known := title.Read(f.Under)
	if !known {
		return lot, terminal.Refusal("Write one of stored, receipt, bank, undecided, delayed", "%q is nothing that grain is held under", f.Under)
	}
	lot.Under = terms.Under
	for _, one := range []struct {
		name, text string
		day        *quantity.Date
	}{{"From", f.From, &lot.Delivered}, {"FieldDone", f.FieldDone, &lot.FieldDone}, {"To", f.To, &lot.To}} {
		if *one.day, err = entry.ParseDay(one.name, one.text, t.LocalDate()); err != nil {
			return lot, err
		}
	}
	if lot.To.IsZero() {
		lot.To = t.LocalDate()
	}
	return lot, nil
}

type tariffTry struct {
	terminal.BookFlags
	Tariff string `arg:"" help:"The tariff, by id or file." placeholder:"TARIFF"`
	lotFlags
}

func (tariffTry) Help() string {
	return `Days, free time and bands are steps that can be done again on a pocket calculator. Elevation and fees are added with --act, interest on an advance with --advance.

    tenth tariff try corn-main-tariff-2026 --quantity 1000 --under stored --from 2026-10-01 --to 2027-01-09
    tenth tariff try corn-main-tariff-2026 --quantity 812.44 --under receipt --from 2026-10-01 --to 2026-12-01 --act in --act issue`
}

func (c tariffTry) Run(t *terminal.Terminal) error {
	e, err := tariffNamed(c.BookFlags, c.Tariff)
	if err != nil {
		return err
	}
	s, total, err := c.work(t, e)
	if err != nil {
		return err
	}
	if c.JSON {
		return t.PrintJSON(map[string]any{"tariff": e.ID, "tariff_sha256": e.Hash, "charges": total.Printed(), "working": s})
	}
	t.Say("%s\n", tariffLine(e))
	fmt.Fprint(t.Stdout, s.TextIn(int(c.Width), t.Printer))
	return nil
}

type tariffCompare struct {
	terminal.BookFlags
	First  string `arg:"" help:"The tariff, by id or file." placeholder:"TARIFF"`
	Second string `arg:"" help:"The other tariff." placeholder:"OTHER"`
	lotFlags
}

func (tariffCompare) Help() string {
	return `What the first charges, what the second charges, and the second less the first. "tenth tariff try" shows the days and bands of each.

    tenth tariff compare corn-main-tariff-2026 corn-river-tariff-2026 --quantity 1000 --from 2026-10-01 --to 2027-01-09`
}

func (c tariffCompare) Run(t *terminal.Terminal) error {
	first, err := tariffNamed(c.BookFlags, c.First)
	if err != nil {
		return err
	}
	second, err := tariffNamed(c.BookFlags, c.Second)
	if err != nil {
		return err
	}
	if first.Settle != second.Settle || first.Currency != second.Currency {
		return terminal.Refusal("Compare two tariffs of one unit and one currency", "%s charges in %s by %s, %s in %s by %s", first.ID, first.Currency, first.Settle, second.ID, second.Currency, second.Settle)
	}
	a, _, err := c.work(t, first)
	if err != nil {
		return err
	}
	b, _, err := c.work(t, second)
	if err != nil {
		return err
	}
	rows := [][]any{}
	for _, one := range a.Steps() {
		other, both := b.Step(one.ID())
		if !both || strings.Contains(one.ID(), ".") && !strings.HasPrefix(one.ID(), "fee") {
			continue // days and bands of two tariffs are not alike
		}
		rows = append(rows, []any{one.Label(), one.Value(), other.Value(), other.Value().Sub(one.Value())})
	}
	if !c.JSON {
		t.Say("%s", tariffLine(first))
		t.Say("%s\n", tariffLine(second))
	}
	return (&terminal.Session{Terminal: t}).Table(terminal.ListFlags{JSON: c.JSON}, "Charge\tFirst\tSecond\tDifference", rows, "")
}
