package scalehouse_test

import (
	"fmt"
	"strings"
	"testing"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite/sqlitetest"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/settle"
)

// seasonHead is the hash of the last fact of the season as the program wrote it
// before facts had an engine's number.
const seasonHead = "100614933e1c19076aa429db1112405ba4b8da0dd5bb04a44e260c240e9451dc"

// head is the hash of the last fact, which is made of all facts before it.
func head(s *scene) string {
	s.T.Helper()
	head := ""
	for f, err := range s.Store.Facts(ctx, book.FactFilter{}) {
		must(s.T, err)
		head = f.Hash
	}
	return head
}

// A book written by the first engine is to the last byte the book that was
// written when there was no other: old facts keep their hashes.
func TestOldFactsKeepTheirHash(t *testing.T) {
	if head := head(seasonOfFirst(t)); head != seasonHead {
		t.Errorf("the season ends with the hash %s, and did with %s", head, seasonHead)
	}
}

// The number is left out for the first engine and written as text for others.
func TestEngineInFacts(t *testing.T) {
	for _, c := range []struct {
		fact any
		want string
	}{
		{load.Settled{Edition: "e"}, `{"edition":"e","edition_hash":"","figures":null,"working":""}`},
		{load.Settled{Edition: "e", Engine: 1}, `{"edition":"e","edition_hash":"","figures":null,"working":""}`},
		{load.Settled{Edition: "e", Engine: 12}, `{"edition":"e","edition_hash":"","engine":"12","figures":null,"working":""}`},
		{office.DayClosed{Day: housetest.Oct1, Engine: 1}, `{"day":"2026-10-01","notes":{}}`},
		{office.DayClosed{Day: housetest.Oct1, Engine: 12}, `{"day":"2026-10-01","engine":"12","notes":{}}`},
	} {
		got, err := journal.Canonical(c.fact)
		if err != nil || string(got) != c.want {
			t.Errorf("got %s, %v\nwant %s", got, err, c.want)
		}
	}
	f, err := load.Read("load.settled", []byte(`{"edition":"e","edition_hash":"","engine":"12","figures":null,"working":""}`))
	must(t, err)
	if settled := f.(load.Settled); settled.Engine != 12 {
		t.Errorf("read engine %s, want 12", settled.Engine)
	}
	for _, text := range []string{`"0"`, `"-1"`, `"two"`, `""`} {
		if f, err := load.Read("load.settled", []byte(`{"engine":`+text+`}`)); err == nil {
			t.Errorf("engine %s was read as %+v", text, f)
		}
	}
}

// rewritten puts other text into the bodies of facts and links the chain again, as a newer program
// would have written them.
func rewritten(s *scene, old, new string) {
	s.T.Helper()
	var statements []string
	var last *journal.Fact
	for f, err := range s.Store.Facts(ctx, book.FactFilter{}) {
		must(s.T, err)
		again := journal.Link(last, journal.Entry{At: f.At, Who: f.Who, Desk: f.Desk, Kind: f.Kind, Subject: f.Subject, Body: []byte(strings.ReplaceAll(string(f.Body), old, new))})
		last = &again
		statements = append(statements, fmt.Sprintf("UPDATE facts SET body = '%s', prev = '%s', hash = '%s' WHERE seq = %d", sqlitetest.Quoted(string(again.Body)), again.Prev, again.Hash, again.Seq))
	}
	sqlitetest.Unguarded(s.T, s.Store.Path(), statements...)
}

// seasonOfFirst is a season settled by the first engine.
func seasonOfFirst(t *testing.T) *scene {
	s := housetest.New(t)
	s.SettleBy(1)
	return housetest.Lived(s)
}

// A ticket settled by a newer program gives a clear error everywhere it is recalculated.
func TestTicketOfAnEngineNotKnown(t *testing.T) {
	s := housetest.New(t)
	s.SettleBy(1)
	_, number := s.Ticket()
	rewritten(s, `"figures":`, `"engine":"99","figures":`)
	l, err := office.Ticket(ctx, s.Desk, number)
	must(t, err)
	unknown := errortest.NotFound("99")
	_, err = office.Resettle(ctx, s.Desk, l)
	refused(t, err, unknown)
	_, problems := office.Preview(s.Desk, l)
	refused(t, problems, errortest.Invalid("99"))
	_, err = office.Proof(ctx, s.Desk, number, office.ProofOptions{})
	refused(t, err, unknown)
	_, err = office.WorthOf(ctx, s.Desk, l, office.Tenth)
	refused(t, err, unknown)
	housetest.WantNamed(t, s.Desk, "Ticket 1 (load L1) cannot be settled again: this was settled by engine 99")
}

// A day that a newer program closed is told in a sentence.
func TestDayOfAnEngineNotKnown(t *testing.T) {
	s := seasonOfFirst(t)
	rewritten(s, `"day":"2026-10-01","notes"`, `"day":"2026-10-01","engine":"99","notes"`)
	_, err := office.DaySheet(ctx, s.Desk, housetest.Oct1)
	refused(t, err, errortest.NotFound("99"))
	housetest.WantNamed(t, s.Desk, "The sheet of 2026-10-01 cannot be made again")
}

// A ticket's engine works everything that is compared with the ticket.
func TestTicketKeepsItsEngine(t *testing.T) {
	s := housetest.New(t)
	for _, n := range settle.Engines() {
		s.SettleBy(n)
		_, number := s.Ticket()
		s.SettleBy(settle.Current)
		l, err := office.Ticket(ctx, s.Desk, number)
		must(t, err)
		if l.Settled.Engine.Number() != n {
			t.Errorf("the ticket has engine %s, want %s", l.Settled.Engine, n)
		}
		again, err := office.Resettle(ctx, s.Desk, l)
		must(t, err)
		preview, problems := office.Preview(s.Desk, l)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		worth, err := office.WorthOf(ctx, s.Desk, l, office.Tenth)
		must(t, err)
		all := map[string]*settle.Settlement{"worked again": again, "previewed": preview, "its worth": worth.Here, "drier": worth.Drier.Settlement}
		f := s.Proof(number, office.ProofOptions{Moisture: &tried})
		for _, w := range f.WhatIfs {
			all["what if "+w.Name.String()] = w.Settlement
		}
		for name, one := range all {
			if one == nil || one.Engine != n {
				t.Errorf("engine %s, %s: %+v", n, name, one)
			}
		}
	}
	s.Verify()
}

var tried = quantity.Of("17.0", quantity.Percent)

// A book with tickets and closed days of every engine is sound.
func TestBookOfAllEnginesIsSound(t *testing.T) {
	s := housetest.New(t).As(housetest.Manager)
	for i, n := range settle.Engines() {
		s.At(fmt.Sprintf("2026-10-0%d 14:00", i+1))
		s.SettleBy(n)
		_, number := s.Ticket()
		must(t, scalehouse.CloseDay(ctx, s.Desk, s.Today(), ""))
		id, err := scalehouse.Correct(ctx, s.Desk, number, "moisture typed wrong")
		must(t, err)
		s.SettleBy(settle.Current)
		s.Sample(id, "17.5")
		corrected, err := scalehouse.Issue(ctx, s.Desk, id)
		must(t, err)
		d, err := office.Compare(ctx, s.Desk, number, corrected)
		must(t, err)
		for _, line := range d.Changed() {
			if line.Before == nil || line.After == nil {
				t.Errorf("engines %s and %s differ in the line %s, which one of them does not have", n, settle.Current, line.ID)
			}
		}
	}
	s.Verify()
}

// A proof keeps the deadline it was printed with: tickets of the first two engines that of the rule
// set, later ones that of the house.
func TestProofKeepsItsDeadline(t *testing.T) {
	for _, n := range settle.Engines() {
		s := housetest.New(t)
		s.SettleBy(n)
		_, number := s.Ticket()
		want := "2026-10-05"
		if n.HasTitles() {
			want = "2026-10-04"
		}
		if f := s.Proof(number, office.ProofOptions{}); f.Due.String() != want {
			t.Errorf("engine %s: the proof says %s, want %s", n, f.Due, want)
		}
	}
}
