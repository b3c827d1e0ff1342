// Package atomicfile writes files that appear whole or not at all: the bytes go to a hidden
// part-file in the same folder, are forced to the disk, and only then take their name. A full disk,
// a lost network drive or a killed program leaves no partial file behind.
//
// It is our own because the window and the terminal program run on Windows,
// where github.com/google/renameio exports nothing, and because paper once
// handed out is never written over, for which no library has a call.
package atomicfile

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
)

// Create writes a file that is not there yet. The error is [fs.ErrExist] when
// the name is taken, also when another program takes it in between.
func Create(path string, content []byte) error {
	if _, err := os.Lstat(path); err == nil {
		return &fs.PathError{Op: "create", Path: path, Err: fs.ErrExist}
	}
	part, err := writePart(path, func(w io.Writer) error {
		_, err := w.Write(content)
		return err
	})
	if err != nil {
		return err
	}
	if err := claim(part, path); err != nil {
		return errors.Join(err, os.Remove(part))
	}
	return nil
}

// Replace replaces a file or creates it. If fill fails its error is returned unchanged, and the old
// file stays.
func Replace(path string, fill func(io.Writer) error) error {
	part, err := writePart(path, fill)
	if err != nil {
		return err
	}
	if err := os.Rename(part, path); err != nil {
		return errors.Join(at(path, err), os.Remove(part))
	}
	_ = SyncFolder(filepath.Dir(path)) // the file is whole; some network drives cannot do it
	return nil
}

// writePart writes the bytes to disk under a temporary name.
func writePart(path string, fill func(io.Writer) error) (part string, err error) {
	f, err := os.CreateTemp(filepath.Dir(path), ".part-*")
	if err != nil {
		return "", at(path, err)
	}
	filled := fill(f)
	if filled == nil {
		err = errors.Join(f.Chmod(Rights(filepath.Dir(path))), f.Sync())
	}
	if err := errors.Join(err, f.Close()); filled != nil || err != nil {
		return "", errors.Join(filled, at(path, err), os.Remove(f.Name()))
	}
	return f.Name(), nil
}

// claim moves the part-file to a free name. The name is taken with O_EXCL
// before the rename: on Unix a bare rename would silently replace a file that
// another program wrote in between.
func claim(part, path string) error {
	f, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_WRONLY, private)
	if err != nil {
		return at(path, err)
	}
	if err := errors.Join(f.Close(), os.Rename(part, path)); err != nil {
		return errors.Join(at(path, err), os.Remove(path))
	}
	_ = SyncFolder(filepath.Dir(path)) // the file is whole; some network drives cannot do it
	return nil
}

// at names the caller's file in an error, not the part-file.
func at(path string, err error) error {
	var file *fs.PathError
	var rename *os.LinkError
	switch {
	case err == nil:
		return nil
	case errors.As(err, &file):
		err = file.Err
	case errors.As(err, &rename):
		err = rename.Err
	}
	return &fs.PathError{Op: "write", Path: path, Err: err}
}

// SyncFolder syncs a folder, so that a new name in it is on disk. Windows does that automatically
// and has no such call.
func SyncFolder(folder string) error {
	if runtime.GOOS == "windows" {
		return nil
	}
	d, err := os.Open(folder)
	if err != nil {
		return err
	}
	return errors.Join(d.Sync(), d.Close())
}
