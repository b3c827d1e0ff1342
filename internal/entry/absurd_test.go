package entry_test

import (
	"testing"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/entrytest"
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
