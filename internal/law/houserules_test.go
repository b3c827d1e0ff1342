package law

import (
	"testing"

	"tenthpoint/internal/quantity"
)

// A result is recorded once, so an elevator has the recording rules of its own rule set alone; all
// other kinds are kept for every jurisdiction.
func TestOneJurisdictionRecords(t *testing.T) {
	all, problems := NewSet(Shipped()...)
	if err := problems.Err(); err != nil {
		t.Fatal(err)
	}
	day := quantity.MustDate("2026-10-01")
	for rules, want := range map[string]string{"us": "us-recording", "canada": "canada-recording"} {
		l := all.For(rules).On(day)
		files := l.OfKind("recording")
		if len(files) != 1 || files[0].ID != want {
			t.Errorf("a house under %s records by %d files, %v", rules, len(files), files)
		}
		if len(l.OfKind("retention")) != 2 {
			t.Errorf("a house under %s has lost days to keep a sample", rules)
		}
	}
	if all.For("us").On(day).Hash() != First().Hash() {
		t.Error("the law of a house under the rule set us is no longer the first")
	}
	if len(all.For("elsewhere").On(day).OfKind("recording")) != 2 {
		t.Error("a rule set without recording rules lost those of others")
	}
}
