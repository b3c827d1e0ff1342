package desk

import (
	"bytes"
	"fmt"
	"maps"
	"slices"

	"tenthpoint/internal/house"
	"tenthpoint/internal/store"
)

// strayRows are loads in the lists that nothing in the journal speaks of.
func (v *verifier) strayRows() error {
	rows, err := v.desk.book.LoadIDs(v.ctx)
	if err != nil {
		return err
	}
	owned, err := v.desk.book.Ownerships(v.ctx)
	if err != nil {
		return err
	}
	ids := append(rows, owned...)
	slices.Sort(ids)
	for _, id := range slices.Compact(ids) {
		if v.seen[id] {
			continue
		}
		facts, err := v.desk.book.FactsOf(v.ctx, subject(id))
		if err != nil {
			return err
		}
		if len(facts) == 0 { // else it was opened after the walk began
			v.found(fmt.Sprintf("Load %s is in the lists but has no facts in the journal.", id))
		}
	}
	return nil
}

// standingRows compares the last word on every standing thing with the fact it
// was said in.
func (v *verifier) standingRows() error {
	rows, err := v.desk.book.AllStanding(v.ctx)
	if err != nil {
		return err
	}
	kept := map[string]bool{}
	for _, r := range rows {
		kept[r.Kind] = true
	}
	for _, r := range rows {
		name := standingSubject(r.Kind, r.ID)
		last, known := v.standing[name]
		delete(v.standing, name)
		if problem := v.unlikeStanding(r, name, last.Seq, last.Body, known); problem != "" {
			v.found(problem)
		}
	}
	for _, name := range slices.Sorted(maps.Keys(v.standing)) {
		f := v.standing[name]
		if house.IsFact(f.Kind) || kept[f.Kind] || f.Kind == (DayClosed{}).Kind() {
			v.found(fmt.Sprintf("Fact %d (%q) is the last word on it, but the lists have none.", f.Seq, name))
		}
	}
	return nil
}

func (v *verifier) unlikeStanding(r store.Standing, name string, seq int64, body []byte, known bool) string {
	switch {
	case r.Seq > v.lastSeq: // written after the walk began
		return ""
	case !known:
		return fmt.Sprintf("%q is in the lists but has no facts in the journal.", name)
	case r.Seq != seq:
		return fmt.Sprintf("%q in the lists is as fact %d left it; the last word on it is fact %d.", name, r.Seq, seq)
	case !bytes.Equal(r.Body, body):
		return fmt.Sprintf("%q in the lists is not what fact %d says.", name, seq)
	}
	return ""
}

// standingSubject is the subject of facts about a standing thing.
func standingSubject(kind, id string) string {
	if kind == (DayClosed{}).Kind() {
		return "day " + id
	}
	return kind + " " + id
}

// The series that loads and tickets are numbered by.
var numbered = []string{"load", "ticket"}

// firstNumbers notes how far the series had come when the walk began.
func (v *verifier) firstNumbers() error {
	v.begun = map[string]int64{}
	for _, series := range numbered {
		last, err := v.desk.book.LastNumber(v.ctx, series)
		if err != nil {
			return err
		}
		v.begun[series] = last
	}
	return nil
}

// lastNumbers asks that numbers run from 1 without a gap up to the last one
// given out, and that no more were found than were given out.
func (v *verifier) lastNumbers() error {
	v.gaps()
	for _, series := range numbered {
		highest := v.loadNo
		if series == "ticket" {
			highest = highestOf(v.tickets)
		}
		last, err := v.desk.book.LastNumber(v.ctx, series)
		if err != nil {
			return err
		}
		if highest < v.begun[series] {
			v.found(fmt.Sprintf("The book gave out %s numbers up to %d, but the highest in the journal is %d.", series, v.begun[series], highest))
		}
		if highest > last {
			v.found(fmt.Sprintf("The journal has %s number %d, but the book gave out numbers up to %d only.", series, highest, last))
		}
	}
	return nil
}

func (v *verifier) gaps() {
	last := int64(0)
	for _, n := range slices.Sorted(maps.Keys(v.tickets)) {
		switch {
		case n == last+2:
			v.found(fmt.Sprintf("Ticket number %d is missing.", n-1))
		case n != last+1:
			v.found(fmt.Sprintf("Ticket numbers %d to %d are missing.", last+1, n-1))
		}
		last = n
	}
}

func highestOf(tickets map[int64]string) int64 {
	highest := int64(0)
	for n := range tickets {
		highest = max(highest, n)
	}
	return highest
}
