package office_test

import (
	"strings"
	"testing"

	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse/housetest"
)

// The proof of either ticket names the other, and nothing changed between them.
func TestProofOfAReissue(t *testing.T) {
	s := housetest.New(t)
	housetest.Reissued(s)
	paper, err := office.Proof(ctx, s.Desk, 2, office.ProofOptions{})
	must(t, err)
	text := paper.Text(100)
	for _, want := range []string{"IN PLACE OF TICKET 1", "What is not as on ticket 1, which is void", "Reissued because: torn in the printer (Mae Orton, 2026-10-01", "No line differs."} {
		if !strings.Contains(text, want) {
			t.Errorf("the proof does not say %q:\n%s", want, text)
		}
	}
	void, err := office.Proof(ctx, s.Desk, 1, office.ProofOptions{})
	must(t, err)
	if marks := void.Marks; len(marks) != 3 || marks[1].String() != "VOID" || marks[2].String() != "REISSUED AS TICKET 2" {
		t.Errorf("the void ticket's proof is marked %q", marks)
	}
}
