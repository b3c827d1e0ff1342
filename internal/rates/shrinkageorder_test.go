package rates_test

import (
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/schedules"
)

// What breaks C.R.C., c. 889, s. 30 (handling is zero) or SOR/2018-176 (the
// formula, on the weight delivered, down to the floor) is named at its line.
func TestEditionsThatBreakTheOrder(t *testing.T) {
	set, err := schedules.Editions()
	if err != nil {
		t.Fatal(err)
	}
	for id, want := range map[string][]string{
		"corn-metric-2025":        {`rate = "0.5 %"`},
		"oats-metric-2025":        {`rate = "0.3 %"`},
		"barley-metric-2025":      {`basis = "clean"`},
		"canola-metric-2025":      {`basis = "clean"`},
		"wheat-hrs-prairie-2025":  {`basis = "clean"`},
		"wheat-hrw-metric-2025":   {`rate = "0.2 %"`, `method = "per-point"`, `basis = "clean"`},
		"soybeans-metric-2025":    nil,
		"sorghum-main-2025":       nil, // no grain of the Order
		"corn-metric-2025-b":      nil,
		"wheat-hrw-metric-2025-b": nil,
	} {
		e, ok := set.ByID(id)
		if !ok {
			t.Errorf("there is no edition %s", id)
			continue
		}
		var got []string
		for _, p := range e.UnderGrainAct() {
			got = append(got, strings.TrimSpace(p.Excerpt))
			if p.Line == 0 || p.Remedy.IsZero() {
				t.Errorf("%s: %s stands at line %d", id, p.What, p.Line)
			}
		}
		if !slices.Equal(got, want) {
			t.Errorf("%s breaks the Order at %q, want %q", id, got, want)
		}
	}
}

// A shrink-to under the floor, and weight taken for moisture beside the shrink.
func TestOrderSeesShrinkByAnotherName(t *testing.T) {
	soybeans, err := schedules.Files.ReadFile("editions/soybeans-metric-2025.toml")
	if err != nil {
		t.Fatal(err)
	}
	text := strings.NewReplacer(`to = "14.0 %"`, `to = "13.9 %"`, "floor = \"14.0 %\"\n", "", "floor_grain = \"Soybeans\"\n", "").Replace(string(soybeans))
	e, err := rates.Read("x.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	if found := e.UnderGrainAct(); len(found) != 1 || !strings.Contains(found[0].Excerpt, `to = "13.9 %"`) {
		t.Errorf("a shrink-to of 13.9 %%: %v", found)
	}
}

// A licensed house is told why an edition is not used there; the corrected ones
// are in force on every day of those they correct.
func TestSetUnderGrainAct(t *testing.T) {
	set, err := schedules.Editions()
	if err != nil {
		t.Fatal(err)
	}
	lawful, day := set.UnderGrainAct(), quantity.MustDate("2026-10-01")
	if _, err := lawful.On("main", "corn", day); !errortest.Refused("corn-main-2026").Met(err) {
		t.Errorf("corn under main: %v", err)
	}
	if _, err := set.On("main", "corn", day); err != nil {
		t.Error(err)
	}
	for commodity, schedule := range map[string]string{"corn": "metric", "oats": "metric", "barley": "metric", "canola": "metric", "soybeans": "metric", "wheat-hrw": "metric", "wheat-hrs": "prairie"} {
		if _, err := lawful.On(schedule, commodity, day); err != nil {
			t.Errorf("%s: %v", commodity, err)
		}
	}
}
