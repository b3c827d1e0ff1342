package daysheet

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/settle"
)

// digests maps each engine to its serialization of a closed day. An entry is never changed: its
// hash is in the book for every day closed by it. An engine with no changes here uses the entry of
// the one before.
var digests = map[settle.Engine]func(Sheet) string{
	1: firstDigest,
	2: firstDigest,
	3: thirdDigest,
	4: thirdDigest,
}

// Digest serializes all input of a day's sheet, in the format of the engine that closes the day.
// Sheets with one digest have the same content. It fails for an unknown engine.
func (s Sheet) Digest(by settle.Engine) (string, error) {
	if err := by.Known(); err != nil {
		return "", err
	}
	return digests[by.Number()](s), nil
}

// thirdDigest writes down whose grain it is as well, owner by owner.
func thirdDigest(s Sheet) string {
	var b strings.Builder
	for _, t := range s.Tickets {
		for _, terms := range t.Titles {
			fmt.Fprintf(&b, "ticket %d title %q %q %q\n", t.Number, terms.Whose, terms.Under, terms.No)
		}
	}
	return firstDigest(s) + b.String()
}

// firstDigest is a line for every ticket with its state and its figures, the
// position before, and the notes of the evening. Words that the paper may say
// better one day are left out, but for the disposition, whose words are frozen
// here.
func firstDigest(s Sheet) string {
	var b strings.Builder
	fmt.Fprintf(&b, "day %s after %d\n", s.Day, s.Last)
	for _, t := range s.Tickets {
		t.digest(&b)
	}
	for _, m := range s.Moves {
		fmt.Fprintf(&b, "stock %s %q %s\n", m.Commodity, m.Bin, m.Before)
	}
	for _, notes := range [][]message.Kept{s.Notes.Yard, s.Notes.Samples, s.Notes.Disputes, s.Notes.Meters} {
		for _, note := range notes {
			fmt.Fprintf(&b, "note %q\n", note.String())
		}
	}
	return b.String()
}

func (t Ticket) digest(b *strings.Builder) {
	fmt.Fprintf(b, "ticket %d load %s of %s: %s %q %q %q %q refused %v ended %s by %d corrects %d\n", t.Number, t.Load, t.Day,
		t.Commodity, t.GrowerID, t.Truck, t.Bin, t.firstDisposition(), t.Refused, t.Ended, t.EndedBy, t.Corrects)
	if t.Reissues > 0 || t.ReissuedBy > 0 { // else the line is as it always was
		fmt.Fprintf(b, "reissues %d by %d\n", t.Reissues, t.ReissuedBy)
	}
	for _, id := range slices.Sorted(maps.Keys(t.Figures)) {
		fmt.Fprintf(b, "%s %s\n", id, t.Figures[id])
	}
}

// firstDisposition is the disposition in the words of the first engine, independent of the words
// papers use now.
func (t Ticket) firstDisposition() string {
	switch {
	case t.Disposition == "":
		return "not decided"
	case t.Contract != "":
		return t.Disposition + " " + t.Contract
	}
	return t.Disposition
}
