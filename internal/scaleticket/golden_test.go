package scaleticket_test

import (
	"fmt"
	"strings"
	"testing"

	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/tickettest"
)

// TestPaper does the same for what the screen shows.
func TestPaper(t *testing.T) {
	for _, c := range tickettest.Table {
		var b strings.Builder
		for _, l := range scaleticket.Paper(scaleticket.Compose(c.Make(t))) {
			kind := fmt.Sprint(int(l.Kind))
			if l.Beside {
				kind += "+"
			}
			fmt.Fprintf(&b, "%s | %s | %s | %s | %s\n", kind, l.Field, l.Left, l.Right, strings.ReplaceAll(l.Note, "\n", " / "))
		}
		tickettest.Golden(t, c.Name+".paper.txt", b.String())
	}
}
