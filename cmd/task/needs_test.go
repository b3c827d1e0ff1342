package main

import (
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

func met() bool    { return true }
func notMet() bool { return false }

func TestUnmetKeepsOnlyWhatIsMissing(t *testing.T) {
	missing := unmet([]need{
		{"a scale", "scale", met},
		{"a probe", "probe", notMet},
		{"a meter", "meter meter-data", notMet},
	})
	if got, want := missingText(missing), "This machine lacks a probe; a meter."; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	want := "sudo apt-get update && sudo apt-get install -y --no-install-recommends probe meter meter-data"
	if got := aptLine(missing); got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestProvideAsksForNothingWhenAllIsThere(t *testing.T) {
	if err := provide([]need{{"a scale", "scale", met}}); err != nil {
		t.Error(err)
	}
}

// TestProvideWithoutInstaller gives the chore a search path without apt-get:
// it must name what is missing and where this system gets it.
func TestProvideWithoutInstaller(t *testing.T) {
	t.Setenv("PATH", t.TempDir())
	err := provide([]need{{"a probe", "probe", notMet}})
	if err == nil {
		t.Fatal("a missing need passed")
	}
	for _, want := range []string{"This machine lacks a probe.", hintFor(runtime.GOOS)} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("%q lacks %q", err, want)
		}
	}
}

func TestHintsDifferBySystem(t *testing.T) {
	if hintFor("darwin") == hintFor("linux") || hintFor("windows") == hintFor("linux") {
		t.Error("another system gets the hint for Linux")
	}
}

func TestLooksForCommandsAndFiles(t *testing.T) {
	dir := t.TempDir()
	name := "pourer"
	if runtime.GOOS == "windows" {
		name += ".exe"
	}
	if err := os.WriteFile(filepath.Join(dir, name), nil, 0o755); err != nil {
		t.Fatal(err)
	}
	t.Setenv("PATH", dir)
	if !command("pourer")() {
		t.Error("a program on the search path was not found")
	}
	if command("dryer")() {
		t.Error("a program that does not exist was found")
	}
	if !anyFile(filepath.Join(dir, "nothing*"), filepath.Join(dir, "pour*"))() {
		t.Error("a file matching the second pattern was not found")
	}
	if anyFile(filepath.Join(dir, "nothing*"))() {
		t.Error("a file that does not exist was found")
	}
	if header("stdlib.h")() {
		t.Error("a header was found without a compiler or the go command")
	}
}

func TestOtherSystemsNeedOnlyACompiler(t *testing.T) {
	for _, system := range []string{"windows", "darwin"} {
		if got := needsToBuildDesk(system); len(got) != 1 || !strings.Contains(got[0].name, "C compiler") {
			t.Errorf("%s needs %v", system, missingText(got))
		}
	}
}
