package audit

import (
	"bytes"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/book"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/office"
)

// strayRows finds loads in the read model without facts in the journal.
func (v *walk) strayRows() error {
	rows, err := v.book.LoadIDs(v.ctx)
	if err != nil {
		return err
	}
	owned, err := v.book.Ownerships(v.ctx)
	if err != nil {
		return err
	}
	ids := append(rows, owned...)
	slices.Sort(ids)
	for _, id := range slices.Compact(ids) {
		if v.seen[id] {
			continue
		}
		facts, err := v.book.FactsOf(v.ctx, office.LoadSubject(id))
		if err != nil {
			return err
		}
		if len(facts) == 0 { // else it was opened after the walk began
			v.found(message.New("Load %s is in the lists but has no facts in the journal.", id))
		}
	}
	return nil
}

// standingRows compares every record with its fact.
func (v *walk) standingRows() error {
	rows, err := v.book.AllRecords(v.ctx)
	if err != nil {
		return err
	}
	kept := map[string]bool{}
	for _, r := range rows {
		kept[r.Kind] = true
	}
	for _, r := range rows {
		name := standingSubject(r.Kind, r.ID)
		last, known := v.records[name]
		delete(v.records, name)
		if r.Seq > v.lastSeq {
			if err := v.laterThanTheWalk(r, name); err != nil {
				return err
			}
			continue
		}
		if problem := unlikeStanding(r, name, last, known); !problem.IsZero() {
			v.found(problem)
		}
	}
	for _, name := range slices.Sorted(maps.Keys(v.records)) {
		f := v.records[name]
		if elevator.IsFact(f.Kind) || kept[f.Kind] || f.Kind == (office.DayClosed{}).Kind() {
			v.found(message.New("Fact %d (%q) is the last word on it, but the lists have none.", f.Seq, name))
		}
	}
	return nil
}

// laterThanTheWalk looks for the fact of a record that the walk did not reach: it was entered
// meanwhile, or it was cut off.
func (v *walk) laterThanTheWalk(r book.Record, name string) error {
	for f, err := range v.book.Facts(v.ctx, book.FactFilter{FromSeq: r.Seq, ToSeq: r.Seq}) {
		if err != nil {
			return err
		}
		if f.Subject == name {
			return nil
		}
	}
	v.found(message.New("%q in the lists is as fact %d left it, but the journal ends with fact %d.", name, r.Seq, v.lastSeq))
	return nil
}

func unlikeStanding(r book.Record, name string, last journal.Fact, known bool) message.Text {
	switch {
	case !known:
		return message.New("%q is in the lists but has no facts in the journal.", name)
	case r.Seq != last.Seq:
		return message.New("%q in the lists is as fact %d left it; the last word on it is fact %d.", name, r.Seq, last.Seq)
	case !bytes.Equal(r.Body, last.Body):
		return message.New("%q in the lists is not what fact %d says.", name, last.Seq)
	}
	return message.Text{}
}

// standingSubject is the subject of facts about a record.
func standingSubject(kind, id string) string {
	if kind == (office.DayClosed{}).Kind() {
		return "day " + id
	}
	return kind + " " + id
}

// sampleNumber matches a sample number issued by the book, as facts carry it.
var sampleNumber = regexp.MustCompile(`"number":"S([0-9]{1,18})"`)

func noteSample(v *walk, body []byte) {
	if found := sampleNumber.FindSubmatch(body); found != nil {
		n, _ := strconv.ParseInt(string(found[1]), 10, 64) // digits that fit
		v.samples[n] = true
	}
}

// noteDispute notes the highest number of a dispute in the journal.
func noteDispute(v *walk, subject string) {
	if number, is := strings.CutPrefix(subject, "dispute D"); is {
		n, _ := strconv.ParseInt(number, 10, 64) // else it is no number of ours
		v.lastDispute = max(v.lastDispute, n)
	}
}

// noteMovement notes the highest number of a movement of grain in the journal.
func noteMovement(v *walk, f journal.Fact) {
	if f.Kind != (bin.Movement{}).Kind() {
		return
	}
	m, err := journal.ReadBody[bin.Movement](f.Body)
	if err != nil {
		v.found(message.New("Fact %d: %v.", f.Seq, err))
		return
	}
	v.lastMovement = max(v.lastMovement, m.Number)
}

// unknownSeries are series that the program does not number anything by.
func (v *walk) unknownSeries() error {
	names, err := v.book.Series(v.ctx)
	for _, name := range names {
		if !slices.Contains(numbering.Series, name) {
			v.found(message.New("The book gives out numbers of %q, which nothing is numbered by.", name))
		}
	}
	return err
}

// firstNumbers notes the last numbers of each series when the walk began.
func (v *walk) firstNumbers() error {
	if err := v.unknownSeries(); err != nil {
		return err
	}
	v.begun = map[string]int64{}
	for _, series := range numbering.Series {
		last, err := v.book.LastNumber(v.ctx, series)
		if err != nil {
			return err
		}
		v.begun[series] = last
	}
	return nil
}

// lastNumbers asks that numbers run from 1 without a gap up to the last one
// given out, and that no more were found than were given out.
func (v *walk) lastNumbers() error {
	v.gaps()
	for _, series := range numbering.Series {
		highest := v.highest(series)
		last, err := v.book.LastNumber(v.ctx, series)
		if err != nil {
			return err
		}
		if highest < v.begun[series] {
			v.found(message.New("The book gave out %s numbers up to %d, but the highest in the journal is %d.", series, v.begun[series], highest))
		}
		if highest > last {
			v.found(message.New("The journal has %s number %d, but the book gave out numbers up to %d only.", series, highest, last))
		}
	}
	return nil
}

// highest returns the highest number of a series in the journal. A sample may be numbered by hand
// in the book's own way, so for samples it is the last one issued, if its number is there.
func (v *walk) highest(series string) int64 {
	last := v.passed.last(series)
	switch series {
	case numbering.Ticket:
		return max(last, highestOf(v.tickets))
	case numbering.Dispute:
		return v.lastDispute
	case numbering.Movement:
		return v.lastMovement
	case numbering.Sheet:
		return max(last, v.lastSheet)
	case numbering.Opening:
		return v.lastLot
	case numbering.Receipt:
		return max(last, v.lastReceipt)
	case numbering.Payment:
		return max(last, v.lastPayment)
	case numbering.Sample:
		if last == v.begun[series] {
			return last
		}
		if begun := v.begun[series]; v.samples[begun] {
			return begun
		}
		return 0
	}
	return v.loadNo
}

func (v *walk) gaps() {
	v.passed.remark(v)
	numbers := slices.AppendSeq(slices.Collect(maps.Keys(v.tickets)), v.passed.numbers(numbering.Ticket))
	slices.Sort(numbers)
	last := int64(0)
	for _, n := range slices.Compact(numbers) {
		switch {
		case n == last+2:
			v.found(message.New("Ticket number %d is missing.", n-1))
		case n != last+1:
			v.found(message.New("Ticket numbers %d to %d are missing.", last+1, n-1))
		}
		last = n
	}
}

// successions checks that of two tickets, one replacing the other, each names the other. Tickets
// issued since the walk began are left to the next one.
func (v *walk) successions() error {
	last := v.begun["ticket"]
	for _, after := range slices.Sorted(maps.Keys(v.inPlace)) {
		if before := v.inPlace[after]; v.superseded[before] != after && after <= last {
			v.found(message.New("Ticket %d takes the place of ticket %d, which does not name it.", after, before))
		}
	}
	for _, before := range slices.Sorted(maps.Keys(v.superseded)) {
		if after := v.superseded[before]; v.inPlace[after] != before && after <= last {
			v.found(message.New("Ticket %d gave way to ticket %d, which does not name it.", before, after))
		}
	}
	return nil
}

func highestOf(tickets map[int64]string) int64 {
	highest := int64(0)
	for n := range tickets {
		highest = max(highest, n)
	}
	return highest
}
