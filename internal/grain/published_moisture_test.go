package grain

import (
	"testing"

	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
)

var moistureColumns = []struct{ column, class string }{
	{"straight_max", "straight"}, {"tough_max", "tough"}, {"damp_max", "damp"}, {"moist_max", "moist"},
}

// TestEveryMoistureCell tests every cell of the order just below, on and just above it, by a tenth
// and by a hundredth.
func TestEveryMoistureCell(t *testing.T) {
	rows := published(t, "canada-off-grades-order", "moisture.csv")
	if len(rows) != len(MoistureGrains()) {
		t.Errorf("%d rows printed, %d in the program", len(rows), len(MoistureGrains()))
	}
	for i, row := range rows {
		if got := MoistureGrains()[i]; got != row["grain"] {
			t.Errorf("row %d is %q, printed %q", i, got, row["grain"])
		}
		classes := printedClasses(row)
		for n, class := range classes {
			if class.highest == "" {
				continue
			}
			highest := quantity.Of(class.highest, quantity.Percent)
			for step, want := range map[string]string{
				"-0.1": class.name, "-0.01": class.name, "0": class.name, "0.04": class.name,
				"0.05": classes[n+1].name, "0.1": classes[n+1].name,
			} {
				at := highest.Add(quantity.Of(step, quantity.Percent))
				got, err := Class(row["grain"], at)
				if err != nil || got.Name != want {
					t.Errorf("%s at %s: %v %v, printed %s", row["grain"], at, got, err, want)
				}
				if got.Source != row["source"] || got.Grain != row["grain"] {
					t.Errorf("%s names %q, printed %q", row["grain"], got.Source, row["source"])
				}
			}
		}
	}
}

type printedClass struct{ name, highest string }

// printedClasses reads a row: cells in order, "open" without an upper end, an
// empty cell no such class, and wet over the last where that is printed.
func printedClasses(row map[string]string) []printedClass {
	var out []printedClass
	for _, c := range moistureColumns {
		switch cell := row[c.column]; cell {
		case "":
		case "open":
			out = append(out, printedClass{c.class, ""})
		default:
			out = append(out, printedClass{c.class, cell})
		}
	}
	if row["wet_over"] != "" {
		out = append(out, printedClass{"wet", ""})
	}
	return out
}

// TestLowestTough: straight's highest and a tenth more, for every row that has
// a tough class; the floor on shrink-to is a tenth below it again.
func TestLowestTough(t *testing.T) {
	for _, row := range published(t, "canada-off-grades-order", "moisture.csv") {
		tough, has, err := LowestTough(row["grain"])
		if err != nil || has != (row["tough_max"] != "") {
			t.Errorf("%s: lowest tough %v %v %v, printed %q", row["grain"], tough, has, err, row["tough_max"])
		}
		floor, hasFloor, err := ShrinkFloor(row["grain"])
		if err != nil || hasFloor != has {
			t.Errorf("%s: floor %v %v %v", row["grain"], floor, hasFloor, err)
		}
		if !has {
			continue
		}
		straight := quantity.Of(row["straight_max"], quantity.Percent)
		if !tough.Equal(straight.Add(tenthPercent)) || !floor.Equal(straight) {
			t.Errorf("%s: lowest tough %s, floor %s, straight to %s", row["grain"], tough, floor, straight)
		}
	}
}

// TestWheatAt142IsDry is the reading everybody in the trade knows.
func TestWheatAt142IsDry(t *testing.T) {
	c, err := Class("wheat - canada western red spring", quantity.Of("14.2", quantity.Percent))
	if err != nil || c.Name != "straight" || c.String() != "straight (Wheat - Canada Western Red Spring: up to 14.5 %)" {
		t.Fatal(c, err)
	}
}

func TestMoistureClassIntervals(t *testing.T) {
	for _, c := range []struct{ grain, moisture, want string }{
		{"Canola", "10.0", "straight (Canola: up to 10.0 %)"},
		{"Canola", "10.1", "tough (Canola: 10.1 % to 12.5 %)"},
		{"Canola", "12.6", "damp (Canola: over 12.5 %)"},
		{"Beans", "18.1", "damp (Beans: over 18.0 %)"},
		{"Soybeans", "20.0", "moist (Soybeans: 18.1 % to 20.0 %)"},
		{"Soybeans", "20.1", "wet (Soybeans: over 20.0 %)"},
	} {
		got, err := Class(c.grain, quantity.Of(c.moisture, quantity.Percent))
		if err != nil || got.String() != c.want {
			t.Errorf("%s at %s: %s %v, want %s", c.grain, c.moisture, got, err, c.want)
		}
	}
}

func TestClassRefusesInSentences(t *testing.T) {
	for _, c := range []struct {
		grain    string
		moisture quantity.Amount
		want     errortest.Want
	}{
		{"Barley", quantity.Of("14", quantity.Percent), errortest.Invalid("Barley")},
		{"Cocoa", quantity.Of("14", quantity.Percent), errortest.Invalid("Cocoa")},
		{"", quantity.Of("14", quantity.Percent), errortest.Invalid()},
		{"Canola", quantity.Of("14", quantity.Point), errortest.Invalid("Moisture", "%", "14 pt")},
		{"Canola", quantity.Of("0", quantity.Percent), errortest.Invalid("Moisture", "0 %", "3 %", "60 %")},
		{"Canola", quantity.Of("100", quantity.Percent), errortest.Invalid("Moisture", "100 %")},
		{"Canola", quantity.Of("-1", quantity.Percent), errortest.Invalid("Moisture", "-1 %")},
	} {
		_, err := Class(c.grain, c.moisture)
		if !c.want.Met(err) {
			t.Errorf("%s %s: %v, want %s", c.grain, c.moisture, err, c.want)
		}
	}
	if _, _, err := ShrinkFloor("Cocoa"); err == nil {
		t.Error("cocoa has a floor")
	}
	if _, err := Classes("Cocoa"); err == nil {
		t.Error("cocoa has classes")
	}
}

// TestEveryCanadianNameBelongsToACommodity: no row of the order is out of
// reach from the list of commodities.
func TestEveryCanadianNameBelongsToACommodity(t *testing.T) {
	reached := map[string]bool{}
	for _, c := range All() {
		for _, name := range c.MoistureGrains() {
			reached[name] = true
		}
	}
	for _, name := range MoistureGrains() {
		if !reached[name] {
			t.Errorf("%q belongs to no commodity", name)
		}
	}
	if got := mustCommodity(t, "sorghum").MoistureGrains(); len(got) != 0 {
		t.Errorf("the order has no sorghum, yet: %v", got)
	}
}
