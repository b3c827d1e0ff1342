package keeping

import (
	"slices"
	"sync"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
	"tenthpoint/schedules/keeping"
)

// shippedCurves are the curves in the program.
var shippedCurves = sync.OnceValue(func() []Curve { return shipped("equilibrium.toml", keeping.Equilibrium, readCurves) })

// shipped reads data inside the program; a mistake in it is one of the program.
func shipped[T any](name string, text []byte, read func(*tomlfile.Table) T) T {
	var out T
	err := tomlfile.Parse(name, text).Read(func(root *tomlfile.Table) { out = read(root) })
	if err != nil {
		panic("keeping: the data inside the program: " + err.Error())
	}
	return out
}

func readCurves(root *tomlfile.Table) []Curve {
	root.Date("dated")
	var out []Curve
	for _, t := range root.Tables("curve") {
		c := Curve{
			ID: t.Text("id"), Grains: t.Texts("grains"),
			Model:        Model(t.Choice("model", string(ChungPfost), string(Henderson), string(Halsey), string(Oswin))),
			Temperatures: readSpan(t, "temperatures", quantity.Celsius), Humidities: readSpan(t, "humidities", quantity.Percent),
			Source: t.Text("source"), Checked: t.Text("checked"), Note: t.OptionalText("note"),
		}
		if constants := t.Texts("constants"); len(constants) == 3 {
			c.A, c.B, c.C = quantity.Of(constants[0], quantity.Plain), quantity.Of(constants[1], quantity.Plain), quantity.Of(constants[2], quantity.Plain)
		} else {
			t.AddProblem("constants", message.New("%s has %d figures", t.Name("constants"), len(constants)), message.New("Write three."))
		}
		out = append(out, c)
	}
	return out
}

// readSpan reads a list of two amounts, the lower first.
func readSpan(t *tomlfile.Table, key string, unit quantity.Unit) quantity.Span {
	texts := t.Texts(key)
	var ends []quantity.Amount
	for _, text := range texts {
		if a, err := quantity.ParseAmount(text); err == nil && a.Unit() == unit {
			ends = append(ends, a)
		}
	}
	if len(ends) != 2 || len(texts) != 2 || ends[0].More(ends[1]) {
		t.AddProblem(key, message.New("%s is no range", t.Name(key)), message.New("Write the lowest and the highest, in %s.", unit.String()))
		return quantity.Span{}
	}
	return quantity.Span{Low: ends[0], High: ends[1]}
}

// Curves are the equations of a grain, the one that answers first.
func Curves(grain string) ([]Curve, error) {
	var out []Curve
	for _, c := range shippedCurves() {
		if slices.Contains(c.Grains, grain) {
			out = append(out, c)
		}
	}
	if len(out) == 0 {
		return nil, message.NotFound.Errorf("no equation of equilibrium moisture of %s has been confirmed by a published cell, so none is given", grain)
	}
	return out, nil
}
