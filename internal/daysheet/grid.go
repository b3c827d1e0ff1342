package daysheet

import (
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// grid is a table in the making. Its figures stay amounts until the last row is
// in, so that every figure of a column is printed with as many decimals as the
// one that needs most.
type grid struct {
	columns []report.Column
	rows    []gridRow
}

type gridRow struct {
	kind  report.RowKind
	cells []cell
}

// cell is words, or an amount printed with at least so many decimals.
type cell struct {
	words    string
	amount   quantity.Amount
	isAmount bool
	places   int
}

// words, own and figure make columns: of the program's words, of names and
// people's own words, and of figures.
func words(title string) report.Column  { return report.Column{Title: title} }
func own(title string) report.Column    { return report.Column{Title: title, Own: true} }
func figure(title string) report.Column { return report.Column{Title: title, Align: report.Right} }

// in is a column of figures in a unit.
func in(title string, unit quantity.Unit) report.Column {
	return figure(strings.TrimSpace(title + " " + unit.String()))
}

func text(s string) cell { return cell{words: s} }

func number[N int | int64](n N) cell {
	if n == 0 {
		return cell{}
	}
	return cell{words: fmt.Sprint(n)}
}

func count(n int) cell { return cell{words: fmt.Sprint(n)} }

// leastPlaces are the decimals a unit is always printed with.
var leastPlaces = map[quantity.Unit]int{
	quantity.Dollar: 2, quantity.Bushel: 2, quantity.Cwt: 2, quantity.Tonne: 3, quantity.Percent: 1, quantity.LbPerBushel: 1,
}

func amount(a quantity.Amount) cell {
	return cell{amount: a, isAmount: true, places: leastPlaces[a.Unit()]}
}

// known is an amount where there is one.
func known(a quantity.Amount, ok bool) cell {
	if !ok {
		return cell{}
	}
	return amount(a)
}

// given is the same of a figure that may be nil.
func given(a *quantity.Amount) cell {
	if a == nil {
		return cell{}
	}
	return amount(*a)
}

// average is an average to the hundredth, which does not lend its second
// decimal to the figures it was made from.
func average(a quantity.Amount, ok bool) cell {
	if !ok {
		return cell{}
	}
	return text(a.Fixed(2))
}

func newGrid(columns ...report.Column) *grid { return &grid{columns: columns} }

func (g *grid) add(cells ...cell)    { g.put(report.Plain, cells) }
func (g *grid) total(cells ...cell)  { g.put(report.Total, cells) }
func (g *grid) struck(cells ...cell) { g.put(report.Struck, cells) }

func (g *grid) put(kind report.RowKind, cells []cell) {
	if len(cells) != len(g.columns) {
		panic(fmt.Sprintf("daysheet: %d cells for %d columns", len(cells), len(g.columns)))
	}
	g.rows = append(g.rows, gridRow{kind, cells})
}

// withoutEmpty leaves out columns of these titles in which nothing but zeros
// stand.
func (g *grid) withoutEmpty(titles ...string) *grid {
	for c := len(g.columns) - 1; c >= 0; c-- {
		named := slices.ContainsFunc(titles, func(t string) bool { return strings.HasPrefix(g.columns[c].Title, t) })
		if named && !slices.ContainsFunc(g.rows, func(r gridRow) bool { return r.cells[c].says() }) {
			g.drop(c)
		}
	}
	return g
}

func (c cell) says() bool {
	if c.isAmount {
		return !c.amount.IsZero()
	}
	return c.words != ""
}

func (g *grid) drop(c int) {
	g.columns = slices.Delete(slices.Clone(g.columns), c, c+1)
	for i := range g.rows {
		g.rows[i].cells = slices.Delete(slices.Clone(g.rows[i].cells), c, c+1)
	}
}

// table sets the grid, with the sentence that stands in place of no rows, and the
// parts of its name.
func (g *grid) table(empty string, name ...string) report.Table {
	t := report.Table{Name: strings.Join(name, " "), Parts: name, Columns: g.columns, Empty: empty}
	places := make([]int, len(g.columns))
	for _, r := range g.rows {
		for c, one := range r.cells {
			if one.isAmount {
				places[c] = max(places[c], one.places, decimals(one.amount))
			}
		}
	}
	for _, r := range g.rows {
		cells := make([]string, len(r.cells))
		for c, one := range r.cells {
			cells[c] = one.words
			if one.isAmount {
				cells[c] = one.amount.Fixed(int32(places[c]))
			}
		}
		t.Rows = append(t.Rows, report.Row{Kind: r.kind, Cells: cells})
	}
	return t
}

// decimals is how many decimals a figure needs.
func decimals(a quantity.Amount) int {
	_, rest, _ := strings.Cut(a.Figure(), ".")
	return len(strings.TrimSuffix(rest, "…"))
}
