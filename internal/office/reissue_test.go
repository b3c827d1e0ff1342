package office_test

import (
	"strings"
	"testing"

	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse/housetest"
)

// Registers and statement say which ticket is in place of which.
func TestReissueInRegistersAndStatement(t *testing.T) {
	s := housetest.New(t)
	housetest.Reissued(s)
	papers := registers(s, "2026-10-01", "2026-10-01")
	account, err := office.Statement(ctx, s.Desk, "G1", quantity.Date{}, quantity.Date{})
	must(t, err)
	for name, want := range map[string]string{
		papers["tickets"].Text(200): "void 2026-10-01, reissued as 2", papers["voids"].Text(200): "reissued as 2",
		papers["tickets"].Text(201): "issued, in place of 1 (void)", account.Text(200): "in place of 1 (void)", account.Text(201): "1 load",
	} {
		if !strings.Contains(name, want) {
			t.Errorf("%q is not said:\n%s", want, name)
		}
	}
}

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
