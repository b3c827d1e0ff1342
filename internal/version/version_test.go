package version

import (
	"strings"
	"testing"
)

// The line of a build that notes its commit names release and commit.
func TestLineNamesReleaseAndCommit(t *testing.T) {
	before := commit
	t.Cleanup(func() { commit = before })
	commit = "0123456789abcdef0123456789abcdef01234567"
	got := Line("tenth")
	if !strings.HasPrefix(got, "tenth "+Number+", commit 0123456789ab, go") {
		t.Errorf("the line is %q", got)
	}
}
