package sqlite

import (
	"errors"
	"path/filepath"
	"testing"

	"tenthpoint/internal/message"
)

// A book in a synced folder or on a network drive is read, and written only by who
// insists.
func TestBookInASyncedFolderIsNotWritten(t *testing.T) {
	for _, name := range []string{"Dropbox", "OneDrive - House", "Google Drive"} {
		path := filepath.Join(t.TempDir(), name, "books", "house.book")
		if _, err := Open(path, Options{Create: true}); !errors.Is(err, message.Refused) {
			t.Fatalf("%s: %v", name, err)
		}
		b, err := Open(path, Options{Create: true, AnyPlace: true})
		if err != nil {
			t.Fatal(err)
		}
		b.Close()
		if _, err := Open(path, Options{}); !errors.Is(err, message.Refused) {
			t.Errorf("%s: opened for writing: %v", name, err)
		}
		read, err := Open(path, Options{ReadOnly: true})
		if err != nil {
			t.Fatalf("%s: not read: %v", name, err)
		}
		read.Close()
	}
}

func TestNetworkDriveIsNamed(t *testing.T) {
	f := &file{path: "/mnt/house/house.book"}
	if err := f.checkPlace(func(string) string { return "NFS" }); !errors.Is(err, message.Refused) {
		t.Errorf("%v", err)
	}
	for _, path := range []string{"/home/dropboxes/a.book", "/home/mae/Onedriver/a.book", "/home/mae/a.book"} {
		f := &file{path: path}
		if err := f.checkPlace(func(string) string { return "" }); err != nil {
			t.Errorf("%s: %v", path, err)
		}
	}
	if kind := networkDrive(t.TempDir()); kind != "" {
		t.Errorf("the temporary folder is on %s", kind)
	}
}
