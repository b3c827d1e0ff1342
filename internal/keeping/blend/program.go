package blend

import "tenthpoint/internal/quantity"

// The plain numbers 0 and 1.
var (
	none = quantity.Zero(quantity.Plain)
	one  = quantity.Int(1, quantity.Plain)
)

// program is a linear program: the largest c·x, the first objective before the
// second, for x from zero up to the bounds, with each row·x at most its limit. Every
// limit is zero or more, so that taking nothing is always allowed.
type program struct {
	objectives [][]quantity.Amount
	rows       [][]quantity.Amount
	limits     []quantity.Amount
}

// programOf has a row for the moisture, one for the test weight, and one for each
// lot, of which no more can be taken than there is.
func programOf(lots []Lot, target Target) program {
	p := program{objectives: objectives(lots)}
	wet := make([]quantity.Amount, len(lots))
	for i, l := range lots {
		wet[i] = l.Moisture.Sub(target.Moisture).In(quantity.Plain)
	}
	p.add(wet, none)
	if quantity.Recorded(target.TestWeight) {
		light := make([]quantity.Amount, len(lots))
		for i, l := range lots {
			light[i] = target.TestWeight.Div(l.TestWeight).Sub(one)
		}
		p.add(light, none)
	}
	for i, l := range lots {
		row := zeros(len(lots))
		row[i] = one
		p.add(row, l.Weight.In(quantity.Plain))
	}
	return p
}

func (p *program) add(row []quantity.Amount, limit quantity.Amount) {
	p.rows, p.limits = append(p.rows, row), append(p.limits, limit)
}

// objectives are the most grain; or the lots to be used whole, and then the least
// of the others.
func objectives(lots []Lot) [][]quantity.Amount {
	all, whole, rest, asked := zeros(len(lots)), zeros(len(lots)), zeros(len(lots)), false
	for i, l := range lots {
		all[i] = one
		if l.Whole {
			whole[i], asked = one, true
		} else {
			rest[i] = one.Neg()
		}
	}
	if asked {
		return [][]quantity.Amount{whole, rest}
	}
	return [][]quantity.Amount{all}
}

func zeros(n int) []quantity.Amount {
	return make([]quantity.Amount, n) // the zero Amount is the plain number 0
}

// solve is the simplex method on a tableau of exact fractions. Bland's rule, the
// first column that gains and the first row that binds, cannot go in circles.
func solve(p program) []quantity.Amount {
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
	rows, gains [][]quantity.Amount
	basis       []int
	variables   int
}

func newTableau(p program) *tableau {
	n, m := len(p.objectives[0]), len(p.rows)
	t := &tableau{variables: n}
	for i, row := range p.rows {
		line := zeros(n + m + 1)
		copy(line, row)
		line[n+i], line[n+m] = one, p.limits[i]
		t.rows, t.basis = append(t.rows, line), append(t.basis, n+i)
	}
	for _, objective := range p.objectives {
		line := zeros(n + m + 1)
		copy(line, objective)
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
	least := none
	last := len(t.rows[0]) - 1
	for i, line := range t.rows {
		if line[column].Sign() <= 0 {
			continue
		}
		ratio := line[last].Div(line[column])
		if bound {
			if c := ratio.Cmp(least); c > 0 || c == 0 && t.basis[i] > t.basis[row] {
				continue
			}
		}
		least, row, bound = ratio, i, true
	}
	return row, bound
}

func (t *tableau) pivot(row, column int) {
	by := t.rows[row][column]
	for j, v := range t.rows[row] {
		t.rows[row][j] = v.Div(by).Reduced()
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
func subtract(line, row []quantity.Amount, column int) {
	factor := line[column]
	if factor.Sign() == 0 {
		return
	}
	for j, v := range row {
		line[j] = line[j].Sub(factor.Mul(v)).Reduced()
	}
}

func (t *tableau) solution() []quantity.Amount {
	out := zeros(t.variables)
	for i, j := range t.basis {
		if j < t.variables {
			out[j] = t.rows[i][len(t.rows[i])-1]
		}
	}
	return out
}

// wholeUnits takes whole pounds or kilograms, near the exact solution: of the ways
// to round the few lots that are not whole, the one that meets the target with the
// most grain, or where lots are used whole, with the least. A lot that is taken to
// its last pound stays as it is. Where no way meets the target, the mix is left in fractions.
func wholeUnits(lots []Lot, target Target, exact []quantity.Amount) []quantity.Amount {
	down, up := quantity.To("1", quantity.Down), quantity.To("1", quantity.Up)
	take, open := make([]quantity.Amount, len(lots)), []int(nil)
	least := false
	for i, l := range lots {
		take[i] = exact[i].In(l.Weight.Unit())
		least = least || l.Whole
		if !down.Apply(take[i]).Equal(take[i]) && !take[i].Equal(l.Weight) {
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
