package textsearch

import (
	"slices"
	"testing"
)

func TestCompareOrdersFiguresByValue(t *testing.T) {
	got := []string{"10", "1", "2a", "11", "2", "T 9", "t 10", "02"}
	slices.SortStableFunc(got, Compare)
	if want := []string{"1", "2", "02", "2a", "10", "11", "T 9", "t 10"}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}
