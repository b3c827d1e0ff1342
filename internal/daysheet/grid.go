package daysheet

import (
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// column is one column of a table: its heading, its cell of a row, and its cell of the total. All
// about a column is in one place; a new column is a new line.
type column[R, S any] struct {
	head report.Column
	of   func(R) cell
	sum  func(S) cell // nil prints nothing
	when presence
}

// presence says when a column is on the paper.
type presence int

const (
	always      presence = iota
	unlessEmpty          // left out where all its figures are zero
	never                // on a paper that was made before it was there
)

// none is the total of a table without totals.
type none struct{}

// grid is a table in the making. Its figures stay amounts until the last row is
// in, so that every figure of a column is printed with as many decimals as the
// one that needs most.
type grid[R, S any] struct {
	columns []column[R, S]
	rows    []gridRow
}

type gridRow struct {
	kind  report.RowKind
	cells []cell
}

// cell is a text, or an amount printed with at least so many decimals.
type cell struct {
	text     message.Text
	amount   quantity.Amount
	isAmount bool
	isSigned bool // a figure above zero has its sign too
	places   int
}

// wordsColumn and figureColumn make columns of texts and of figures.
func wordsColumn(title string) report.Column { return report.Column{Title: message.Words(title)} }

func figureColumn(title string) report.Column { return unitColumn(title, quantity.Plain) }

// unitColumn is a column of figures in a unit.
func unitColumn(title string, unit quantity.Unit) report.Column {
	return report.Column{Title: message.Words(title), Unit: unit.String(), Align: report.Right}
}

func text(t message.Text) cell { return cell{text: t} }

// said is a word of the program that is kept in English, name a name or a person's own words.
func said(english string) cell { return text(message.Words(english)) }
func name(s string) cell       { return text(message.Name(s)) }

func date(d quantity.Date) cell { return name(d.String()) }

func number[N int | int64](n N) cell {
	if n == 0 {
		return cell{}
	}
	return name(fmt.Sprint(n))
}

func count(n int) cell { return name(fmt.Sprint(n)) }

// leastPlaces are the decimals a unit is always printed with.
var leastPlaces = map[quantity.Unit]int{
	quantity.Dollar: 2, quantity.Bushel: 2, quantity.Cwt: 2, quantity.Tonne: 3, quantity.Percent: 1, quantity.LbPerBushel: 1, quantity.KgPerHL: 1,
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
	return text(report.Figure(a.Fixed(2)))
}

func newGrid[R, S any](columns []column[R, S]) *grid[R, S] { return &grid[R, S]{columns: columns} }

// put adds a row.
func (g *grid[R, S]) put(kind report.RowKind, r R) {
	cells := make([]cell, len(g.columns))
	for i, c := range g.columns {
		cells[i] = c.of(r)
	}
	g.rows = append(g.rows, gridRow{kind, cells})
}

func (g *grid[R, S]) add(r R)    { g.put(report.Plain, r) }
func (g *grid[R, S]) struck(r R) { g.put(report.Struck, r) }

// total adds the row of totals.
func (g *grid[R, S]) total(s S) {
	cells := make([]cell, len(g.columns))
	for i, c := range g.columns {
		if c.sum != nil {
			cells[i] = c.sum(s)
		}
	}
	g.rows = append(g.rows, gridRow{report.Total, cells})
}

func (c cell) says() bool {
	if c.isAmount {
		return !c.amount.IsZero()
	}
	return !c.text.IsZero()
}

// printed are the columns that are on the paper.
func (g *grid[R, S]) printed() (columns []int) {
	for i, c := range g.columns {
		says := func(r gridRow) bool { return r.cells[i].says() }
		if c.when == always || c.when == unlessEmpty && slices.ContainsFunc(g.rows, says) {
			columns = append(columns, i)
		}
	}
	return columns
}

// table makes the table, with the sentence printed when there are no rows.
func (g *grid[R, S]) table(name, empty message.Text) report.Table {
	t := report.Table{Name: name, Empty: empty}
	columns := g.printed()
	for _, i := range columns {
		t.Columns = append(t.Columns, g.columns[i].head)
	}
	for _, r := range g.rows {
		row := report.Row{Kind: r.kind}
		for _, i := range columns {
			row.Cells = append(row.Cells, r.cells[i].printed(g.places(i)))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// places returns the number of decimals of a column.
func (g *grid[R, S]) places(column int) (most int) {
	for _, r := range g.rows {
		if one := r.cells[column]; one.isAmount {
			most = max(most, one.places, decimals(one.amount))
		}
	}
	return most
}

func (c cell) printed(places int) message.Text {
	if !c.isAmount {
		return c.text
	}
	written := c.amount.Fixed(int32(places))
	if c.isSigned && c.amount.Sign() > 0 {
		written = "+" + written
	}
	return report.Figure(written)
}

// decimals returns the number of decimals a figure needs.
func decimals(a quantity.Amount) int {
	_, rest, _ := strings.Cut(a.Figure(), ".")
	return len(strings.TrimSuffix(rest, "…"))
}
