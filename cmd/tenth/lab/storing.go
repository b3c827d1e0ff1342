package lab

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/dryness"
	"tenthpoint/internal/entry/storing"
	"tenthpoint/internal/load"
	paper "tenthpoint/internal/office/storing"
	"tenthpoint/internal/quantity"
)

// storingFlags ask whether the grain keeps, beside whether it is dry.
type storingFlags struct {
	Until      string `help:"Also: does it keep until this day, such as 2027-03-01? Takes --stored-at." placeholder:"DAY"`
	StoredAt   string `help:"With --until: temperature it is kept at, with F or C." placeholder:"TEMPERATURE"`
	FuelPrice  string `help:"With --until: the grower's price of fuel, such as \"1.80 $/gal\"." placeholder:"MONEY"`
	PowerPrice string `help:"With --until: his price of power, such as \"0.12 $/kWh\"." placeholder:"MONEY"`
}

// ask is the question the flags make of a load's grain, as it was read.
func (f storingFlags) ask(p *terminal.Session, l *load.Load, moisture quantity.Amount) (q dryness.Storing, err error) {
	if f.StoredAt == "" {
		return q, terminal.Refusal("Add --stored-at, like 50F", "it is not said at what temperature the grain is kept")
	}
	q, problems := storing.Read(map[string]string{
		storing.Until: f.Until, storing.At: f.StoredAt, storing.Fuel: f.FuelPrice, storing.Power: f.PowerPrice,
	}, paper.Of(p.Desk, l, moisture), p.Today())
	return q, problems.Err(storing.Fields())
}

// tellStoring says whether it keeps, by each table, and sets the ways side by side.
func tellStoring(p *terminal.Session, q dryness.Storing, s dryness.Stored) error {
	p.Say("")
	p.Say("To keep %s at %s:", q.Days, q.Temperature)
	for _, by := range s.By {
		if by.Enough {
			p.Say("  By %s it keeps %s, long enough.", by.Table.ID, by.Keeps)
		} else {
			p.Say("  By %s it keeps %s, not long enough.", by.Table.ID, by.Keeps)
		}
	}
	for _, r := range s.Recommended {
		p.Say("  Recommended for so long: %s (%s).", r.Moisture, r.Source)
	}
	if len(s.Ways) > 0 {
		p.Say("")
		if err := p.Columns("Way\tDays\tCost\tOf 100 lb left\tThen", wayRows(s.Ways), ""); err != nil {
			return err
		}
	}
	p.Say("Advice, not a promise: look at the grain and its temperature. Nobody enters a bin alone or while grain moves; fumigants are for licensed applicators.")
	return nil
}

func wayRows(ways []dryness.Way) (rows [][]any) {
	known := func(a quantity.Amount) any {
		if !quantity.Recorded(a) {
			return "-"
		}
		return a
	}
	for _, w := range ways {
		rows = append(rows, []any{w.Name, known(w.Days), known(w.Cost), known(w.Left), w.Then})
	}
	return rows
}

func storedJSON(s dryness.Stored) map[string]any {
	tables, ways := []map[string]any{}, []map[string]string{}
	for _, by := range s.By {
		tables = append(tables, map[string]any{"table": by.Table.ID, "keeps": by.Keeps.Shown().String(), "at_least": by.Keeps.AtLeast, "enough": by.Enough})
	}
	for _, w := range s.Ways {
		ways = append(ways, map[string]string{"way": w.Name.String(), "days": amountOrNone(quantity.Recorded(w.Days), w.Days),
			"cost": amountOrNone(quantity.Recorded(w.Cost), w.Cost), "left_of_100_lb": amountOrNone(quantity.Recorded(w.Left), w.Left), "then": w.Then.String()})
	}
	return map[string]any{"enough": s.Enough(), "tables": tables, "ways": ways}
}
