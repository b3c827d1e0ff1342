package moving

import (
	"maps"
	"slices"
	"testing"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/quantity"
)

func lb(n int64) quantity.Amount { return quantity.Int(n, quantity.Lb) }

func house(t *testing.T) House {
	t.Helper()
	today, err := quantity.ParseDate("2026-10-01")
	if err != nil {
		t.Fatal(err)
	}
	return House{Unit: quantity.Lb, Today: today, Bins: []Bin{
		{ID: "P1", Name: "Pit 1"},
		{ID: "B1", Name: "Bin 1", Kept: "corn", Grain: []Held{{"corn", lb(48000)}}},
		{ID: "B2", Name: "Bin 2", Kept: "corn"},
		{ID: "B3", Name: "Bin 3", Grain: []Held{{"corn", lb(100)}, {"oats", lb(200)}}},
	}}
}

// What is typed makes the movement: weights out and in, the grain found by the bin.
func TestRead(t *testing.T) {
	for _, c := range []struct {
		name    string
		kind    bin.Kind
		texts   map[string]string
		in, out quantity.Amount
		grain   string
	}{
		{"a weight", bin.Transfer, map[string]string{"from": "b1", "into": "B2", "weight": "8,000"}, lb(8000), lb(8000), "corn"},
		{"all that lies there", bin.Transfer, map[string]string{"from": "B1", "into": "B2"}, lb(48000), lb(48000), "corn"},
		{"more than any truck", bin.Transfer, map[string]string{"from": "B1", "into": "B2", "weight": "28,000,000"}, lb(28_000_000), lb(28_000_000), "corn"},
		{"one of two grains", bin.Transfer, map[string]string{"from": "B3", "into": "B2", "grain": "oats"}, lb(200), lb(200), "oats"},
		{"turned with a loss", bin.Turn, map[string]string{"from": "B1", "lost": "40"}, lb(48000), lb(47960), "corn"},
		{"cleaned", bin.Clean, map[string]string{"from": "B1", "into": "B2", "weight": "5000", "screenings": "100"}, lb(5000), lb(4900), "corn"},
		{"dried", bin.Dry, map[string]string{"from": "B1", "into": "B2", "weight-in": "10000", "weight-out": "9600", "moisture-in": "18", "moisture-out": "15", "fuel": "90 L"}, lb(10000), lb(9600), "corn"},
		{"blended", bin.Blend, map[string]string{"parts": "B1=1,000, B3=50; B1=20", "into": "B2", "grain": "corn"}, lb(1070), lb(1070), "corn"},
		{"written off", bin.WriteOff, map[string]string{"from": "B1", "weight": "1200", "as": "count"}, lb(1200), lb(0), "corn"},
		{"aired", bin.Aerate, map[string]string{"from": "B1", "hours": "12.5"}, lb(0), lb(0), "corn"},
	} {
		m, problems := Read(c.kind, c.texts, house(t))
		if len(problems) > 0 {
			t.Errorf("%s: %v", c.name, problems.Err(Fields(c.kind)))
			continue
		}
		if !m.In().Equal(c.in) || m.Commodity != c.grain || m.What != c.kind {
			t.Errorf("%s: %s of %s go in, want %s of %s", c.name, m.In(), m.Commodity, c.in, c.grain)
		}
		if !c.out.IsZero() && !m.Out().Equal(c.out) {
			t.Errorf("%s: %s come out, want %s", c.name, m.Out(), c.out)
		}
	}
}

// Everything that is wrong is told at once, each at its field.
func TestReadTellsAllThatIsWrong(t *testing.T) {
	for _, c := range []struct {
		kind  bin.Kind
		texts map[string]string
		at    []string
	}{
		{bin.Transfer, map[string]string{}, []string{"from", "into"}},
		{bin.Transfer, map[string]string{"from": "B9", "into": "B2", "weight": "heavy", "day": "2026-13-01"}, []string{"day", "from", "weight"}},
		{bin.Transfer, map[string]string{"from": "B3", "into": "B2"}, []string{"grain"}},
		{bin.Transfer, map[string]string{"from": "P1", "into": "B2"}, []string{"grain"}},
		{bin.Transfer, map[string]string{"from": "B2", "into": "B1"}, []string{"from"}},
		{bin.Clean, map[string]string{"from": "B1", "into": "B2", "weight": "5000", "screenings": "40 kg"}, []string{"screenings"}},
		{bin.Dry, map[string]string{"from": "B1", "into": "B2", "weight-in": "1", "weight-out": "1", "moisture-in": "180", "moisture-out": "15"}, []string{"moisture-in"}},
		{bin.Blend, map[string]string{"parts": "B1", "into": "B2"}, []string{"parts"}},
		{bin.Temperatures, map[string]string{"from": "B1", "readings": "52 54F"}, []string{"readings"}},
		{bin.WriteOff, map[string]string{"from": "B1", "weight": "10", "as": "gone"}, []string{"as"}},
		{bin.MeasureUp, map[string]string{"from": "B1", "depth": "9000"}, []string{"depth", "test-weight"}},
	} {
		_, problems := Read(c.kind, c.texts, house(t))
		if got := slices.Sorted(maps.Keys(problems)); !slices.Equal(got, c.at) {
			t.Errorf("%s %v: problems are at %v (%v), want %v", c.kind, c.texts, got, problems.Err(Fields(c.kind)), c.at)
		}
	}
}

// Every kind is typed but what an opening puts in and the taking back of a movement, and no field of it comes twice.
func TestEveryKindHasFields(t *testing.T) {
	for _, kind := range bin.Kinds() {
		if kind == bin.Undo || kind == bin.Open {
			continue
		}
		seen := map[string]bool{}
		for _, f := range Fields(kind) {
			if seen[f.ID] {
				t.Errorf("%s has the field %s twice", kind, f.ID)
			}
			seen[f.ID] = true
		}
		if len(seen) < 4 || !slices.Contains(Kinds(), kind) {
			t.Errorf("%s has %d fields", kind, len(seen))
		}
	}
}
