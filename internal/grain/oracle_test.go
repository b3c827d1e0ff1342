package grain

import (
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// An oracle that knows nothing of the program's tables: it reads the printed
// rows and works with plain rational numbers. A sample with every factor
// tested is of the best grade none of whose rows it breaks.
type oracleRow struct {
	grade, kind string
	factor      FactorID
	value       *big.Rat
	stonesOver  *big.Rat
}

func oracleRows(t *testing.T) map[string][]oracleRow {
	rows := map[string][]oracleRow{}
	for _, row := range published(t, published810, "grades.csv") {
		if strings.HasPrefix(row["grade"], "special:") || historical(row) {
			continue
		}
		factor, _ := gradeRowFactor(row)
		o := oracleRow{grade: row["grade"], kind: row["limit_kind"], factor: factor, value: rat(row["value"])}
		if _, rest, ok := strings.Cut(row["factor"], "must exceed "); ok {
			printed, _, _ := strings.Cut(rest, "%")
			o.stonesOver = rat(printed)
		}
		for _, id := range gradeRowGrains[row["grain"]] {
			rows[id] = append(rows[id], o)
		}
	}
	return rows
}

func rat(text string) *big.Rat {
	r, ok := new(big.Rat).SetString(text)
	if !ok {
		panic(text)
	}
	return r
}

func (o oracleRow) breaks(recorded map[FactorID]*big.Rat) bool {
	sign := recorded[o.factor].Cmp(o.value)
	broken := o.kind == "max" && sign > 0 || o.kind == "min" && sign < 0
	if o.stonesOver != nil && recorded[Stones].Cmp(o.stonesOver) <= 0 {
		return false
	}
	return broken
}

func oracleGrade(rows []oracleRow, recorded map[FactorID]*big.Rat) int {
	for n := 1; ; n++ {
		name, found, broken := "U.S. No. "+string(rune('0'+n)), false, false
		for _, row := range rows {
			if row.grade == name {
				found = true
				broken = broken || row.breaks(recorded)
			}
		}
		if !found || !broken {
			return n - 1
		}
	}
}

func TestGradeAgreesWithThePrintedRows(t *testing.T) {
	rows := oracleRows(t)
	rapid.Check(t, func(t *rapid.T) {
		c := drawGraded(t)
		obs := drawObservations(t, c)
		recorded, err := c.Record(obs)
		if err != nil {
			t.Fatal(err)
		}
		exact := map[FactorID]*big.Rat{}
		for _, l := range gradeLines(c) {
			a, tested := recorded[l.Factor]
			if !tested {
				return
			}
			exact[l.Factor] = a.Rat()
		}
		g := mustGrade(t, c, obs)
		if got, want := rank(c, g.Best), oracleGrade(rows[c.ID], exact); got != want {
			t.Fatalf("%s: place %d (%s), printed rows give place %d", c.ID, got, g.Best, want)
		}
	})
}
