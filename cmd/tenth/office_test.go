//go:build postgres

package main

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"
)

// TestOfficeScripts runs the scripts of a head office, each with a schema of its own on the server
// that go run ./cmd/task postgres starts.
func TestOfficeScripts(t *testing.T) {
	server := os.Getenv("TENTHPOINT_POSTGRES")
	if server == "" {
		t.Fatal("there is no server: run go run ./cmd/task postgres")
	}
	testscript.Run(t, testscript.Params{
		Dir:           filepath.Join(scripts, "office"),
		UpdateScripts: *update,
		Setup: func(e *testscript.Env) error {
			e.Setenv("TZ", "UTC")
			e.Setenv(nowVariable, "2026-10-01 13:00")
			e.Setenv("XDG_CONFIG_HOME", filepath.Join(e.WorkDir, "data"))
			e.Setenv("HOME", filepath.Join(e.WorkDir, "home"))
			e.Setenv("TENTHPOINT_OFFICE", server)
			e.Setenv("SCHEMA", fmt.Sprintf("script_%d", time.Now().UnixNano()))
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"elevator": setUpElevator, "alter": alter, "remember": remember, "unchanged": unchanged, "fingerprint": fingerprint,
		},
	})
}

// fingerprint BOOK NAME sets a variable to the fingerprint of the key of a book's house.
func fingerprint(ts *testscript.TestScript, _ bool, args []string) {
	ts.Check(ts.Exec("tenth", "key", "--book", args[0]))
	found := regexp.MustCompile(`house.s key: ((?:[0-9a-f]{4} ){7}[0-9a-f]{4})`).FindStringSubmatch(ts.ReadFile("stdout"))
	if found == nil {
		ts.Fatalf("the house has no key: %s", ts.ReadFile("stdout"))
	}
	ts.Setenv(args[1], found[1])
}
