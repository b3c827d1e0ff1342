package tariff

import (
	"slices"

	"tenthpoint/internal/dated"
	"tenthpoint/internal/digest"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/tomlfile"
)

// headTable is the table that says what a file is.
const headTable = "tariff"

// Read reads one tariff. A non-nil error is a [tomlfile.Problems] with every mistake in the file.
func Read(name string, text []byte) (*Edition, error) {
	file := tomlfile.Parse(name, text)
	e := &Edition{File: name, Text: slices.Clone(text), Hash: digest.Of(text)}
	err := file.Read(func(root *tomlfile.Table) {
		e.readHead(root)
		file.SetID(e.ID)
		e.Origin = file.Origin()
		e.readUnits(root)
		e.readKeeping(root)
		e.readFees(root)
		e.readInterest(root)
	})
	if err != nil {
		return nil, err
	}
	return e, nil
}

func (e *Edition) readHead(root *tomlfile.Table) {
	t, _ := root.Table(headTable, true)
	e.ID, e.Title, e.Schedule = rule.ReadName(t, "id"), t.Text("title"), rule.ReadName(t, "schedule")
	e.From, e.Until = t.Date("from"), t.OptionalDate("until")
	e.Status = Status(t.Choice("status", string(Example), string(House), string(Filed)))
	e.Corrects = t.OptionalText("corrects")
	e.Commodity = grain.ReadCommodity(t)
	dated.Period(t, e.Dated())
}

func (e *Edition) readUnits(root *tomlfile.Table) {
	t, _ := root.Table("units", true)
	e.Currency = t.Choice("currency", "USD", "CAD", "AUD", "NZD")
	e.Settle = map[string]quantity.Unit{"cwt": quantity.Cwt, "t": quantity.Tonne}[t.Choice("settle", "bu", "cwt", "t")]
	if e.Settle == quantity.Plain {
		e.Settle = quantity.Bushel
	}
	t, _ = root.Table("rounding", true)
	e.Money = t.Rounding("money")
	rule.MustRound(t, "money", e.Money)
}

// rate is money for the unit the tariff settles by.
func (e *Edition) rate() quantity.Unit { return quantity.Dollar.Per(e.Settle) }

func (e *Edition) readFees(root *tomlfile.Table) {
	if t, found := root.Table("elevation", false); found {
		e.Elevation = Elevation{In: fee(t, "in", e.rate()), Out: fee(t, "out", e.rate())}
	}
	if t, found := root.Table("receipt", false); found {
		e.Receipts = Receipts{Issue: fee(t, "issue", quantity.Dollar), Renew: fee(t, "renew", quantity.Dollar), Replace: fee(t, "replace", quantity.Dollar)}
	}
}

func fee(t *tomlfile.Table, key string, unit quantity.Unit) rule.Cell {
	c := rule.ReadOptionalCell(t, key, unit)
	rule.NotNegative(t, key, c)
	return c
}

func (e *Edition) readInterest(root *tomlfile.Table) {
	t, found := root.Table("interest", false)
	if !found {
		return
	}
	e.Interest = Interest{
		Rate: rule.ReadPercent(t, "rate"), Source: t.Source(""),
		By: YearBy(t.Choice("by", string(Days365), string(Days360), string(MonthsBegun), string(MonthsComplete))),
	}
}
