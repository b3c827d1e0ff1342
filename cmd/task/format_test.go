package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestUnformattedNamesEachFault(t *testing.T) {
	root := t.TempDir()
	write := func(name, text string) {
		path := filepath.Join(root, name)
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	write("good.go", "package pit\n\nvar open bool\n")
	write("deep/crooked.go", "package pit\nvar   open bool\n")
	write("deep/broken.go", "package\n")
	write("testdata/crooked.go", "package pit\nvar   open bool\n")
	write(".hidden/crooked.go", "package pit\nvar   open bool\n")

	faults := unformatted(root)
	if len(faults) != 2 {
		t.Fatalf("want two faults, got %q", faults)
	}
	all := strings.Join(faults, "\n")
	for _, want := range []string{"crooked.go: not in the standard format", "broken.go"} {
		if !strings.Contains(all, want) {
			t.Errorf("%q lacks %q", all, want)
		}
	}
}

func TestFindRoot(t *testing.T) {
	root := t.TempDir()
	deep := filepath.Join(root, "a", "b")
	if err := os.MkdirAll(deep, 0o755); err != nil {
		t.Fatal(err)
	}
	if _, err := findRoot(deep); err == nil {
		t.Error("found a repository where there is none")
	}
	if err := os.WriteFile(filepath.Join(root, "go.mod"), nil, 0o644); err != nil {
		t.Fatal(err)
	}
	if got, err := findRoot(deep); err != nil || got != root {
		t.Errorf("got %q, %v; want %q", got, err, root)
	}
}

func TestSplitBenchArgs(t *testing.T) {
	flags, packages := splitBenchArgs([]string{"-bench", "Settle", "./internal/settle", "-count", "3"})
	if got := strings.Join(flags, " "); got != "-bench Settle -count 3" {
		t.Errorf("flags %q", got)
	}
	if got := strings.Join(packages, " "); got != "./internal/settle" {
		t.Errorf("packages %q", got)
	}
}
