package load

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/message"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
)

var day = quantity.MustDate("2026-10-01")

func lb(n int64) quantity.Amount { return quantity.Int(n, quantity.Lb) }

func details() Details {
	return Details{
		Direction: Inbound, Day: day, Commodity: "corn", Schedule: "main",
		Grower: Party{ID: "G1", Name: "Ada Field"}, Truck: Truck{ID: "T1"},
	}
}

func gross(n int64) Weighed {
	return Weighed{Weighing: Weighing{Which: Gross, Weight: lb(n), Source: FromScale, Scale: "1"}}
}

func tare(n int64) Weighed {
	return Weighed{Weighing: Weighing{Which: Tare, Weight: lb(n), Source: FromScale, Scale: "1"}}
}

func sampled(percent string) Sampled {
	return Sampled{Sample: Sample{Moisture: &Moisture{Percent: quantity.Of(percent, quantity.Percent), Method: "direct"}}}
}

// one is a fact of each kind that may be written when its phase is right.
func one() []Fact {
	return []Fact{
		Opened{Details: details()}, Amended{Details: details()}, gross(52300), sampled("18.0"),
		Accepted{Limit: "damage", Reason: "blended"}, Answered{Guard: "price", About: "corn | $41.2/bu", Asked: message.OldWords("Price $41.20/bu."), Reason: "agreed with the owner"}, Refused{Reason: "hot", Day: day}, Withdrawn{},
		Settled{Edition: "e"}, Issued{Number: 7, Weigher: "Cal Reyes", Day: day}, Printed{},
		Voided{Reason: "wrong grower", Day: day}, Superseded{By: 8, Reason: "wrong tare", Day: day},
		Reissued{By: 9, Day: day},
	}
}

// to brings a load to a phase.
func to(t *testing.T, phase Phase) *Load {
	t.Helper()
	yard := []Fact{Opened{Details: details()}, gross(52300), tare(24300), sampled("18.0")}
	and := func(before []Fact, next Fact) []Fact { return append(slices.Clone(before), next) }
	ready := and(yard, Settled{Edition: "e"})
	issued := and(ready, Issued{Number: 7, Weigher: "Cal Reyes", Day: day})
	facts := map[Phase][]Fact{
		NotOpened: nil, OnYard: yard, Ready: ready, Ticketed: issued,
		TurnedAway: and(yard, Refused{Reason: "hot", Day: day}),
		TakenBack:  {Opened{Details: details()}, Withdrawn{}},
		Void:       and(issued, Voided{Reason: "wrong grower", Day: day}),
		Corrected:  and(issued, Superseded{By: 8, Reason: "wrong tare", Day: day}),
	}[phase]
	l := &Load{ID: "L1"}
	for _, f := range facts {
		if err := l.Apply(Stamped{Fact: f}); err != nil {
			t.Fatalf("on the way to %s, %s: %v", phase, f.Kind(), err)
		}
	}
	if l.phase() != phase {
		t.Fatalf("on the way to %s the load is %s", phase, l.Phase)
	}
	return l
}

// Every kind of fact in every phase: those that may follow do, the others are
// refused in a sentence that names the load or ticket, and change nothing.
func TestWhatMayFollowWhat(t *testing.T) {
	may := map[Phase]string{
		NotOpened:  "load.opened",
		OnYard:     "load.amended load.weighed load.sampled load.accepted load.answered load.refused load.settled",
		Ready:      "load.amended load.weighed load.sampled load.accepted load.answered load.refused load.settled ticket.issued",
		Ticketed:   "ticket.printed ticket.voided ticket.superseded",
		TurnedAway: "",
		TakenBack:  "",
		Void:       "ticket.printed ticket.reissued",
		Corrected:  "ticket.printed",
	}
	for phase, kinds := range may {
		for _, f := range one() {
			t.Run(fmt.Sprintf("%s/%s", phase, f.Kind()), func(t *testing.T) {
				l := to(t, phase)
				before := fmt.Sprintf("%+v", l)
				err := l.Apply(Stamped{Fact: f})
				allowed := strings.Contains(" "+kinds+" ", " "+f.Kind()+" ")
				if allowed != (err == nil) {
					t.Fatalf("allowed %v, got %v", allowed, err)
				}
				if err == nil {
					return
				}
				if fmt.Sprintf("%+v", l) != before {
					t.Error("the refused fact changed the load")
				}
				if !errortest.WrongPhase().Met(err) {
					t.Errorf("%q does not say what to do instead", err)
				}
			})
		}
	}
}

func TestFactsThatCannotBe(t *testing.T) {
	manual := gross(52300)
	manual.Source = ByHand
	stored := gross(52300)
	stored.Source = StoredTare
	bushels := gross(1)
	bushels.Weight = quantity.Int(900, quantity.Bushel)
	sideways := details()
	sideways.Direction = "sideways"
	free := details()
	zero := quantity.Zero(quantity.DollarsPerBu)
	free.Price = &zero
	for _, c := range []struct {
		name  string
		phase Phase
		fact  Fact
		want  errortest.Want
	}{
		{"no reason by hand", OnYard, manual, errortest.WrongPhase()},
		{"stored gross", OnYard, stored, errortest.WrongPhase()},
		{"gross in bushels", OnYard, bushels, errortest.WrongPhase()},
		{"no weight", OnYard, gross(0), errortest.WrongPhase()},
		{"moisture 0", OnYard, sampled("0"), errortest.WrongPhase("0 %")},
		{"moisture 100", OnYard, sampled("100"), errortest.WrongPhase("100 %")},
		{"moisture below zero", OnYard, sampled("-3"), errortest.WrongPhase("-3 %")},
		{"sideways", NotOpened, Opened{Details: sideways}, errortest.WrongPhase()},
		{"free grain", OnYard, Amended{Details: free}, errortest.WrongPhase()},
		{"no day", NotOpened, Opened{Details: Details{Direction: Inbound}}, errortest.WrongPhase()},
		{"refused without reason", OnYard, Refused{}, errortest.WrongPhase()},
		{"void without reason", Ticketed, Voided{}, errortest.WrongPhase()},
		{"corrected without reason", Ticketed, Superseded{By: 8}, errortest.WrongPhase()},
		{"accepted without reason", OnYard, Accepted{Limit: "x"}, errortest.WrongPhase()},
		{"ticket 0", Ready, Issued{Weigher: "Cal Reyes"}, errortest.WrongPhase()},
		{"no weigher", Ready, Issued{Number: 7}, errortest.WrongPhase()},
		{"reissued without reason", NotOpened, Opened{Details: details(), Reissues: 7}, errortest.WrongPhase()},
		{"corrected and reissued", NotOpened, Opened{Details: details(), Corrects: 7, Reissues: 7, Reason: "both"}, errortest.WrongPhase()},
		{"reissued in force", Ticketed, Reissued{By: 9, Day: day}, errortest.WrongPhase("7")},
		{"carried from nowhere", OnYard, Weighed{Weighing: gross(52300).Weighing, Carried: &Stamp{}}, errortest.WrongPhase()},
	} {
		t.Run(c.name, func(t *testing.T) {
			err := to(t, c.phase).Apply(Stamped{Fact: c.fact})
			if !c.want.Met(err) {
				t.Errorf("got %v, want %v", err, c.want)
			}
		})
	}
}

// A weight taken again strikes the one before and undoes the settlement.
func TestWeighingAgain(t *testing.T) {
	l := to(t, Ready)
	if err := l.Apply(Stamped{Fact: tare(24320)}); err != nil {
		t.Fatal(err)
	}
	if l.Phase != OnYard || l.Settled != nil {
		t.Errorf("after a new tare the load is %s, settled %v", l.Phase, l.Settled)
	}
	if got, _ := l.Weight(Tare, ""); !got.Weight.Equal(lb(24320)) {
		t.Errorf("the tare in force is %s", got.Weight)
	}
	if len(l.Struck) != 1 || !l.Struck[0].Weight.Equal(lb(24300)) {
		t.Errorf("struck: %+v", l.Struck)
	}
}

func TestMissing(t *testing.T) {
	l := &Load{ID: "L1"}
	if err := l.Apply(Stamped{Fact: Opened{Details: Details{Direction: Inbound, Day: day}}}); err != nil {
		t.Fatal(err)
	}
	var fields []string
	for _, m := range l.Missing() {
		fields = append(fields, m.Field)
	}
	if got, want := strings.Join(fields, " "), "grower commodity truck gross tare moisture"; got != want {
		t.Errorf("missing %q, want %q", got, want)
	}
	if m := to(t, OnYard).Missing(); m != nil {
		t.Errorf("a whole load misses %v", m)
	}
	l.Details.Direction = Outbound
	for _, m := range l.Missing() {
		if m.Field == "moisture" {
			t.Error("grain that leaves needs no moisture of ours")
		}
	}
	trailer := gross(20000)
	trailer.Draft = "trailer"
	split := to(t, OnYard)
	if err := split.Apply(Stamped{Fact: trailer}); err != nil {
		t.Fatal(err)
	}
	if m := split.Missing(); len(m) != 1 || !strings.Contains(m[0].Sentence.String(), "No tare of the trailer") {
		t.Errorf("with the trailer weighed full: %v", m)
	}
}

// Every kind of fact survives the journal: what is read back is written the
// same again, and unknown fields are refused.
func TestFactsRoundTrip(t *testing.T) {
	kinds := map[string]bool{}
	for _, f := range one() {
		body, err := json.Marshal(f)
		if err != nil {
			t.Fatal(err)
		}
		back, err := Read(f.Kind(), body)
		if err != nil {
			t.Fatalf("%s: %v", f.Kind(), err)
		}
		again, err := json.Marshal(back)
		if err != nil || string(again) != string(body) {
			t.Errorf("%s: %s became %s, %v", f.Kind(), body, again, err)
		}
		if _, err := Read(f.Kind(), []byte(`{"unknown":"x"}`)); err == nil {
			t.Errorf("%s took an unknown field", f.Kind())
		}
		kinds[f.Kind()] = true
	}
	for kind := range readers {
		if !kinds[kind] {
			t.Errorf("%s is not tried here", kind)
		}
	}
	if _, err := Read("load.eaten", nil); err == nil {
		t.Error("an unknown kind was taken")
	}
}

// A replay that cannot be says which fact does not follow.
func TestReplayNamesTheFact(t *testing.T) {
	_, err := Replay("L1", []Stamped{{Fact: Opened{Details: details()}}, {Fact: Printed{}}})
	if !errortest.WrongPhase("2", "ticket.printed").Met(err) {
		t.Errorf("got %v", err)
	}
}

// A load may be taken back until it is weighed, also once it is tested.
func TestWithdrawn(t *testing.T) {
	l := &Load{ID: "L1"}
	for _, f := range []Fact{Opened{Details: details()}, sampled("18.0")} {
		if err := l.Apply(Stamped{Fact: f}); err != nil {
			t.Fatal(err)
		}
	}
	weighed := *l
	if err := weighed.Apply(Stamped{Fact: gross(52300)}); err != nil {
		t.Fatal(err)
	}
	if err := weighed.Apply(Stamped{Fact: Withdrawn{}}); !errors.Is(err, message.WrongPhase) || weighed.CanWithdraw() {
		t.Errorf("a weighed load: %v", err)
	}
	if err := l.Apply(Stamped{Fact: Withdrawn{}}); err != nil || l.Phase != TakenBack || l.CanWithdraw() {
		t.Errorf("%s %v", l.Phase, err)
	}
}
