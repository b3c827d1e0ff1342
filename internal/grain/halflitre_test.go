package grain

import (
	"encoding/csv"
	"os"
	"testing"

	"tenthpoint/internal/quantity"
)

// The equations printed by the Canadian Grain Commission, each at two weights of
// the cup.
func TestHalfLitreAgainstPublished(t *testing.T) {
	file, err := os.Open("../../testdata/published/cgc-test-weight/half-litre.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	ids := map[string]string{"wheat": "wheat-hrs", "amber durum": "wheat-durum", "oats": "oats", "barley": "barley", "rye": "rye", "flaxseed": "flaxseed",
		"buckwheat": "buckwheat", "corn": "corn", "soybeans": "soybeans", "sunflower oil": "sunflower", "canola": "canola"}
	tested := 0
	for _, row := range rows[1:] {
		id, here := ids[row[0]]
		if !here {
			continue
		}
		c, err := ByID(id)
		if err != nil {
			t.Fatal(err)
		}
		f, _ := c.Factor(TestWeight)
		got, err := f.Parse(row[3] + " g/0.5 L")
		if err != nil || !got.Equal(quantity.Of(row[4], quantity.KgPerHL)) {
			t.Errorf("%s, %s g: %s, %v; want %s kg/hL", row[0], row[3], got, err, row[4])
			continue
		}
		if whole := CanadianGradeWeight(got); !whole.Equal(quantity.Of(row[5], quantity.KgPerHL)) {
			t.Errorf("%s, %s g: a grade reads %s, want %s", row[0], row[3], whole, row[5])
		}
		tested++
	}
	if tested != 22 {
		t.Errorf("%d rows were compared", tested)
	}
}

// The export table of the grading guide has 79 kg/hL beside 385 g of wheat; the
// charts have 60.0 kg/hL as 48.1 lb in an Avery bushel and 46.6 in a Winchester
// one.
func TestTestWeightAsTyped(t *testing.T) {
	c, err := ByID("wheat-hrs")
	if err != nil {
		t.Fatal(err)
	}
	f, _ := c.Factor(TestWeight)
	for text, want := range map[string]string{"385 g/0.5 L": "78.9 kg/hL", "385g": "78.9 kg/hL", "48.1 lb/bu Avery": "60.0 kg/hL", "60 kg/hL": "60.0 kg/hL", "46.6 lb/bu Winchester": "46.6 lb/bu", "46.6": "46.6 lb/bu"} {
		a, err := f.Parse(text)
		if got := quantity.To("0.1", quantity.HalfUp).Apply(a).FixedString(1); err != nil || got != want {
			t.Errorf("%q is %s, %v; want %s", text, got, err, want)
		}
	}
	for _, text := range []string{"38.5 g", "9 g", "385 g/L", "60 lb/bu Imperial", "400 lb/bu Avery"} {
		if a, err := f.Parse(text); err == nil {
			t.Errorf("%q is read as %s", text, a)
		}
	}
	peas, _ := ByID("peas")
	f, _ = peas.Factor(TestWeight)
	if a, err := f.Parse("385 g/0.5 L"); err == nil {
		t.Errorf("peas have no chart, and 385 g is read as %s", a)
	}
}
