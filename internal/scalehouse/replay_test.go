package scalehouse_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
)

// The same acts at the same hours make the same book, to the last byte of the
// last hash.
func TestSameActsSameBook(t *testing.T) {
	if a, b := housetest.Season(t).Contents(), housetest.Season(t).Contents(); a != b {
		t.Errorf("two books of the same acts differ:\n%s\n%s", a, b)
	}
}

// Replay gives identical bytes: facts read and written again are the same
// facts, and a load added up twice is the same load.
func TestReplayGivesIdenticalBytes(t *testing.T) {
	s := housetest.Season(t)
	for n := 1; n <= 6; n++ {
		id := fmt.Sprint("L", n)
		facts, err := s.Store.FactsOf(ctx, "load "+id)
		must(t, err)
		for _, f := range facts {
			read, err := load.Read(f.Kind, f.Body)
			must(t, err)
			again, err := journal.Canonical(read)
			must(t, err)
			if !bytes.Equal(again, f.Body) {
				t.Errorf("fact %d is\n%s\nand written again\n%s", f.Seq, f.Body, again)
			}
		}
		first, second := replayed(t, id, facts), replayed(t, id, facts)
		if !bytes.Equal(first, second) {
			t.Errorf("load %s added up twice:\n%s\n%s", id, first, second)
		}
	}
}

func replayed(t *testing.T, id string, facts []journal.Fact) []byte {
	l, err := office.Replay(id, facts)
	must(t, err)
	text, err := json.Marshal(l)
	must(t, err)
	return text
}

// A ticket settled again in February, under rates that have changed since, is
// the ticket of November: same text of the working, same hash.
func TestTicketsAreSettledUnderTheKeptEdition(t *testing.T) {
	s := housetest.New(t)
	id, _ := s.Ticket()
	before, err := office.Resettle(ctx, s.Desk, s.Load(id))
	must(t, err)
	s.UseRates(nil)
	s.At("2027-02-03 10:00")
	after, err := office.Resettle(ctx, s.Desk, s.Load(id))
	must(t, err)
	if before.Sheet.Text(80) != after.Sheet.Text(80) || before.Edition.Hash != after.Edition.Hash {
		t.Errorf("then:\n%s\nnow:\n%s", before.Sheet.Text(80), after.Sheet.Text(80))
	}
	s.Verify()
}

// Any mixture of acts, allowed or refused, leaves a sound book, and what was
// refused left no trace.
func TestAnyActsLeaveASoundBook(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		s := housetest.New(t)
		s.As(housetest.Manager)
		for range rapid.IntRange(1, 25).Draw(r, "acts") {
			before := s.Contents()
			if err := anyAct(r, s); err != nil && s.Contents() != before {
				r.Fatalf("refused with %v, but something was written", err)
			}
		}
		sound, err := audit.Verify(ctx, s.Desk, s.Store, nil)
		if err != nil || len(sound.Problems) > 0 {
			r.Fatalf("not sound: %v %v", sound.Problems, err)
		}
	})
}

func anyAct(r *rapid.T, s *scene) error {
	id := fmt.Sprint("L", rapid.IntRange(1, 4).Draw(r, "load"))
	number := rapid.Int64Range(1, 4).Draw(r, "ticket")
	lb := rapid.Int64Range(-1, 3000).Draw(r, "weight") * 20
	tenths := rapid.Int64Range(0, 400).Draw(r, "moisture")
	moisture := quantity.Int(tenths, quantity.Percent).Div(quantity.Int(10, quantity.Plain))
	var err error
	switch rapid.SampledFrom([]string{"open", "open", "gross", "tare", "sample", "sample", "issue", "issue", "amend", "refuse", "print", "void", "void", "correct", "reissue", "reissue", "close"}).Draw(r, "act") {
	case "open":
		_, err = scalehouse.OpenLoad(ctx, s.Desk, housetest.Details())
	case "gross":
		err = scalehouse.Weigh(ctx, s.Desk, id, housetest.ScaleWeight(load.Gross, lb+40000))
	case "tare":
		err = scalehouse.Weigh(ctx, s.Desk, id, housetest.ScaleWeight(load.Tare, lb))
	case "sample":
		err = scalehouse.RecordSample(ctx, s.Desk, id, load.Sample{Moisture: &load.Moisture{Percent: moisture, Method: "direct"}})
	case "issue":
		_, err = scalehouse.Issue(ctx, s.Desk, id)
	case "amend":
		err = scalehouse.Amend(ctx, s.Desk, id, housetest.Details())
	case "refuse":
		err = scalehouse.Refuse(ctx, s.Desk, id, "hot")
	case "print":
		_, err = scalehouse.RecordPrint(ctx, s.Desk, number)
	case "void":
		err = scalehouse.Void(ctx, s.Desk, number, "a trial")
	case "correct":
		_, err = scalehouse.Correct(ctx, s.Desk, number, "a trial")
	case "reissue":
		_, err = scalehouse.Reissue(ctx, s.Desk, number, "torn")
	case "close":
		err = scalehouse.CloseDay(ctx, s.Desk, s.Today(), "")
	}
	return err
}
