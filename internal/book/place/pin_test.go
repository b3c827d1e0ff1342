package place

import (
	"errors"
	"os"
	"path/filepath"
	"testing"

	"tenthpoint/internal/message"
)

// A book is missed whichever of its files goes, and is in its place again once it is back.
func TestPinSeesWhatBecomesOfItsFiles(t *testing.T) {
	for name, change := range map[string]func(path string) error{
		"deleted":     os.Remove,
		"moved":       func(path string) error { return os.Rename(path, path+".old") },
		"log deleted": func(path string) error { return os.Remove(path + "-wal") },
		"replaced": func(path string) error {
			must(t, os.WriteFile(path+".new", []byte("another"), 0o600))
			return os.Rename(path+".new", path)
		},
	} {
		path := filepath.Join(t.TempDir(), "house.book")
		must(t, os.WriteFile(path, []byte("facts"), 0o600))
		must(t, os.WriteFile(path+"-wal", []byte("more facts"), 0o600))
		pin, err := PinOf(path, "-wal", "-shm")
		must(t, err)
		must(t, os.WriteFile(path, []byte("facts and others"), 0o600)) // written to, it is the same file
		must(t, pin.Lost())
		must(t, change(path))
		if err := pin.Lost(); !errors.Is(err, message.Storage) {
			t.Errorf("%s: %v", name, err)
		}
		if name == "moved" {
			must(t, os.Rename(path+".old", path))
			must(t, pin.Lost())
		}
	}
	if _, err := PinOf(filepath.Join(t.TempDir(), "none")); err == nil {
		t.Error("a file that is not there was pinned")
	}
	must(t, Pin{}.Lost())
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}
