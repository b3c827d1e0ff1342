package atomicfile

import (
	"io/fs"
	"os"
	"path/filepath"
)

// What files hold are names, addresses and prices: they are their owner's alone. An elevator whose
// people have accounts of their own gives a folder to their group in the way of its operating
// system (chgrp, chmod g+rwxs); what is made in it is then the group's as well. On Windows files
// follow the rights of their folder by themselves.
const (
	private = fs.FileMode(0o600)
	shared  = fs.FileMode(0o660)
)

// Rights are those of a new file in a folder.
func Rights(folder string) fs.FileMode {
	info, err := os.Stat(folder)
	if err == nil && info.Mode()&fs.ModeSetgid != 0 && info.Mode()&0o020 != 0 {
		return shared
	}
	return private
}

// MakeFolder makes a folder with its parents, for whoever its files are for. One that is there
// stays as it is.
func MakeFolder(path string) error {
	info, err := os.Stat(path)
	if err == nil && info.IsDir() {
		return nil
	}
	parent := filepath.Dir(path)
	if parent != path {
		if err := MakeFolder(parent); err != nil {
			return err
		}
	}
	return NewFolder(path)
}

// NewFolder makes one folder, which must not be there yet.
func NewFolder(path string) error {
	if err := os.Mkdir(path, 0o700); err != nil {
		return err
	}
	if Rights(filepath.Dir(path)) == shared {
		return os.Chmod(path, 0o770|fs.ModeSetgid)
	}
	return nil
}
