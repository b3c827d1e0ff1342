package desk

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"tenthpoint/internal/load"
)

// sortByOpening puts loads in the order their trucks came.
func sortByOpening(loads []*load.Load) {
	slices.SortFunc(loads, func(a, b *load.Load) int {
		return cmp.Or(cmp.Compare(a.Opened.At, b.Opened.At), cmp.Compare(place(a.ID), place(b.ID)))
	})
}

// place is the running number in a load's id.
func place(id string) int {
	n, _ := strconv.Atoi(strings.TrimPrefix(id, "L"))
	return n
}
