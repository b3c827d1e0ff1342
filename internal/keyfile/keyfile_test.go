package keyfile_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"tenthpoint/internal/keyfile"
	"tenthpoint/internal/message"
)

func TestKeyIsMadeOnceAndForItsOwner(t *testing.T) {
	path := filepath.Join(t.TempDir(), "settings", "computer.key")
	if k, err := keyfile.Read(path); err != nil || !k.IsZero() {
		t.Fatalf("before there is a file: %v, %v", k.IsZero(), err)
	}
	made, err := keyfile.Make(path)
	if err != nil || made.IsZero() {
		t.Fatal(err)
	}
	again, err := keyfile.Make(path)
	if err != nil || again != made {
		t.Errorf("made again: %v", err)
	}
	if runtime.GOOS != "windows" {
		for name, want := range map[string]fs.FileMode{path: 0o600, filepath.Dir(path): 0o700} {
			if info, err := os.Stat(name); err != nil || info.Mode().Perm() != want {
				t.Errorf("%s: %v, %v", name, info.Mode(), err)
			}
		}
	}
	other, err := keyfile.Make(filepath.Join(t.TempDir(), "other.key"))
	if err != nil || other == made {
		t.Errorf("two keys are one: %v", err)
	}
	if err := keyfile.Write(path, other); !errors.Is(err, fs.ErrExist) {
		t.Errorf("a key is written over: %v", err)
	}
	if err := keyfile.Replace(path, other); err != nil {
		t.Fatal(err)
	}
	if k, err := keyfile.Read(path); err != nil || k != other {
		t.Errorf("the key was not replaced: %v", err)
	}
	if entries, _ := os.ReadDir(filepath.Dir(path)); len(entries) != 1 {
		t.Errorf("%d files are left", len(entries))
	}
}

// A file that holds no key is not written over: it may be a key that can be mended.
func TestBrokenKeyStays(t *testing.T) {
	path := filepath.Join(t.TempDir(), "computer.key")
	if err := os.WriteFile(path, []byte("-----BEGIN PRIV"), 0o600); err != nil {
		t.Fatal(err)
	}
	if k, err := keyfile.Make(path); !errors.Is(err, message.Invalid) || !k.IsZero() {
		t.Errorf("%v, %v", k.IsZero(), err)
	}
	if text, err := os.ReadFile(path); err != nil || string(text) != "-----BEGIN PRIV" {
		t.Errorf("the file holds %q, %v", text, err)
	}
}

func TestKeyIsKeptApartFromTheBook(t *testing.T) {
	folder := t.TempDir()
	t.Setenv("XDG_CONFIG_HOME", folder)
	t.Setenv("HOME", folder)
	t.Setenv("AppData", folder)
	t.Setenv(keyfile.Variable, "")
	path, err := keyfile.Path()
	if err != nil || filepath.Base(path) != "computer.key" {
		t.Errorf("%s, %v", path, err)
	}
	t.Setenv(keyfile.Variable, "/stick/desk.key")
	if path, err := keyfile.Path(); err != nil || path != "/stick/desk.key" {
		t.Errorf("%s, %v", path, err)
	}
}
