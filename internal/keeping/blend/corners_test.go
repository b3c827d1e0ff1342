package blend

import (
	"math/big"

	"tenthpoint/internal/quantity"
)

// half is all takings x with row·x at most limit.
type half struct {
	row   []*big.Rat
	limit *big.Rat
}

// halves are the bounds of a mix, written down without the solver's tableau: what is
// there of each lot, the water over the target, and the volume over the target.
func halves(lots []Lot, target Target) []half {
	n := len(lots)
	wet, light := half{make([]*big.Rat, n), new(big.Rat)}, half{make([]*big.Rat, n), new(big.Rat)}
	all := []half{wet, light}
	for i, l := range lots {
		wet.row[i] = l.Moisture.Sub(target.Moisture).Rat()
		light.row[i] = new(big.Rat).Sub(new(big.Rat).Inv(l.TestWeight.Rat()), new(big.Rat).Inv(target.TestWeight.Rat()))
		all = append(all, half{unit(n, i, 1), l.Weight.Rat()}, half{unit(n, i, -1), new(big.Rat)})
	}
	return all
}

func unit(n, i int, v int64) []*big.Rat {
	row := make([]*big.Rat, n)
	for j := range row {
		row[j] = new(big.Rat)
	}
	row[i].SetInt64(v)
	return row
}

// bestCorner is the most weight at a point where as many bounds as there are lots
// are met exactly and none is broken.
func bestCorner(lots []Lot, target Target) *big.Rat {
	best, all := new(big.Rat), halves(lots, target)
	choose(len(all), len(lots), nil, func(chosen []int) {
		x := meet(all, chosen)
		if x == nil {
			return
		}
		for _, h := range all {
			if dot(h.row, x).Cmp(h.limit) > 0 {
				return
			}
		}
		if sum := dot(ones(len(x)), x); sum.Cmp(best) > 0 {
			best = sum
		}
	})
	return best
}

func choose(of, count int, chosen []int, see func([]int)) {
	if len(chosen) == count {
		see(chosen)
		return
	}
	first := 0
	if len(chosen) > 0 {
		first = chosen[len(chosen)-1] + 1
	}
	for i := first; i < of; i++ {
		choose(of, count, append(chosen[:len(chosen):len(chosen)], i), see)
	}
}

// meet is the point where the chosen bounds meet, by elimination; nil where they
// meet in no point or in many.
func meet(all []half, chosen []int) []*big.Rat {
	n := len(chosen)
	m := make([][]*big.Rat, n)
	for i, c := range chosen {
		for _, v := range append(append([]*big.Rat{}, all[c].row...), all[c].limit) {
			m[i] = append(m[i], new(big.Rat).Set(v))
		}
	}
	for col := range n {
		p := col
		for p < n && m[p][col].Sign() == 0 {
			p++
		}
		if p == n {
			return nil
		}
		m[col], m[p] = m[p], m[col]
		for i := range n {
			if i != col {
				eliminate(m[i], m[col], new(big.Rat).Quo(m[i][col], m[col][col]))
			}
		}
	}
	x := make([]*big.Rat, n)
	for i := range x {
		x[i] = new(big.Rat).Quo(m[i][n], m[i][i])
	}
	return x
}

func eliminate(row, other []*big.Rat, times *big.Rat) {
	for j := range row {
		row[j].Sub(row[j], new(big.Rat).Mul(other[j], times))
	}
}

func dot(a, b []*big.Rat) *big.Rat {
	sum := new(big.Rat)
	for i := range a {
		sum.Add(sum, new(big.Rat).Mul(a[i], b[i]))
	}
	return sum
}

func ones(n int) []*big.Rat {
	row := make([]*big.Rat, n)
	for i := range row {
		row[i] = big.NewRat(1, 1)
	}
	return row
}

func whole(take []quantity.Amount) bool {
	for _, a := range take {
		if !quantity.To("1", quantity.Down).Apply(a).Equal(a) {
			return false
		}
	}
	return true
}
