package bins

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"tenthpoint/internal/office/openings"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
)

// list writes a list by which the books are opened into a file.
func list(t *testing.T, rows string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "opening.csv")
	sessiontest.Must(t, os.WriteFile(path, []byte("what,bin,grower,grain,quantity,since\n"+rows), 0o600))
	return path
}

// A list is looked at before anything is written; then its grain lies in the bins, and it is taken back
// as a whole.
func TestOpenTheBooks(t *testing.T) {
	r, b := demoBins(t)
	before := lies(t, r, "B1", "corn")
	b.opening.Open()
	if faults := r.Answer(map[string]string{"list": "nowhere.csv", "reason": "from the old books"}); faults["list"] == "" {
		t.Errorf("a file that is not there: %v", faults)
	}
	off := list(t, "bin,B1,,corn,\"56,000 lb\",\nstored,,101,corn,500 bu,2025-09-14\n")
	if faults := r.Answer(map[string]string{"list": off, "reason": "from the old books"}); faults["list"] == "" {
		t.Errorf("a list that does not balance: %v", faults)
	}
	good := list(t, "bin,B1,,corn,\"56,000 lb\",\nstored,,101,corn,500 bu,2025-09-14\ncompany,,,corn,rest,\n")
	if faults := r.Answer(map[string]string{"list": good, "reason": "from the old books"}); len(faults) > 0 {
		t.Fatalf("refused: %v", faults)
	}
	if got := lies(t, r, "B1", "corn"); !got.Equal(before) || b.opening.IsOpened() {
		t.Fatalf("looking at it wrote it: %s", got)
	}
	r.Answer(nil)
	sessiontest.WantSaid(t, r, model.OK, "are opened")
	if got := lies(t, r, "B1", "corn"); !got.Equal(before.Add(quantity.Int(56_000, quantity.Lb))) {
		t.Errorf("B1 has %s", got)
	}
	all, err := openings.All(context.Background(), r.Session.Desk)
	sessiontest.Must(t, err)
	if len(all) != 1 || len(all[0].Lots) != 1 || !b.opening.IsOpened() {
		t.Fatalf("openings are %+v", all)
	}
	b.opening.TakeBack()
	r.Answer(map[string]string{"reason": "a bin was left out"})
	if got := lies(t, r, "B1", "corn"); !got.Equal(before) || b.opening.IsOpened() {
		t.Errorf("taken back, B1 has %s", got)
	}
}
