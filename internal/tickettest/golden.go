package tickettest

import (
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write the golden slips anew")

// Golden compares a slip with the one kept in testdata.
func Golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join(slips(t), name)
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), got); diff != "" {
		t.Errorf("%s differs (-kept +now); run the test with -update if the change is meant:\n%s", name, diff)
	}
}
