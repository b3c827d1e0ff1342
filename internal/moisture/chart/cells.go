package chart

import (
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// leastMarks is the least number of rows and columns of a chart: with one there is nothing to
// interpolate.
const leastMarks = 2

func (r *chartReader) temperatures(head *tomlfile.Table) {
	texts := head.Texts("temperatures")
	if len(texts) < leastMarks {
		head.AddProblem("temperatures", message.New("chart.temperatures names fewer than two temperatures"), r.form.temperatures)
		return
	}
	marks, ok := amounts(head, "temperatures", texts, quantity.Fahrenheit, quantity.Celsius)
	if !ok {
		return
	}
	for _, m := range marks {
		if m.Unit() != marks[0].Unit() {
			head.AddProblem("temperatures", message.New("chart.temperatures holds both %s and %s", marks[0], m), message.New("Write the whole axis on one scale."))
			return
		}
	}
	r.chart.temperatures = marks
	r.checkAxis(message.New("temperatures"), marks, func(int) (*tomlfile.Table, string) { return head, "temperatures" })
}

// amounts reads a list of figures in one of the units.
func amounts(t *tomlfile.Table, key string, texts []string, units ...quantity.Unit) ([]quantity.Amount, bool) {
	out := make([]quantity.Amount, 0, len(texts))
	ok := true
	for i, text := range texts {
		a, err := quantity.ParseAmount(text)
		if err != nil {
			t.AddProblem(key, message.New("%v, number %d: %v", key, i+1, err), message.Text{})
			ok = false
		} else if !slices.Contains(units, a.Unit()) {
			t.AddProblem(key, message.New("%v, number %d, is %s", key, i+1, a), message.New("It must be in %s.", unitWords(units)))
			ok = false
		}
		out = append(out, a)
	}
	return out, ok
}

func unitWords(units []quantity.Unit) string {
	words := units[0].String()
	for _, u := range units[1:] {
		words += " or " + u.String()
	}
	return words
}

// checkAxis finds marks that do not rise and steps left out; where says which
// table and key of a mark.
func (r *chartReader) checkAxis(name message.Text, a axis, where func(mark int) (*tomlfile.Table, string)) {
	if at, what := a.fall(); at >= 0 {
		t, key := where(at)
		t.AddProblem(key, message.New("the %s do not rise: %s", name, what), message.New("Put the chart in rising order; each figure stands once."))
		return
	}
	if at, what := a.gap(); at >= 0 && r.chart.uneven == "" {
		t, key := where(at)
		t.AddProblem(key, message.New("the %s have a gap: %s", name, what), message.New("Put in what is missing. If the printed chart changes its step there, %s.", r.form.uneven))
	}
}

func (r *chartReader) rows(rows []*tomlfile.Table) {
	if len(rows) < leastMarks {
		r.root.AddProblem("row", message.New("the chart has %d rows and needs at least two", len(rows)), r.form.row)
	}
	for _, t := range rows {
		r.chart.dials = append(r.chart.dials, t.Amount("dial", quantity.Dial))
		r.chart.cells = append(r.chart.cells, r.cells(t))
	}
	if len(rows) >= leastMarks {
		r.checkAxis(message.New("dial readings"), r.chart.dials, func(n int) (*tomlfile.Table, string) { return rows[n], "dial" })
	}
}

// cells is one row's moistures, or nothing when they cannot be used.
func (r *chartReader) cells(t *tomlfile.Table) []quantity.Amount {
	texts := t.Texts("cells")
	if want := len(r.chart.temperatures); want > 0 && len(texts) != want {
		t.AddProblem("cells", message.New("this row has %d cells for %d temperatures", len(texts), want), message.New("Write one cell for each temperature, none empty."))
		return nil
	}
	cells, ok := amounts(t, "cells", texts, quantity.Percent)
	if !ok {
		return nil
	}
	for i, m := range cells {
		if m.Sign() <= 0 || !m.Less(quantity.Int(100, quantity.Percent)) {
			t.AddProblem("cells", message.New("cell %d is %s; a moisture lies above 0 %% and below 100 %%", i+1, m), message.New("Compare the row with the printed chart."))
			return nil
		}
	}
	return cells
}

// isWhole reports whether the cells make a full table, so that they can be
// compared with each other.
func (r *chartReader) isWhole() bool {
	c := r.chart
	if len(c.temperatures) < leastMarks || len(c.cells) < leastMarks {
		return false
	}
	for _, row := range c.cells {
		if len(row) != len(c.temperatures) {
			return false
		}
	}
	return true
}

func (r *chartReader) testWeights() {
	rows := r.root.Tables("test_weight")
	if !r.root.Has("test_weight") {
		return
	}
	k := &correction{}
	units := []quantity.Unit{quantity.LbPerBushel, quantity.KgPerHL}
	for _, t := range rows {
		weight := t.Amount("weight", units...)
		k.weights, k.adds = append(k.weights, weight), append(k.adds, t.Amount("add", quantity.Point))
		if weight.Unit() != k.weights[0].Unit() {
			t.AddProblem("weight", message.New("this test weight is in %s, the first in %s", weight.Unit(), k.weights[0].Unit()), message.New("Write them all in one unit."))
			return
		}
	}
	if len(rows) < leastMarks {
		r.root.AddProblem("test_weight", message.New("the table by test weight has %d rows and needs at least two", len(rows)), r.form.testWeight)
		return
	}
	r.checkAxis(message.New("test weights"), k.weights, func(n int) (*tomlfile.Table, string) { return rows[n], "weight" })
	r.chart.testWeight = k
}
