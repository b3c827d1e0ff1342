package daysheet

import "testing"

func TestSentencesOf(t *testing.T) {
	flags := []string{"meter-overdue: Meter M1 was due on 2026-10-01.", "Two tests differ: look again.", "too-cold: The sample was at 36 °F."}
	want := "Meter M1 was due on 2026-10-01. Two tests differ: look again. The sample was at 36 °F."
	if got := sentencesOf(flags); got != want {
		t.Errorf("read as %q, want %q", got, want)
	}
}
