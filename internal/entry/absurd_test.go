package entry_test

import (
	"strings"
	"testing"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/entrytest"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/schedules"
)

// Everything that nobody means is refused where it is typed, or asked about.
func TestAbsurdLoadsAreAskedAbout(t *testing.T) {
	editions, err := schedules.Editions()
	if err != nil {
		t.Fatal(err)
	}
	d := entrytest.Open(t, "guarded", editions)
	enter := func(c entrytest.Case) *entry.Form {
		f := entry.New(office.NewEntering(t.Context(), d), entry.Start{
			Direction: load.Inbound, Reason: func(string) string { return "read from the indicator" },
		})
		for _, text := range c.Texts() {
			f.Set(text.Field, text.Typed)
		}
		return f
	}
	if got := entrytest.AbsurdOutcome(enter(entrytest.Case{House: "guarded"})); got != "ok" {
		t.Fatalf("the usual load is %s", got)
	}
	for _, c := range entrytest.Absurd(t, "../..") {
		if got := entrytest.AbsurdOutcome(enter(c)); got != c.Outcome {
			t.Errorf("absurd.txt:%d: %v is %s, want %s", c.Line, c.Typed, got, c.Outcome)
		}
	}
}

// Every guard speaks somewhere in the table, which window, terminal and core read. Those
// left out need a second weighing and grain that leaves, and speak in guards.txtar and yard.txtar of
// testdata/terminal and in the tests of ui/yard; that of a trailer weighed apart is a remark, in
// parity.txt.
func TestEveryGuardSpeaks(t *testing.T) {
	spoken := map[guard.ID]bool{guard.Replaced: true, guard.Overdrawn: true, guard.Apart: true}
	for _, c := range entrytest.Absurd(t, "../..") {
		question, asked := strings.CutPrefix(c.Outcome, "asked ")
		if !asked {
			continue
		}
		question, _, _ = strings.Cut(question, "-10") // an owner's question names the owner
		id := guard.Factor                            // a factor's question is named by the factor
		if rule, known := guard.ByID(question); known {
			id = rule.ID
		}
		spoken[id] = true
	}
	for _, rule := range guard.Rules() {
		if !spoken[rule.ID] {
			t.Errorf("no line of absurd.txt is asked about by the guard %s", rule.ID)
		}
	}
}
