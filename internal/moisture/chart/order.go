package chart

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// order checks that moisture is strictly monotonic along the dial, and monotonic along the
// temperature, in the same direction in the whole chart. A cell that breaks the order is nearly
// always a copying error: 15.4 written 14.5.
func (r *chartReader) order(rows []*tomlfile.Table) {
	c := r.chart
	last, end := len(c.cells)-1, len(c.temperatures)-1
	down := c.cells[last][0].Cmp(c.cells[0][0])
	across := c.cells[0][end].Cmp(c.cells[0][0])
	if across == 0 {
		across = c.cells[last][end].Cmp(c.cells[last][0])
	}
	for i, row := range c.cells {
		for j, cell := range row {
			if i > 0 {
				before := c.cells[i-1][j]
				if way := cell.Cmp(before); way == 0 || way != down {
					r.disorder(rows[i], j, cell, before, c.dials[i-1], message.New("down the dial"))
				}
			}
			if j > 0 {
				before := row[j-1]
				if way := cell.Cmp(before); way != 0 && way != across {
					r.disorder(rows[i], j, cell, before, c.temperatures[j-1], message.New("across the temperatures"))
				}
			}
		}
	}
}

func (r *chartReader) disorder(t *tomlfile.Table, column int, cell, before, mark quantity.Amount, way message.Text) {
	t.AddProblem("cells", message.New("going %s, the cell at %s is %s after %s at %s, which is not the way the rest of the chart goes",
		way, r.chart.temperatures[column], cell, before, mark), message.New("Compare both cells with the printed chart."))
}

// reach checks that the chart's stated range is inside that of its cells.
func (r *chartReader) reach() {
	low, high := r.chart.cells[0][0], r.chart.cells[0][0]
	for _, row := range r.chart.cells {
		for _, m := range row {
			low, high = quantity.Min(low, m), quantity.Max(high, m)
		}
	}
	if m := r.chart.Moisture; m.Given() && (m.High.More(high) || m.Low.Less(low)) {
		r.moisture.AddProblem("", message.New("the chart answers for %s but its cells reach only from %s to %s", m, low, high), message.New("Bring the range inside the cells, or add the missing rows."))
	}
}
