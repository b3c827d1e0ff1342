package season

import (
	"reflect"
	"testing"

	"tenthpoint/internal/elevator"
)

// What is kept of a season shows for each grain what the season itself shows.
func TestComposedIsTheSeason(t *testing.T) {
	f := facts()
	beans := corn("12", 0, "0")
	beans.Commodity = "soybeans"
	f.Loads = []Load{corn("17", 500, "10"), corn("14", 0, "0"), beans}
	c := f.Compose(elevator.Profile{}, day("2026-10-03"))
	for _, grain := range []string{"corn", "soybeans", "oats"} {
		want := f.Pictures(grain)
		if grain == "oats" {
			want = f.Pictures("")
		}
		if got := c.Pictures(grain); !reflect.DeepEqual(got, want) {
			t.Errorf("%s: %+v, want %+v", grain, got, want)
		}
	}
	if !reflect.DeepEqual(c.Paper, f.Paper(elevator.Profile{}, "", day("2026-10-03"))) {
		t.Error("the paper is another")
	}
}
