package schedules

import (
	"strings"
	"testing"
	"testing/fstest"

	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
)

func shipped(t *testing.T) *rates.Set {
	t.Helper()
	set, err := Editions()
	if err != nil {
		t.Fatal(err)
	}
	return set
}

func TestExampleEditionsSayWhatTheyAre(t *testing.T) {
	for _, e := range shipped(t).All() {
		if e.Status != rates.Example || !strings.Contains(string(e.Text[:60]), "Example - not for trade") {
			t.Errorf("%s does not say that it is an example", e.ID)
		}
		if want := e.Commodity.ID + "-" + e.Schedule + "-"; !strings.HasPrefix(e.ID, want) {
			t.Errorf("%s should be called %s…, after its commodity and schedule", e.ID, want)
		}
		if len(e.Origin.Document) == 0 || e.Origin.By != "Invented for the demo elevator" {
			t.Errorf("%s does not say where it comes from", e.ID)
		}
	}
}

// Each grain has rates in the customary units and in metric ones, and corn has
// houses with unlike customs.
func TestShippedSchedules(t *testing.T) {
	set := shipped(t)
	day := quantity.MustDate("2026-11-02")
	for _, grain := range []string{"corn", "soybeans", "wheat-hrw", "sorghum", "barley", "oats", "canola"} {
		for _, schedule := range []string{"main", "metric"} {
			e, err := set.On(schedule, grain, day)
			if err != nil {
				t.Error(err)
				continue
			}
			isMetric := e.Units.Weight == quantity.Kg && e.Units.Settle == quantity.Tonne
			if isMetric != (schedule == "metric") {
				t.Errorf("%s weighs in %s and settles in %s", e.ID, e.Units.Weight, e.Units.Settle)
			}
		}
	}
	for _, schedule := range []string{"main", "river", "statute", "metric"} {
		if _, err := set.On(schedule, "corn", day); err != nil {
			t.Error(err)
		}
	}
}

// A manager who reads what an edition says can turn to the line that says it.
func TestEveryShippedRuleHasItsLine(t *testing.T) {
	for _, e := range shipped(t).All() {
		lines := strings.Split(string(e.Text), "\n")
		for _, l := range e.Lines() {
			if l.At < 1 || l.At > len(lines) || strings.TrimSpace(lines[l.At-1]) == "" {
				t.Errorf("%s: %s is said to stand on line %d", e.ID, l.Key, l.At)
			}
		}
	}
}

func TestShippedShrinkMethods(t *testing.T) {
	set := shipped(t)
	seen := map[string]bool{}
	for _, e := range set.All() {
		seen["shrink "+e.Shrink.Method.ID] = true
		seen["handling "+e.Handling.Method.ID] = true
		seen["drying "+e.Drying.Method.ID] = true
		seen["settle "+e.Units.Settle.String()] = true
		for _, d := range e.Discounts {
			seen[d.Form.ID+" of "+string(d.Of)] = true
		}
	}
	for _, want := range []string{
		"shrink water", "shrink per-point", "shrink table", "shrink none",
		"handling none", "handling wet", "handling dried",
		"drying none", "drying per-point", "drying bands-each", "drying bands-whole",
		"settle bu", "settle cwt", "settle t",
		"table of money", "table of price", "table of weight",
		"per-unit of money", "per-unit of price", "per-unit of weight",
		"yes-no of money", "yes-no of price",
	} {
		if !seen[want] {
			t.Errorf("no shipped edition shows %q", want)
		}
	}
}

// February's dispute is about November's load: the edition of the day of
// delivery counts, in its latest correction.
func TestEditionOfTheDay(t *testing.T) {
	set := shipped(t)
	for day, want := range map[string]string{
		"2025-08-01": "corn-main-2025-b", "2026-07-31": "corn-main-2025-b", "2026-08-01": "corn-main-2026",
	} {
		if e, err := set.On("main", "corn", quantity.MustDate(day)); err != nil || e.ID != want {
			t.Errorf("on %s: %v, %v; want %s", day, e, err, want)
		}
	}
	_, err := set.On("main", "corn", quantity.MustDate("2025-07-31"))
	if !errortest.NotFound("corn", "corn-main-2025", "2025-08-01", "2026-07-31").Met(err) {
		t.Errorf("the day before the first edition: %v", err)
	}
}

func TestReadEditionsNamesEveryBrokenFile(t *testing.T) {
	corn, err := Files.ReadFile("editions/corn-main-2026.toml")
	if err != nil {
		t.Fatal(err)
	}
	_, err = ReadEditions(fstest.MapFS{
		"editions/a.toml": {Data: []byte("x = 1\n")},
		"editions/b.toml": {Data: []byte("= no\n")},
		"editions/c.txt":  {Data: []byte("not an edition")},
	})
	for _, want := range []errortest.Want{errortest.Invalid("a.toml", "a.toml:1", "x"), errortest.Invalid("b.toml:1")} {
		if !want.Met(err) {
			t.Errorf("%q is not in:\n%v", want, err)
		}
	}
	_, err = ReadEditions(fstest.MapFS{"editions/c.toml": {Data: corn}, "editions/d.toml": {Data: corn}})
	if !errortest.Invalid("corn-main-2026").Met(err) {
		t.Errorf("one edition twice: %v", err)
	}
}
