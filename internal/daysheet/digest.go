package daysheet

import (
	"fmt"
	"maps"
	"slices"
	"strings"
)

// Digest writes down everything a day's sheet is made of, a line each: every
// ticket with its state and its figures, the position before, the notes of the
// evening. Words that the paper may say better one day are left out. Two sheets
// with one digest tell the same of the day.
func (s Sheet) Digest() string {
	var b strings.Builder
	fmt.Fprintf(&b, "day %s after %d\n", s.Day, s.Last)
	for _, t := range s.Tickets {
		t.digest(&b)
	}
	for _, m := range s.Moves {
		fmt.Fprintf(&b, "stock %s %q %s\n", m.Commodity, m.Bin, m.Before)
	}
	for _, notes := range [][]string{s.Notes.Yard, s.Notes.Samples, s.Notes.Disputes, s.Notes.Meters} {
		for _, note := range notes {
			fmt.Fprintf(&b, "note %q\n", note)
		}
	}
	return b.String()
}

func (t Ticket) digest(b *strings.Builder) {
	fmt.Fprintf(b, "ticket %d load %s of %s: %s %q %q %q %q refused %v ended %s by %d corrects %d\n", t.Number, t.Load, t.Day,
		t.Commodity, t.GrowerID, t.Truck, t.Bin, t.how(), t.Refused, t.Ended, t.EndedBy, t.Corrects)
	if t.Reissues > 0 || t.ReissuedBy > 0 { // else the line is as it always was
		fmt.Fprintf(b, "reissues %d by %d\n", t.Reissues, t.ReissuedBy)
	}
	for _, id := range slices.Sorted(maps.Keys(t.Figures)) {
		fmt.Fprintf(b, "%s %s\n", id, t.Figures[id])
	}
}
