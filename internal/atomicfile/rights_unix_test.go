//go:build unix

package atomicfile

import (
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
	"testing"
)

// What is written is its owner's alone, whatever the account's own habit, and in a folder that was
// given to a group the group's as well.
func TestFilesAreTheirOwnersOrTheirGroups(t *testing.T) {
	defer syscall.Umask(syscall.Umask(0o022))
	private, given := t.TempDir(), t.TempDir()
	if err := os.Chmod(given, 0o770|fs.ModeSetgid); err != nil {
		t.Fatal(err)
	}
	for folder, want := range map[string]struct{ file, folder fs.FileMode }{private: {0o600, 0o700}, given: {0o660, 0o770 | fs.ModeSetgid}} {
		inside := filepath.Join(folder, "papers", "october")
		if err := MakeFolder(inside); err != nil {
			t.Fatal(err)
		}
		path := filepath.Join(inside, "slip.pdf")
		if err := Create(path, []byte("slip")); err != nil {
			t.Fatal(err)
		}
		wantRights(t, inside, want.folder)
		wantRights(t, filepath.Dir(inside), want.folder)
		wantRights(t, path, want.file)
	}
}

func wantRights(t *testing.T, path string, want fs.FileMode) {
	t.Helper()
	info, err := os.Stat(path)
	if err != nil {
		t.Fatal(err)
	}
	if is := info.Mode() & (fs.ModePerm | fs.ModeSetgid); is != want {
		t.Errorf("%s has the rights %s, not %s", path, is, want)
	}
}

// A folder that is there stays as it is; where a file stands there is none.
func TestMakeFolderChangesNothing(t *testing.T) {
	folder := t.TempDir()
	if err := os.Chmod(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := MakeFolder(folder); err != nil {
		t.Fatal(err)
	}
	wantRights(t, folder, 0o755)
	file := filepath.Join(folder, "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if MakeFolder(file) == nil || MakeFolder(filepath.Join(file, "inside")) == nil {
		t.Error("a file was taken for a folder")
	}
}
