package rule

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// Basis names a weight that something is taken on.
type Basis string

const (
	// Net is gross less tare.
	Net Basis = "net"
	// Clean is net less dockage: the wet grain.
	Clean Basis = "clean"
	// Dry is clean less water shrink and handling.
	Dry Basis = "dry"
	// Remaining is the weight left at that place in the order.
	Remaining Basis = "left"
)

// Message is the weight in posted rates.
func (b Basis) Message() message.Text {
	return map[Basis]message.Text{
		Net:       message.New("net weight"),
		Clean:     message.New("net weight less dockage"),
		Dry:       message.New("dry weight"),
		Remaining: message.New("what is left at that place in the order"),
	}[b]
}

// Cell is one figure of an edition with its place in the file.
type Cell struct {
	Amount quantity.Amount
	// Source is the cell's place for people: "corn-main-2026: shrink, rate, line 31".
	Source message.Text
}

// Given reports whether the edition has the cell at all.
func (c Cell) Given() bool { return !c.Source.IsZero() }

// Step says what part of a point counts: points are rounded to whole steps by a rule. The zero Step
// counts every tenth.
type Step struct {
	Rounding quantity.Rounding
	Source   message.Text
}

// Continuous reports whether parts of a point count without rounding.
func (s Step) Continuous() bool { return s.Rounding.IsExact() }

// ReadCell reads a required figure with its place. When it cannot be read the cell
// is not given.
func ReadCell(t *tomlfile.Table, key string, units ...quantity.Unit) Cell {
	a, ok := t.Figure(key, units...)
	return placed(t, key, a, ok)
}

// ReadOptionalCell reads a figure that may be left out.
func ReadOptionalCell(t *tomlfile.Table, key string, units ...quantity.Unit) Cell {
	a, ok := t.OptionalAmount(key, units...)
	return placed(t, key, a, ok)
}

func placed(t *tomlfile.Table, key string, a quantity.Amount, ok bool) Cell {
	if !ok {
		return Cell{}
	}
	return Cell{Amount: a, Source: t.Source(key)}
}

// Hundred is 100 %: all of a weight.
var Hundred = quantity.Int(100, quantity.Percent)

// ReadMoisture reads a moisture and holds it above zero and below 100 %.
func ReadMoisture(t *tomlfile.Table, key string) Cell {
	c := ReadCell(t, key, quantity.Percent)
	if c.Given() && (c.Amount.Sign() <= 0 || !c.Amount.Less(Hundred)) {
		t.AddProblem(key, message.New("%s is %s; a moisture lies above 0 %% and below 100 %%", t.Name(key), c.Amount.Written()), message.Words("At 100 % there is no grain left: the formula would divide by 100 - 100 = 0."))
		return Cell{}
	}
	return c
}

// ReadPercent reads a percent from 0 up to, not including, 100.
func ReadPercent(t *tomlfile.Table, key string) Cell {
	c := ReadCell(t, key, quantity.Percent)
	if c.Given() && (c.Amount.Sign() < 0 || !c.Amount.Less(Hundred)) {
		t.AddProblem(key, message.New("%s is %s of the weight", t.Name(key), c.Amount.Written()), message.Words("It must be from 0 % to below 100 %."))
		return Cell{}
	}
	return c
}

// Less reports a < b where both were read.
func Less(a, b Cell) bool {
	return a.Given() && b.Given() && a.Amount.Less(b.Amount)
}

func NotNegative(t *tomlfile.Table, key string, c Cell) {
	if c.Amount.Sign() < 0 {
		t.AddProblem(key, message.New("%s is %s, below zero", t.Name(key), c.Amount.Written()), message.New("Write the size alone; what is paid to the grower is said by the word premium."))
	}
}

func ReadBasis(t *tomlfile.Table) Basis {
	return Basis(t.Choice("basis", string(Net), string(Clean), string(Dry), string(Remaining)))
}

// ReadStep reads "continuous", or a step in points and a rule such as "0.5 up".
func ReadStep(t *tomlfile.Table) Step {
	text := t.Text("step")
	if text == "" || text == "continuous" {
		return Step{Rounding: quantity.Unrounded, Source: t.Source("step")}
	}
	r, err := quantity.ParseRounding(text)
	if err != nil || r.IsExact() {
		t.AddProblem("step", message.New("%s is %q", t.Name("step"), text), message.New("Write \"continuous\", or the step in points and the rule, such as \"0.5 up\"."))
	}
	return Step{Rounding: r, Source: t.Source("step")}
}
