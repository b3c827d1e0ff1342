package blend

import (
	"math/big"

	"tenthpoint/internal/quantity"
)

// program is a linear program: the largest c·x, the first objective before the
// second, for x from zero up to the bounds, with each row·x at most its limit. Every
// limit is zero or more, so that taking nothing is always allowed.
type program struct {
	objectives [][]*big.Rat
	rows       [][]*big.Rat
	limits     []*big.Rat
}

// programOf has a row for the moisture, one for the test weight, and one for each
// lot, of which no more can be taken than there is.
func programOf(lots []Lot, target Target) program {
	p := program{objectives: objectives(lots)}
	wet := make([]*big.Rat, len(lots))
	for i, l := range lots {
		wet[i] = new(big.Rat).Sub(l.Moisture.Rat(), target.Moisture.Rat())
	}
	p.add(wet, new(big.Rat))
	if quantity.Recorded(target.TestWeight) {
		light := make([]*big.Rat, len(lots))
		for i, l := range lots {
			light[i] = new(big.Rat).Quo(target.TestWeight.Rat(), l.TestWeight.Rat())
			light[i].Sub(light[i], big.NewRat(1, 1))
		}
		p.add(light, new(big.Rat))
	}
	for i, l := range lots {
		row := zeros(len(lots))
		row[i] = big.NewRat(1, 1)
		p.add(row, l.Weight.Rat())
	}
	return p
}

func (p *program) add(row []*big.Rat, limit *big.Rat) {
	p.rows, p.limits = append(p.rows, row), append(p.limits, limit)
}

// objectives are the most grain; or the lots to be used whole, and then the least
// of the others.
func objectives(lots []Lot) [][]*big.Rat {
	all, whole, rest, asked := zeros(len(lots)), zeros(len(lots)), zeros(len(lots)), false
	for i, l := range lots {
		all[i] = big.NewRat(1, 1)
		if l.Whole {
			whole[i], asked = big.NewRat(1, 1), true
		} else {
			rest[i] = big.NewRat(-1, 1)
		}
	}
	if asked {
		return [][]*big.Rat{whole, rest}
	}
	return [][]*big.Rat{all}
}

func zeros(n int) []*big.Rat {
	out := make([]*big.Rat, n)
	for i := range out {
		out[i] = new(big.Rat)
	}
	return out
}

// solve is the simplex method on a tableau of exact fractions. Bland's rule, the
// first column that gains and the first row that binds, cannot go in circles.
func solve(p program) []*big.Rat {
	t := newTableau(p)
	for {
		column, found := t.entering()
		if !found {
			return t.solution()
		}
		row, bound := t.leaving(column)
		if !bound {
			return t.solution() // cannot be: every lot is bounded
		}
		t.pivot(row, column)
	}
}

// tableau holds a row for each limit, with the slack that basis names, and the
// reduced gains of each objective. The last column is the right side.
type tableau struct {
	rows, gains [][]*big.Rat
	basis       []int
	variables   int
}

func newTableau(p program) *tableau {
	n, m := len(p.objectives[0]), len(p.rows)
	t := &tableau{variables: n}
	for i, row := range p.rows {
		line := zeros(n + m + 1)
		for j, v := range row {
			line[j].Set(v)
		}
		line[n+i].SetInt64(1)
		line[n+m].Set(p.limits[i])
		t.rows, t.basis = append(t.rows, line), append(t.basis, n+i)
	}
	for _, objective := range p.objectives {
		line := zeros(n + m + 1)
		for j, v := range objective {
			line[j].Set(v)
		}
		t.gains = append(t.gains, line)
	}
	return t
}

// entering is the first column by which an objective gains while those before it
// lose nothing.
func (t *tableau) entering() (column int, found bool) {
	for j := range len(t.gains[0]) - 1 {
		for _, gains := range t.gains {
			if sign := gains[j].Sign(); sign != 0 {
				if sign > 0 {
					return j, true
				}
				break
			}
		}
	}
	return 0, false
}

// leaving is the row that binds first as a column grows.
func (t *tableau) leaving(column int) (row int, bound bool) {
	var least *big.Rat
	last := len(t.rows[0]) - 1
	for i, line := range t.rows {
		if line[column].Sign() <= 0 {
			continue
		}
		ratio := new(big.Rat).Quo(line[last], line[column])
		if c := 0; least != nil {
			if c = ratio.Cmp(least); c > 0 || c == 0 && t.basis[i] > t.basis[row] {
				continue
			}
		}
		least, row, bound = ratio, i, true
	}
	return row, bound
}

func (t *tableau) pivot(row, column int) {
	by := new(big.Rat).Inv(t.rows[row][column])
	for _, v := range t.rows[row] {
		v.Mul(v, by)
	}
	for i, line := range t.rows {
		if i != row {
			subtract(line, t.rows[row], column)
		}
	}
	for _, line := range t.gains {
		subtract(line, t.rows[row], column)
	}
	t.basis[row] = column
}

// subtract clears a column of a line by a row that has one there.
func subtract(line, row []*big.Rat, column int) {
	factor := new(big.Rat).Set(line[column])
	if factor.Sign() == 0 {
		return
	}
	for j, v := range row {
		line[j].Sub(line[j], new(big.Rat).Mul(factor, v))
	}
}

func (t *tableau) solution() []*big.Rat {
	out := zeros(t.variables)
	for i, j := range t.basis {
		if j < t.variables {
			out[j].Set(t.rows[i][len(t.rows[i])-1])
		}
	}
	return out
}

// wholeUnits takes whole pounds or kilograms, near the exact solution: of the ways
// to round the few lots that are not whole, the one that meets the target with the
// most grain, or where lots are used whole, with the least. A lot that is taken to
// its last pound stays as it is. Where no way meets the target, the mix is left in fractions.
func wholeUnits(lots []Lot, target Target, exact []*big.Rat) []quantity.Amount {
	down, up := quantity.To("1", quantity.Down), quantity.To("1", quantity.Up)
	take, open := make([]quantity.Amount, len(lots)), []int(nil)
	least := false
	for i, l := range lots {
		take[i] = amountOf(exact[i], l.Weight.Unit())
		least = least || l.Whole
		if !exact[i].IsInt() && !take[i].Equal(l.Weight) {
			open = append(open, i)
		}
	}
	best := take
	var met bool
	for choice := range 1 << len(open) {
		tried := append([]quantity.Amount(nil), take...)
		for bit, i := range open {
			round := down
			if choice>>bit&1 == 1 {
				round = up
			}
			tried[i] = quantity.Min(round.Apply(take[i]), lots[i].Weight)
		}
		m := MixOf(lots, tried)
		if target.Meets(m) && (!met || m.Weight.More(MixOf(lots, best).Weight) != least) {
			best, met = tried, true
		}
	}
	return best
}

func amountOf(r *big.Rat, unit quantity.Unit) quantity.Amount {
	return quantity.Of(r.Num().String(), unit).Div(quantity.Of(r.Denom().String(), quantity.Plain))
}
