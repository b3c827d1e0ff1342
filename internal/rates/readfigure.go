package rates

import (
	"fmt"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

func (r *reader) byTable(t *tomlfile.Table, d *Discount, units []quantity.Unit) {
	rows := t.Tables("row")
	for i, row := range rows {
		row.SetTitle(fmt.Sprintf("discount %s row %d", d.ID, i+1))
		b := band(row, units...)
		b.Refuse, b.Cell, b.Gives = r.answer(row, d.Of)
		d.Table = append(d.Table, b)
	}
	checkBands(t, "row", rows, d.Table)
}

func (r *reader) perUnit(t *tomlfile.Table, d *Discount, units []quantity.Unit) {
	d.Base, d.Per = cell(t, "base", units...), cell(t, "per", units...)
	d.Above = t.Choice("side", "above", "below") == "above"
	if d.Per.Given() && d.Per.Amount.Sign() <= 0 {
		t.AddProblem("per", fmt.Sprintf("%s is %s: what is beyond the base would be divided by it", t.Name("per"), d.Per.Amount.Written()), "Write a size above nought, such as \"1 lb/bu\" or \"0.1 %\".")
	}
	d.Part = parts[t.Choice("part", "exact", "up", "down", "nearest")]
	d.Cell, d.Gives = r.figure(t, d.Of)
	if d.Cell.Given() {
		d.Cap = optionalCell(t, "cap", d.Cell.Amount.Unit())
		notNegative(t, "cap", d.Cap)
	} else {
		t.OptionalText("cap")
	}
}

// parts are the roundings of a number of units beyond a base.
var parts = map[string]quantity.Rounding{
	"exact": quantity.Unrounded, "up": quantity.To("1", quantity.Up),
	"down": quantity.To("1", quantity.Down), "nearest": quantity.To("1", quantity.HalfUp),
}

// answer reads what a row or a yes brings: a figure, or being turned away, or
// both, the figure then being for a load that a manager accepts all the same.
func (r *reader) answer(t *tomlfile.Table, of Of) (refuse bool, c Cell, gives Direction) {
	refuse = t.Has("refuse") && t.Bool("refuse")
	if refuse && !t.Has("discount") && !t.Has("premium") {
		return refuse, Cell{}, Docks
	}
	c, gives = r.figure(t, of)
	return refuse, c, gives
}

// figure reads the amount under "discount" or "premium".
func (r *reader) figure(t *tomlfile.Table, of Of) (Cell, Direction) {
	key, gives := "discount", Docks
	if t.Has("premium") {
		key, gives = "premium", Pays
		if t.Has("discount") {
			t.AddProblem("discount", t.Name("")+" has both a discount and a premium", "Keep the one that is meant.")
			t.OptionalText("discount")
		}
	}
	units := []quantity.Unit{quantity.Percent}
	if of == OfMoney {
		units = perQuantityUnits()
	}
	c := cell(t, key, units...)
	notNegative(t, key, c)
	r.needsBushel(t, key, c)
	if of != OfMoney && c.Given() && !c.Amount.Less(hundred) {
		t.AddProblem(key, fmt.Sprintf("%s of the %s leaves nothing", c.Amount.Written(), of), "Write a percent below 100.")
	}
	return c, gives
}
