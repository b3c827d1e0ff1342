package terminal

import (
	"slices"
	"strings"
	"testing"
)

// A table wider than the screen is folded in its longest cells: every word is still there, in its
// column, and none is broken.
func TestWideTablesFold(t *testing.T) {
	reasons := "tested again, same result; the whole load is like this; result of an official inspector"
	table := [][]string{
		{"Id", "What", "Reasons"},
		{"moisture", "Moisture against what the grain can have", reasons},
		{"price", "Price against the posted price", "agreed with the owner"},
	}
	narrow := folded(table, 60)
	words := make([]string, 3)
	for _, line := range narrow {
		long := 0
		for i, cell := range line {
			long += len(cell)
			if cell != "" {
				words[i] += cell + " "
			}
		}
		if long > 60 {
			t.Errorf("%q is too long", line)
		}
	}
	if !strings.Contains(words[2], reasons) || !strings.Contains(words[1], "Moisture against what the grain can have") || words[0] != "Id moisture price " {
		t.Errorf("words are lost: %q", words)
	}
	if got := folded(table, 200); len(got) != len(table) || !slices.Equal(got[1], table[1]) {
		t.Errorf("a table that fits is folded: %q", got)
	}
	if got := folded([][]string{{"abcdefghijklm", "nopqrstuvwxyz"}}, 20); len(got) != 1 || got[0][0] != "abcdefghijklm" {
		t.Errorf("a word is broken: %q", got)
	}
}

// Every column shares its words out fairly: the widest gives way first.
func TestTheWidestColumnGivesWay(t *testing.T) {
	widths := foldedWidths([][]string{{"one", "a b c d e f g h i j", "k l"}}, 20)
	if !slices.Equal(widths, []int{3, 10, 3}) {
		t.Errorf("widths %v", widths)
	}
}
