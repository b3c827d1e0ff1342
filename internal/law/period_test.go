package law

import (
	"testing"

	"tenthpoint/internal/quantity"
)

// A set works its periods out once; on every day they are what the files say.
func TestLawOfADayIsWhatItsFilesSay(t *testing.T) {
	files := []*File{
		{ID: "old", Hash: "1", Kind: "recording", Jurisdiction: "us"},
		{ID: "new", Hash: "2", Kind: "recording", Jurisdiction: "us", From: quantity.MustDate("2026-03-01")},
		{ID: "trial", Hash: "3", Kind: "grades", Jurisdiction: "us", From: quantity.MustDate("2026-02-10"), Until: quantity.MustDate("2026-03-04")},
	}
	s, problems := NewSet(files...)
	if err := problems.Err(); err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for day := quantity.MustDate("2026-02-01"); day.Before(quantity.MustDate("2026-03-10")); day = day.AddDays(1) {
		got, want := s.On(day), inForce(s.files, day)
		if got.Hash() != want.Hash() {
			t.Errorf("%s: %s, not %s", day, got.Manifest(), want.Manifest())
		}
		seen[got.Manifest()] = true
	}
	for _, want := range []string{"1 old\n", "3 trial\n1 old\n", "3 trial\n2 new\n", "2 new\n"} {
		if !seen[want] {
			t.Errorf("no day has %q: %v", want, seen)
		}
	}
	if len(s.On(quantity.Date{}).Files()) != 1 {
		t.Error("a load without a day is under the oldest rules alone")
	}
}
