package rates

import (
	"fmt"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// cell reads a required figure with its place. When it cannot be read the cell
// is not given.
func cell(t *tomlfile.Table, key string, units ...quantity.Unit) Cell {
	a, ok := t.Figure(key, units...)
	return placed(t, key, a, ok)
}

// optionalCell reads a figure that may be left out.
func optionalCell(t *tomlfile.Table, key string, units ...quantity.Unit) Cell {
	a, ok := t.OptionalAmount(key, units...)
	return placed(t, key, a, ok)
}

func placed(t *tomlfile.Table, key string, a quantity.Amount, ok bool) Cell {
	if !ok {
		return Cell{}
	}
	return Cell{Amount: a, Row: t.Place(key)}
}

var hundred = quantity.Int(100, quantity.Percent)

// moistureCell reads a moisture and holds it above zero and below 100 %.
func moistureCell(t *tomlfile.Table, key string) Cell {
	c := cell(t, key, quantity.Percent)
	if c.Given() && (c.Amount.Sign() <= 0 || !c.Amount.Less(hundred)) {
		t.AddProblem(key, fmt.Sprintf("%s is %s; a moisture lies above 0 %% and below 100 %%", t.Name(key), c.Amount.Written()), "At 100 % there is no grain left: the formula would divide by 100 - 100 = 0.")
		return Cell{}
	}
	return c
}

// percentCell reads a percent from 0 up to, not including, 100.
func percentCell(t *tomlfile.Table, key string) Cell {
	c := cell(t, key, quantity.Percent)
	if c.Given() && (c.Amount.Sign() < 0 || !c.Amount.Less(hundred)) {
		t.AddProblem(key, fmt.Sprintf("%s is %s of the weight", t.Name(key), c.Amount.Written()), "It must be from 0 % to below 100 %.")
		return Cell{}
	}
	return c
}

// less reports a < b where both were read.
func less(a, b Cell) bool {
	return a.Given() && b.Given() && a.Amount.Less(b.Amount)
}

func notNegative(t *tomlfile.Table, key string, c Cell) {
	if c.Amount.Sign() < 0 {
		t.AddProblem(key, fmt.Sprintf("%s is %s, below nought", t.Name(key), c.Amount.Written()), "Write the size alone; what is paid to the grower is said by the word premium.")
	}
}

func basis(t *tomlfile.Table) Basis {
	return Basis(t.Choice("basis", string(Net), string(Clean), string(Dry), string(Remaining)))
}

// step reads "continuous", or a step in points and a rule such as "0.5 up".
func step(t *tomlfile.Table) Step {
	text := t.Text("step")
	if text == "" || text == "continuous" {
		return Step{Rounding: quantity.Unrounded, Row: t.Place("step")}
	}
	r, err := quantity.ParseRounding(text)
	if err != nil || r.IsExact() {
		t.AddProblem("step", fmt.Sprintf("%s is %q", t.Name("step"), text), "Write \"continuous\", or the step in points and the rule, such as \"0.5 up\".")
	}
	return Step{Rounding: r, Row: t.Place("step")}
}
