package load

import (
	"tenthpoint/internal/message/errortest"
	"testing"

	"pgregory.net/rapid"
)

// A void ticket has one other in its place, stays void, and points there.
func TestAVoidTicketIsReissuedOnce(t *testing.T) {
	l := to(t, Void)
	again := Stamp{At: "2026-10-02T08:00:00Z", Who: "Mae Orton", Desk: "1"}
	if err := l.Apply(Stamped{Fact: Reissued{By: 9, Day: day.AddDays(1)}, Stamp: again}); err != nil {
		t.Fatal(err)
	}
	if l.Phase != Void || l.Ended.By != 0 || l.Ended.Day != day || l.Reissue != (Reissue{9, day.AddDays(1), again}) || l.Successor() != 9 {
		t.Errorf("%s, ended %+v, again %+v", l.Phase, l.Ended, l.Reissue)
	}
	for _, f := range []Fact{Reissued{By: 10, Day: day}, Voided{Reason: "again", Day: day}, Superseded{By: 10, Reason: "again", Day: day}} {
		err := l.Apply(Stamped{Fact: f})
		if !errortest.WrongPhase("7", "9").Met(err) {
			t.Errorf("%s: %v", f.Kind(), err)
		}
	}
	if err := l.Apply(Stamped{Fact: Printed{}}); err != nil {
		t.Errorf("the void ticket prints no more: %v", err)
	}
}

// A load that reissues a ticket takes over weights with their hours and people.
func TestAReissueCarries(t *testing.T) {
	was := Stamp{At: "2026-10-01T13:00:00Z", Who: "Cal Reyes", Desk: "1"}
	l := &Load{ID: "L2"}
	for _, f := range []Fact{
		Opened{Details: details(), Reissues: 7, Reason: "torn"},
		Weighed{Weighing: gross(52300).Weighing, Carried: &was}, Sampled{Sample: sampled("18.0").Sample, Carried: &was},
	} {
		if err := l.Apply(Stamped{Fact: f, Stamp: Stamp{At: "2026-10-02T08:00:00Z", Who: "Mae Orton", Desk: "1"}}); err != nil {
			t.Fatal(err)
		}
	}
	if l.InPlaceOf() != 7 || l.Why != "torn" || l.Weighings[0].Stamp != was || l.Sampled != was || l.Opened.Who != "Mae Orton" {
		t.Errorf("the load is %+v", l)
	}
}

// Whatever facts are tried on a load, in any order, a ticket once void stays
// void under its number, has at most one successor, and what is refused says
// what to do and changes nothing.
func TestAnyFactsKeepAVoidTicketVoid(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		l := to(t, rapid.SampledFrom([]Phase{NotOpened, OnYard, Ready, Ticketed, Void}).Draw(r, "phase"))
		number, successor := int64(0), int64(0)
		for range rapid.IntRange(1, 30).Draw(r, "facts") {
			f := rapid.SampledFrom(append(one(), tare(24300), Opened{Details: details(), Reissues: 3, Reason: "torn"})).Draw(r, "fact")
			before := l.phaseSentence()
			err := l.Apply(Stamped{Fact: f})
			switch {
			case err != nil && (!l.phaseSentence().Equal(before) || !errortest.WrongPhase().Met(err) && !errortest.WrongPhase().Met(err)):
				r.Fatalf("refused with %q, and the load went from %q to %q", err, before, l.phaseSentence())
			case number > 0 && (l.Phase != Void || l.Number != number):
				r.Fatalf("void ticket %d is now %s", number, l.phaseSentence())
			case successor > 0 && l.Successor() != successor:
				r.Fatalf("ticket %d gave way to %d", successor, l.Successor())
			}
			if l.Phase == Void {
				number, successor = l.Number, l.Successor()
			}
		}
	})
}
