package keeping

import (
	"slices"
	"strings"
	"sync"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
	"tenthpoint/schedules/keeping"
)

// shippedTables are the tables and equations of storage days in the program.
var shippedTables = sync.OnceValue(func() []Table { return shipped("storage-days.toml", keeping.StorageDays, readTables) })

// readTables reads printed tables and equations, and then those that read another
// of them at more moisture.
func readTables(root *tomlfile.Table) []Table {
	root.Date("dated")
	var out []Table
	for _, t := range root.Tables("table") {
		one := heading(t)
		one.lookUp = readGrid(t)
		out = append(out, one)
	}
	for _, t := range root.Tables("equation") {
		one := heading(t)
		one.lookUp = cornLoss{readSpan(t, "temperatures", quantity.Fahrenheit), readSpan(t, "moistures", quantity.Percent)}
		out = append(out, one)
	}
	for _, t := range root.Tables("offset") {
		one, name, points := heading(t), t.Text("table"), t.Amount("points", quantity.Point)
		i := slices.IndexFunc(out, func(other Table) bool { return other.ID == name })
		if i < 0 {
			t.AddProblem("table", message.New("%s is %q", t.Name("table"), name), message.New("Name a table or an equation above."))
			continue
		}
		one.Basis, one.lookUp = out[i].Basis, wetter{out[i].lookUp, points}
		out = append(out, one)
	}
	return out
}

func heading(t *tomlfile.Table) Table {
	return Table{ID: t.Text("id"), Grains: t.Texts("grains"), Source: t.Text("source"), Basis: t.OptionalText("basis"), Checked: t.OptionalText("checked")}
}

func readGrid(t *tomlfile.Table) grid {
	var g grid
	for _, text := range t.Texts("temperatures") {
		g.temperatures = append(g.temperatures, readCell(t, "temperatures", text, quantity.Fahrenheit).Days)
	}
	for _, line := range t.Texts("rows") {
		cells := strings.Fields(line)
		if len(cells) != len(g.temperatures)+1 {
			t.AddProblem("rows", message.New("%s has a row of %d cells", t.Name("rows"), len(cells)), message.New("Write the moisture and a cell for each temperature."))
			continue
		}
		g.moistures = append(g.moistures, readCell(t, "rows", cells[0], quantity.Percent).Days)
		var row []Days
		for _, cell := range cells[1:] {
			row = append(row, readCell(t, "rows", cell, quantity.Day))
		}
		g.cells = append(g.cells, row)
	}
	return g
}

// readCell reads a figure; ">300" is at least so many.
func readCell(t *tomlfile.Table, key, text string, unit quantity.Unit) Days {
	figure, atLeast := strings.CutPrefix(text, ">")
	a, err := quantity.Field{Name: key, Unit: unit, Places: 1, Min: quantity.Zero(unit), Max: quantity.Int(5000, unit)}.Parse(figure)
	if err != nil {
		t.AddProblem(key, message.New("%s has the cell %q", t.Name(key), text), message.New("Write a figure in %s, or > before it.", unit.String()))
	}
	return Days{a, atLeast}
}

// Tables are the sources of storage days of a grain, the one that answers first.
func Tables(grain string) ([]Table, error) {
	var out []Table
	for _, t := range shippedTables() {
		if slices.Contains(t.Grains, grain) {
			out = append(out, t)
		}
	}
	if len(out) == 0 {
		return nil, message.NotFound.Errorf("no table of storage days of %s has been read, so none is given", grain)
	}
	return out, nil
}
