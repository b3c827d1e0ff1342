package main

import (
	"context"
	"os"
	"path/filepath"
	"tenthpoint/internal/office/examiner"
	"testing"
)

// Files lie beside the book, and none is written over.
func TestExportsKeepOlderFiles(t *testing.T) {
	folder := t.TempDir()
	e := newExports(filepath.Join(folder, "house.book"))
	for i, want := range []string{"day 1.csv", "day 1-2.csv", "day 1-3.csv"} {
		where, err := e.Save(context.Background(), "day 1.csv", []byte{byte('a' + i)})
		if err != nil {
			t.Fatal(err)
		}
		if where != filepath.Join(folder, "exports", want) {
			t.Errorf("written as %s, want %s", where, want)
		}
		if got, err := os.ReadFile(where); err != nil || string(got) != string(rune('a'+i)) {
			t.Errorf("%s holds %q, %v", want, got, err)
		}
	}
	stopped, stop := context.WithCancel(context.Background())
	stop()
	if _, err := e.Save(stopped, "day.csv", nil); err == nil {
		t.Error("written although it was stopped")
	}
}

// No text makes a file name that leads out of the folder.
func TestExportsStayInTheirFolder(t *testing.T) {
	e := newExports(filepath.Join(t.TempDir(), "house.book"))
	for name, want := range map[string]string{
		"../../out.toml": "------out.toml", `..\out.toml`: "---out.toml", "/etc/out.toml": "-etc-out.toml",
		"a\nb\x1b.toml": "a-b-.toml", "..": "--", "corn-main-2026.toml": "corn-main-2026.toml",
	} {
		where, err := e.Save(context.Background(), name, nil)
		if err != nil || where != filepath.Join(e.folder, want) {
			t.Errorf("%q is written as %s, %v; want %s", name, where, err, want)
		}
	}
}

// A set of files has a folder of its own; one that is there is never written into.
func TestSetsHaveFoldersOfTheirOwn(t *testing.T) {
	e := newExports(filepath.Join(t.TempDir(), "house.book"))
	set := []examiner.File{{Name: "registers/tickets.csv", Bytes: []byte("1")}, {Name: examiner.HashesFile, Bytes: []byte("2")}}
	first, err := e.SaveSet(context.Background(), "examiner", set)
	if err != nil {
		t.Fatal(err)
	}
	second, err := e.SaveSet(context.Background(), "examiner", set)
	if err != nil || second == first {
		t.Fatalf("the second set is in %s, the first in %s: %v", second, first, err)
	}
	if data, err := os.ReadFile(filepath.Join(first, "registers", "tickets.csv")); err != nil || string(data) != "1" {
		t.Errorf("the file holds %q, %v", data, err)
	}
}
