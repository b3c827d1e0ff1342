package entry_test

import (
	"flag"
	"testing"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/entrytest"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/schedules"
)

var update = flag.Bool("update", false, "write the facts of the table anew")

// Every line of the table gives its facts and its outcome.
func TestParity(t *testing.T) {
	table := entrytest.Read(t, "../..")
	if n := len(table.Cases); n < 150 {
		t.Errorf("the table has %d lines; it has at least 150", n)
	}
	editions, err := schedules.Editions()
	if err != nil {
		t.Fatal(err)
	}
	desks, facts := map[string]*scalehouse.Desk{}, map[int]string{}
	for _, c := range table.Cases {
		d := desks[c.House]
		if d == nil {
			d = entrytest.Open(t, c.House, editions)
			desks[c.House] = d
		}
		f := entry.New(office.NewEntering(t.Context(), d), entry.Start{
			Direction: load.Inbound, Origin: entry.Origin{Moisture: "typed at the test", Price: "typed"},
			Reason: func(string) string { return "read from the indicator" },
		})
		for _, text := range c.Texts() {
			f.Set(text.Field, text.Typed)
		}
		outcome, l := entrytest.Outcome(f), entrytest.Enter(t, d, f)
		if *update {
			facts[c.Line] = entrytest.Facts(t, l)
			continue
		}
		table.Check(t, c, outcome, l)
	}
	if *update {
		table.Update(t, facts)
	}
}
