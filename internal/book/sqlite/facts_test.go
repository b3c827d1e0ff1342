package sqlite

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite/access"
	"tenthpoint/internal/journal"
)

// chosen says again, without SQL, which facts a filter means.
func chosen(f book.FactFilter, fact journal.Fact) bool {
	return (f.Subject == "" || fact.Subject == f.Subject) && (f.Kind == "" || fact.Kind == f.Kind) &&
		strings.HasPrefix(fact.Hash, f.Hash) && (f.FromSeq == 0 || fact.Seq >= f.FromSeq) && (f.ToSeq == 0 || fact.Seq <= f.ToSeq)
}

func anyFilter() *rapid.Generator[book.FactFilter] {
	return rapid.Custom(func(t *rapid.T) book.FactFilter {
		number := rapid.OneOf(rapid.Just(int64(0)), rapid.Int64Range(1, 32))
		return book.FactFilter{
			Subject: rapid.SampledFrom([]string{"", "", "load 1", "load 4", "load 99"}).Draw(t, "subject"),
			Kind:    rapid.SampledFrom([]string{"", "", "gross weighed", "tare weighed", "voided", "load.weighed"}).Draw(t, "kind"),
			FromSeq: number.Draw(t, "from"), ToSeq: number.Draw(t, "to"),
		}
	})
}

func collect(t testing.TB, b *Book, f book.FactFilter) []journal.Fact {
	t.Helper()
	var facts []journal.Fact
	for fact, err := range b.Facts(ctx, f) {
		if err != nil {
			t.Fatal(err)
		}
		facts = append(facts, fact)
	}
	return facts
}

func TestFactsAreTheChosenOnesInOrder(t *testing.T) {
	b := newBook(t)
	appendTo(t, b, 30)
	write(t, b, func(tx *Tx) error {
		d := draft(30)
		d.Kind = "load.weighed"
		_, err := tx.Append(d)
		return err
	})
	all := collect(t, b, book.FactFilter{})
	if len(all) != 31 {
		t.Fatalf("%d facts", len(all))
	}
	same := func(a, b journal.Fact) bool { return a.Hash == b.Hash && a.Seq == b.Seq }
	rapid.Check(t, func(rt *rapid.T) {
		f := anyFilter().Draw(rt, "filter")
		want := slices.DeleteFunc(slices.Clone(all), func(fact journal.Fact) bool { return !chosen(f, fact) })
		if got := collect(t, b, f); !slices.EqualFunc(got, want, same) {
			rt.Fatalf("%+v: got %d facts, want %d", f, len(got), len(want))
		}
	})
}

// A book of a million loads stays usable only if nothing walks all facts to
// find a few.
func TestFactsAreFoundThroughAnIndex(t *testing.T) {
	b := newBook(t)
	plans := map[string]book.FactFilter{
		"SEARCH facts USING INDEX facts_subject (subject=?)":        {Subject: "load 1", Kind: "voided"},
		"SEARCH facts USING INDEX facts_kind (kind=?)":              {Kind: "voided"},
		"SEARCH facts USING INDEX facts_kind (kind=? AND rowid>?)":  {Kind: "voided", FromSeq: 7},
		"SEARCH facts USING INDEX facts_subject (subject=? AND row": {Subject: "load 1", Kind: "load.weighed", FromSeq: 3},
		"SEARCH facts USING INTEGER PRIMARY KEY (rowid>? AND rowid": {FromSeq: 3, ToSeq: 5},
		"SCAN facts": {},
	}
	for want, f := range plans {
		query, args := factQuery(f)
		got := plan(t, b, query, args...)
		if !strings.Contains(got, want) {
			t.Errorf("%+v: %s\nwant %s", f, got, want)
		}
	}
	if got := plan(t, b, selectHead); strings.Contains(got, "TEMP B-TREE") {
		t.Errorf("the last fact: %s", got)
	}
	if got := plan(t, b, selectSubject, "load 1"); !strings.Contains(got, "facts_subject (subject=?)") || strings.Contains(got, "TEMP B-TREE") {
		t.Errorf("a subject's facts: %s", got)
	}
}

func plan(t testing.TB, b *Book, query string, args ...any) string {
	t.Helper()
	rows, err := b.read.Query("EXPLAIN QUERY PLAN "+query, args...)
	if err != nil {
		t.Fatal(err)
	}
	defer rows.Close()
	var steps []string
	for rows.Next() {
		var id, parent, unused int64
		var step string
		if err := rows.Scan(&id, &parent, &unused, &step); err != nil {
			t.Fatal(err)
		}
		steps = append(steps, step)
	}
	return fmt.Sprint(steps)
}

func TestFactsMayBeLeftEarlyAndNested(t *testing.T) {
	b := newBook(t)
	appendTo(t, b, 30)
	for range 3 * access.MostReaders() { // each leaves a connection behind, or does it
		for outer, err := range b.Facts(ctx, book.FactFilter{Kind: "gross weighed"}) {
			if err != nil {
				t.Fatal(err)
			}
			facts, err := b.FactsOf(ctx, outer.Subject)
			if err != nil || len(facts) != 3 {
				t.Fatal(facts, err)
			}
			break
		}
	}
}

func TestFactsReadOneMomentsState(t *testing.T) {
	b := newBook(t)
	appendTo(t, b, 30)
	count := 0
	for _, err := range b.Facts(ctx, book.FactFilter{}) {
		if err != nil {
			t.Fatal(err)
		}
		if count++; count < 10 {
			appendTo(t, b, 1) // another write while the list is read
		}
	}
	if count != 30 {
		t.Errorf("read %d facts", count)
	}
	wantSound(t, b, 39)
}

func TestFactsEndWithTheReason(t *testing.T) {
	b := newBook(t)
	appendTo(t, b, 3)
	cancelled, cancel := context.WithCancel(ctx)
	cancel()
	if _, err := b.FactsOf(cancelled, "load 1"); !errors.Is(err, context.Canceled) {
		t.Errorf("cancelled: %v", err)
	}
	if _, _, err := b.VerifyChain(cancelled); !errors.Is(err, context.Canceled) {
		t.Errorf("cancelled: %v", err)
	}
	b.Close()
	if _, err := b.FactsOf(ctx, "load 1"); err == nil {
		t.Error("a closed book was read")
	}
}

// The hash on a slip leads to its fact by an index of its own.
func TestCodesAreLookedUpByTheirIndex(t *testing.T) {
	b := newBook(t)
	query, args := factQuery(book.FactFilter{Kind: coded, Hash: "0123456789ab"})
	rows, err := b.read.Query("EXPLAIN QUERY PLAN "+query, args...)
	if err != nil {
		t.Fatal(err)
	}
	defer rows.Close()
	var plan strings.Builder
	for rows.Next() {
		var id, parent, unused int
		var step string
		if err := rows.Scan(&id, &parent, &unused, &step); err != nil {
			t.Fatal(err)
		}
		plan.WriteString(step + "\n")
	}
	if !strings.Contains(plan.String(), "facts_code") {
		t.Errorf("the plan is %s", plan.String())
	}
}

// What is asked before every ticket and every evening walks no more than it finds.
func TestWhatIsAskedOfTheBookHasItsIndex(t *testing.T) {
	b := newBook(t)
	ticketed := []string{"issued"}
	for want, f := range map[string]book.LoadFilter{
		"loads_bin (bin=? AND ticket>?)":          {Bin: "A", FromTicket: 1, Phases: ticketed, Newest: true, Limit: 9},
		"loads_undecided (phase=? AND issued_day": {Undecided: true, Phases: ticketed, ToDay: "2026-10-01"},
		"loads_truck (truck=? AND issued":         {Truck: "7", Phases: ticketed, FromDay: "2026-10-01"},
		"loads_issued (issued_day>?)":             {Commodity: "corn", Phases: ticketed, FromDay: "2026-10-01", Newest: true, Limit: 9},
	} {
		query, args := loadQuery(f)
		if got := plan(t, b, query, args...); !strings.Contains(got, want) {
			t.Errorf("%+v: %s\nwant %s", f, got, want)
		}
	}
	if got := plan(t, b, selectBinBefore, "A", "2026-10-01"); strings.Contains(got, "SCAN bin_days") || strings.Contains(got, "SCAN s") {
		t.Errorf("a bin: %s", got)
	}
}
