package main

import (
	"strings"
	"testing"
)

// A check that left the server out says so in its last line, and one that takes anything else is no
// check.
func TestCheckSaysWhatItLeftOut(t *testing.T) {
	whole, without := closingLine(tally{3, 0}, false), closingLine(tally{3, 0}, true)
	if whole != "3 passed, 0 failed" || !strings.HasPrefix(without, whole) || !strings.Contains(without, "without postgres") {
		t.Errorf("%q, %q", whole, without)
	}
	for _, args := range [][]string{{"--without"}, {"--without", "tests"}, {"postgres"}} {
		if err := checkChore(args); err == nil {
			t.Errorf("%q was taken", args)
		}
	}
}

// Without a server the line to type is named.
func TestLineThatInstallsAServer(t *testing.T) {
	t.Setenv("PATH", t.TempDir())
	if line := aptLine(serverNeeds()); !strings.Contains(line, "postgresql") {
		t.Error(line)
	}
	if _, err := postgresPrograms(); err != nil && !strings.Contains(err.Error(), aptLine(serverNeeds())) {
		t.Error(err)
	}
}
