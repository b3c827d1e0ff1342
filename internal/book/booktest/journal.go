package booktest

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"slices"
	"sync"
	"testing"

	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
)

// Journal is the part of the suite about facts: appended in one chain, whole or
// not at all, by many at once, and never altered.
func Journal[B Store](t *testing.T, e Engine[B]) {
	t.Run("append and chain", func(t *testing.T) { appends(t, e) })
	t.Run("filters", func(t *testing.T) { filters(t, e) })
	t.Run("all or nothing", func(t *testing.T) { allOrNothing(t, e) })
	t.Run("lost after any failure", func(t *testing.T) { lostAfterFailure(t, e) })
	t.Run("a write sees itself", func(t *testing.T) { seesItself(t, e) })
	t.Run("many writers", func(t *testing.T) { manyWriters(t, e) })
	t.Run("a reading is of one moment", func(t *testing.T) { oneMoment(t, e) })
	t.Run("only appended to", func(t *testing.T) { onlyAppended(t, e) })
	t.Run("opened again", func(t *testing.T) { openedAgain(t, e) })
}

func appends[B Store](t *testing.T, e Engine[B]) {
	b := e.New(t)
	if _, some, err := b.Head(ctx); some || err != nil {
		t.Fatalf("an empty book has a head, or %v", err)
	}
	appendTo(t, b, 0, 2)
	appendTo(t, b, 2, 3)
	all := facts(t, b)
	if len(all) != 5 {
		t.Fatalf("%d facts", len(all))
	}
	var last *journal.Fact
	for i, f := range all {
		want := journal.Link(last, entry(i))
		if f.Seq != int64(i+1) || f.Hash != want.Hash || !bytes.Equal(f.Body, want.Body) || f.Subject != want.Subject || f.At != want.At {
			t.Errorf("fact %d is\n%+v\nwant\n%+v", i+1, f, want)
		}
		last = &f
	}
	if head, some, err := b.Head(ctx); !some || err != nil || head.Hash != all[4].Hash {
		t.Errorf("the head is %+v, %v", head, err)
	}
}

func filters[B Store](t *testing.T, e Engine[B]) {
	b := e.New(t)
	appendTo(t, b, 0, 9)
	for _, c := range []struct {
		filter book.FactFilter
		want   []int64
	}{
		{book.FactFilter{}, []int64{1, 2, 3, 4, 5, 6, 7, 8, 9}},
		{book.FactFilter{Subject: "load L2"}, []int64{4, 5, 6}},
		{book.FactFilter{Kind: "ticket.issued"}, []int64{3, 6, 9}},
		{book.FactFilter{Kind: "load.weighed"}, []int64{2, 5, 8}},
		{book.FactFilter{Kind: "ticket.issued", Subject: "load L3"}, []int64{9}},
		{book.FactFilter{FromSeq: 4, ToSeq: 5}, []int64{4, 5}},
		{book.FactFilter{FromSeq: 8}, []int64{8, 9}},
		{book.FactFilter{Kind: "ticket.issued", ToSeq: 6}, []int64{3, 6}},
		{book.FactFilter{Subject: "load L"}, nil},
	} {
		var got []int64
		for _, f := range chosen(t, b, c.filter) {
			got = append(got, f.Seq)
		}
		same(t, fmt.Sprintf("%+v", c.filter), got, c.want)
	}
	of, err := b.FactsOf(ctx, "load L2")
	if err != nil || len(of) != 3 || of[0].Seq != 4 {
		t.Errorf("facts of load L2: %v, %v", of, err)
	}
	for range b.Facts(ctx, book.FactFilter{}) {
		break // stopping early releases the book
	}
	appendTo(t, b, 9, 1)
}

func allOrNothing[B Store](t *testing.T, e Engine[B]) {
	b := e.New(t)
	appendTo(t, b, 0, 1)
	before := contents(t, b)
	act := func(tx book.Tx) error {
		_, err := tx.Append(entry(1))
		_, numbered := tx.NextNumber("ticket")
		return errors.Join(err, numbered)
	}
	changedMind := errors.New("changed my mind")
	given, stop := context.WithCancel(ctx)
	for _, c := range []struct {
		name string
		ctx  context.Context
		act  func(book.Tx) error
		want error
	}{
		{"an error at the end", ctx, func(tx book.Tx) error { return errors.Join(act(tx), changedMind) }, changedMind},
		{"given up on the way", given, func(tx book.Tx) error { err := act(tx); stop(); return err }, context.Canceled},
		{"given up before", given, act, context.Canceled},
	} {
		if err := b.Write(c.ctx, c.act); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, want %v", c.name, err, c.want)
		}
		same(t, c.name, contents(t, b), before)
	}
	func() {
		defer func() { _ = recover() }()
		_ = b.Write(ctx, func(tx book.Tx) error {
			_ = act(tx)
			panic("a fault in a use case")
		})
	}()
	same(t, "a panic", contents(t, b), before)
	must(t, b.Write(ctx, act))
	if got := contents(t, b); got[len(got)-1] != "ticket 1" || len(facts(t, b)) != 2 {
		t.Errorf("then: %v", got)
	}
}

// lostAfterFailure asks that an act which overlooks an error enters nothing.
func lostAfterFailure[B Store](t *testing.T, e Engine[B]) {
	b := e.New(t)
	appendTo(t, b, 0, 1)
	before := contents(t, b)
	var later error
	err := b.Write(ctx, func(tx book.Tx) error {
		if _, err := tx.Append(journal.Entry{}); err == nil {
			t.Error("a fact without anything in it was taken")
		}
		_, later = tx.Append(entry(1))
		return nil
	})
	if err == nil || later == nil {
		t.Errorf("the write ended with %v, the later call with %v", err, later)
	}
	same(t, "afterwards", contents(t, b), before)
}

func seesItself[B Store](t *testing.T, e Engine[B]) {
	b := e.New(t)
	appendTo(t, b, 0, 1)
	must(t, b.Write(ctx, func(tx book.Tx) error {
		if _, err := tx.Append(entry(1)); err != nil {
			return err
		}
		inside, err := tx.FactsOf("load L1")
		if err != nil || len(inside) != 2 {
			t.Errorf("inside: %v, %v", inside, err)
		}
		outside, err := b.FactsOf(ctx, "load L1")
		if err != nil || len(outside) != 1 {
			t.Errorf("outside: %v, %v", outside, err)
		}
		return nil
	}))
}

// manyWriters writes from several goroutines and from two programs at once, half
// of them with a number: each sees the true end of the chain, and numbers come in
// the order of their facts.
func manyWriters[B Store](t *testing.T, e Engine[B]) {
	const writers, each = 6, 15
	first := e.New(t)
	books := []B{first, e.Reopen(t, first)}
	var all sync.WaitGroup
	for w := range writers {
		all.Go(func() {
			for i := range each {
				if err := books[w%2].Write(ctx, func(tx book.Tx) error { return appendOne(tx, w < writers/2) }); err != nil {
					t.Errorf("writer %d, write %d: %v", w, i, err)
				}
			}
		})
	}
	all.Wait()
	written := facts(t, first)
	if len(written) != writers*each {
		t.Fatalf("%d facts", len(written))
	}
	last := 0
	for _, f := range written {
		if f.Subject == "load of no number" {
			continue
		}
		if last++; f.Subject != fmt.Sprintf("load L%d", last) {
			t.Errorf("fact %d is of %s: the number was not given out in the write's turn", f.Seq, f.Subject)
		}
	}
}

// appendOne reads before it appends, as an act does.
func appendOne(tx book.Tx, numbered bool) error {
	d := entry(0)
	d.Subject = "load of no number"
	if _, err := tx.FactsOf(d.Subject); err != nil {
		return err
	}
	if numbered {
		n, err := tx.NextNumber("ticket")
		if err != nil {
			return err
		}
		d.Subject = fmt.Sprintf("load L%d", n)
	}
	_, err := tx.Append(d)
	return err
}

func oneMoment[B Store](t *testing.T, e Engine[B]) {
	b := e.New(t)
	appendTo(t, b, 0, 50)
	n := 0
	for _, err := range b.Facts(ctx, book.FactFilter{}) {
		must(t, err)
		if n++; n == 10 {
			appendTo(t, b, 50, 5)
		}
	}
	if n != 50 {
		t.Errorf("%d facts were read, of the 50 there were when the reading began", n)
	}
}

// onlyAppended tries to alter the book past the engine.
func onlyAppended[B Store](t *testing.T, e Engine[B]) {
	b := e.New(t)
	must(t, b.Write(ctx, func(tx book.Tx) error {
		_, err := tx.Append(entry(0))
		_, numbered := tx.NextNumber("ticket")
		return errors.Join(err, numbered)
	}))
	before := contents(t, b)
	for _, statement := range []string{
		"UPDATE facts SET who = 'B. Clerk'", "UPDATE facts SET seq = 7", "DELETE FROM facts",
		"INSERT INTO facts (seq, at, who, desk, kind, subject, body, prev, hash) SELECT 7, at, who, desk, kind, subject, body, hash, 'x' FROM facts",
		"INSERT INTO facts (seq, at, who, desk, kind, subject, body, prev, hash) SELECT 2, at, who, desk, kind, subject, body, 'not the last', 'x' FROM facts",
		"UPDATE series SET last = 9", "UPDATE series SET last = 0", "DELETE FROM series", "INSERT INTO series (name, last) VALUES ('load', 2)",
	} {
		if err := e.Raw(t, b, statement); err == nil {
			t.Errorf("%s: was allowed", statement)
		}
	}
	same(t, "afterwards", contents(t, b), before)
}

func openedAgain[B Store](t *testing.T, e Engine[B]) {
	b := e.New(t)
	appendTo(t, b, 0, 4)
	before := contents(t, b)
	again := e.Reopen(t, b)
	must(t, b.Close())
	same(t, "opened again", contents(t, again), before)
	appendTo(t, again, 4, 1)
	if got := facts(t, again); len(got) != 5 || !slices.IsSortedFunc(got, func(a, b journal.Fact) int { return int(a.Seq - b.Seq) }) {
		t.Errorf("%d facts", len(got))
	}
}
