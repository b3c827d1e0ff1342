package keeping

import (
	"encoding/csv"
	"os"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"

	"tenthpoint/internal/quantity"
)

// publishedCells are the rows of a table of cells as its header names them, and the
// ids of the exceptions with their reasons.
func publishedCells(t *testing.T, folder string) (rows []map[string]string, exceptions map[string]string) {
	t.Helper()
	file, err := os.Open("../../testdata/published/" + folder + "/cells.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	lines, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range lines[1:] {
		row := map[string]string{}
		for i, cell := range line {
			row[lines[0][i]] = cell
		}
		rows = append(rows, row)
	}
	var source struct{ Exception []struct{ ID, Reason string } }
	if _, err := toml.DecodeFile("../../testdata/published/"+folder+"/SOURCE.toml", &source); err != nil {
		t.Fatal(err)
	}
	exceptions = map[string]string{}
	for _, e := range source.Exception {
		exceptions[e.ID] = e.Reason
	}
	return rows, exceptions
}

func amount(t *testing.T, text string) quantity.Amount {
	t.Helper()
	a, err := quantity.ParseAmount(text)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func curveCalled(t *testing.T, id string) Curve {
	t.Helper()
	for _, c := range shippedCurves() {
		if c.ID == id {
			return c
		}
	}
	t.Fatalf("there is no curve %s", id)
	return Curve{}
}

// halfUnit is half a unit of the last place a figure is printed with.
func halfUnit(text string, unit quantity.Unit) quantity.Amount {
	half := quantity.Of("0.5", unit)
	if _, decimals, ok := strings.Cut(text, "."); ok {
		for range decimals {
			half = half.Div(quantity.Int(10, quantity.Plain))
		}
	}
	return half
}

// Every published cell, against the curve that is said to give it: within half a
// unit of its last place, and a thousandth for a tie.
func TestEquilibriumMoistureCellByCell(t *testing.T) {
	rows, exceptions := publishedCells(t, "grain-equilibrium-moisture")
	checked, by := 0, map[string]int{}
	for _, row := range rows {
		if exceptions[row["id"]] != "" {
			continue
		}
		c := curveCalled(t, row["curve"])
		got, err := c.Moisture(amount(t, row["temperature"]), amount(t, row["humidity"]))
		if err != nil {
			t.Errorf("%s: %v", row["id"], err)
			continue
		}
		off := got.Sub(quantity.Of(row["moisture"], quantity.Percent))
		most := halfUnit(row["moisture"], quantity.Percent).Add(quantity.Of("0.002", quantity.Percent))
		if off.More(most) || off.Less(most.Neg()) {
			t.Errorf("%s %s at %s and %s: %s, printed %s", row["id"], row["curve"], row["temperature"], row["humidity"], got, row["moisture"])
		}
		checked++
		by[c.ID]++
	}
	if checked+len(exceptions) != len(rows) || len(rows) != 129 || len(exceptions) != 4 {
		t.Errorf("%d cells checked and %d excepted of %d", checked, len(exceptions), len(rows))
	}
	for _, c := range shippedCurves() {
		if by[c.ID] == 0 && c.ID != "canola-henderson" {
			t.Errorf("no cell confirms %s", c.ID)
		}
	}
	t.Logf("%d cells: %v", checked, by)
}

// kernelsDamaged is the table that was printed for 30 % of damaged kernels; its
// multiplier is 2.08 exp(-0.0239 x 30).
const kernelsDamaged = "S1"

var damage30 = number("2.08").Mul(exp(number("-0.717")))

// Every published cell of storage days, within half a day; the equation within half
// a day or 1 %, and its exceptions within a day.
func TestStorageDaysCellByCell(t *testing.T) {
	rows, exceptions := publishedCells(t, "allowable-storage-time")
	checked, data := 0, 0
	for _, row := range rows {
		if row["table"] == "" {
			data++
			continue
		}
		checked++
		figure, more := strings.CutPrefix(row["days"], ">")
		printed := quantity.Of(figure, quantity.Day)
		got, err := tableCalled(t, row["table"]).Days(amount(t, row["moisture"]), amount(t, row["temperature"]))
		most := quantity.Of("0.5", quantity.Day)
		if row["table"] == "x535" {
			most = quantity.Max(most, printed.Div(quantity.Int(100, quantity.Plain)))
		}
		if exceptions[row["id"]] != "" {
			most = quantity.Int(1, quantity.Day)
		}
		if row["source"] == kernelsDamaged {
			got.Days = got.Days.Mul(damage30)
		}
		off := got.Days.Sub(printed)
		if err != nil || got.AtLeast != more || off.More(most) || off.Less(most.Neg()) {
			t.Errorf("%s %s: %s, printed %s; %v", row["id"], row["table"], got.Days, row["days"], err)
		}
	}
	if checked+data != len(rows) || len(rows) != 157 || data != 17 || len(exceptions) != 4 {
		t.Errorf("%d cells checked, %d of them with exceptions, and %d data of %d", checked, len(exceptions), data, len(rows))
	}
	t.Logf("%d cells", checked)
}

func tableCalled(t *testing.T, id string) Table {
	t.Helper()
	for _, one := range shippedTables() {
		if one.ID == id {
			return one
		}
	}
	t.Fatalf("there is no table %s", id)
	return Table{}
}
