package office

import (
	"testing"

	"tenthpoint/internal/message"
)

// Doubts are read without the code they are filed under; the register prints it.
func TestFiledDoubts(t *testing.T) {
	flags := filed([]string{"meter-overdue: Meter M1 was due on 2026-10-01.", "Two tests differ: look again.", "too-cold: The sample was at 36 °F."})
	want := "Meter M1 was due on 2026-10-01. Two tests differ: look again. The sample was at 36 °F."
	if got := message.Texts(" ", flags).String(); got != want {
		t.Errorf("read as %q, want %q", got, want)
	}
	for i, want := range []string{"meter-overdue: Meter M1 was due on 2026-10-01.", "Two tests differ: look again."} {
		if got := flags[i].Filed().String(); got != want {
			t.Errorf("filed as %q, want %q", got, want)
		}
	}
}
