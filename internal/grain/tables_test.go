package grain

import (
	"slices"
	"testing"

	"tenthpoint/internal/law"
	"tenthpoint/internal/quantity"
)

func shippedOn(t *testing.T, day string, more ...*law.File) *Tables {
	t.Helper()
	set, problems := law.NewSet(append(law.Shipped(), more...)...)
	if err := problems.Err(); err != nil {
		t.Fatal(err)
	}
	tables, err := TablesOf(set.On(quantity.MustDate(day)))
	if err != nil {
		t.Fatal(err)
	}
	return tables
}

// Under the latest rules of the program, every factor of the catalog has a recording rule.
func TestEveryFactorIsRecorded(t *testing.T) {
	tables := shippedOn(t, "2999-12-31")
	for i, c := range catalog() {
		if got := tables.All()[i]; len(got.Factors) != len(c.Factors) {
			t.Errorf("%s: %d factors in the catalog, %d of them recorded", c.ID, len(c.Factors), len(got.Factors))
		}
	}
}

// A law without recording rules leaves what is counted and noticed, and of what is
// measured only the factors that bring their rule along; one without a grade table leaves the grain ungraded.
func TestTablesOfLessLaw(t *testing.T) {
	set, problems := law.NewSet()
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	tables, err := TablesOf(set.On(quantity.MustDate("2026-10-01")))
	if err != nil {
		t.Fatal(err)
	}
	corn, err := tables.ByID("corn")
	if err != nil || corn.Grades != nil || !corn.Bushel.IsZero() {
		t.Errorf("corn under no law: %v, %v, %s", err, corn.Grades, corn.Bushel)
	}
	for _, f := range corn.Factors {
		if f.Unit != quantity.Count && !slices.ContainsFunc(trade(), func(d DeclaredFactor) bool { return d.ID == f.ID }) {
			t.Errorf("%s is recorded by no rule", f.Name)
		}
	}
}

// The soybean table is in force from the day that other colors left it.
func TestSoybeansBeforeTheirTable(t *testing.T) {
	for day, want := range map[string]bool{"2023-08-31": false, "2023-09-01": true, "2026-10-01": true} {
		soybeans, err := shippedOn(t, day).ByID("soybeans")
		if err != nil || (soybeans.Grades != nil) != want {
			t.Errorf("on %s soybeans have a table: %v, %v", day, soybeans.Grades != nil, err)
		}
	}
}
