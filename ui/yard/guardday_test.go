package yard

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/entrytest"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/load"
	"tenthpoint/schedules"
	"tenthpoint/ui/session/sessiontest"
)

// One book, one day: every guard speaks, is answered, and the load has its ticket. The cases are the
// first of each guard in the table of absurd loads; a weight taken again and grain that leaves a bin
// below empty need more than one text, and grain of another day does not come to the window.
func TestADayInWhichEveryGuardSpeaks(t *testing.T) {
	editions, err := schedules.Editions()
	sessiontest.Must(t, err)
	r := sessiontest.RoomAt(t, entrytest.Open(t, "guarded", editions))
	spoken := map[guard.ID]bool{guard.DayAhead: true, guard.DayBack: true}
	for n, c := range entrytest.Absurd(t, "../..") {
		question, isAsked := strings.CutPrefix(c.Outcome, "asked ")
		id := guardOf(question)
		if !isAsked || spoken[id] {
			continue
		}
		if !slices.ContainsFunc(c.Typed, func(one entrytest.Text) bool { return one.Field == "truck" }) {
			c.Typed = append(c.Typed, entrytest.Text{Field: "truck", Typed: fmt.Sprintf("d%d", n)})
		}
		f := NewLoadForm(r.Session, nil)
		typeCase(t, r, f, c)
		answered := ticketed(t, r, f)
		if !slices.Equal(answered, []guard.ID{id}) {
			t.Errorf("absurd.txt:%d: the guards %v were answered, want %s", c.Line, answered, id)
		}
		spoken[id] = true
	}

	again := NewLoadForm(r.Session, nil)
	typeCase(t, r, again, entrytest.Case{House: "guarded", Typed: []entrytest.Text{{Field: "truck", Typed: "d91"}}})
	again.Type(string(load.Gross), "52280")
	leaves := NewLoadForm(r.Session, nil)
	leaves.TurnRound()
	for _, text := range []entrytest.Text{{Field: "grower", Typed: "103"}, {Field: "commodity", Typed: "corn"}, {Field: "truck", Typed: "d92"}, {Field: "bin", Typed: "B3"}, {Field: "tare", Typed: "24300"}, {Field: "gross", Typed: "52300"}} {
		typeText(r, leaves, text)
	}
	sessiontest.Must(t, leaves.Commit())
	apart := NewLoadForm(r.Session, nil)
	typeCase(t, r, apart, entrytest.Case{House: "guarded", Typed: []entrytest.Text{{Field: "truck", Typed: "d93"}, {Field: "gross.trailer", Typed: "20000"}, {Field: "tare.trailer", Typed: "8000"}}})
	for id, f := range map[guard.ID]*LoadForm{guard.Replaced: again, guard.Overdrawn: leaves} {
		if answered := ticketed(t, r, f); !slices.Equal(answered, []guard.ID{id}) {
			t.Errorf("the guards %v were answered, want %s", answered, id)
		}
		spoken[id] = true
	}
	if note := sessiontest.FieldOf(t, apart, "gross.trailer").Note; !strings.Contains(note, "UR.3.3") {
		t.Errorf("a trailer weighed apart is remarked on with %q", note)
	}
	spoken[guard.Apart] = true
	for _, rule := range guard.Rules() {
		if !spoken[rule.ID] {
			t.Errorf("the guard %s said nothing", rule.ID)
		}
	}
}

// guardOf is the guard that asks a question: one about a result is named by its factor, one about an
// owner's part ends with the owner.
func guardOf(question string) guard.ID {
	question, _, _ = strings.Cut(question, "-10")
	if rule, known := guard.ByID(question); known {
		return rule.ID
	}
	return guard.Factor
}

// ticketed answers what is asked about a load, issues its ticket, and returns the guards answered.
func ticketed(t *testing.T, r *sessiontest.Room, f *LoadForm) (answered []guard.ID) {
	t.Helper()
	for _, asked := range f.Now.asked {
		answered = append(answered, asked.Guard)
	}
	answerAll(t, r, f)
	if _, err := f.Issue(); err != nil {
		t.Errorf("answered %v, and not issued: %v", answered, err)
	}
	return answered
}
