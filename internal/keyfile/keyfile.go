// Package keyfile keeps the key of this computer in a file that its owner alone can read: beside the
// settings, never beside the book, so that no copy of the book takes it along.
package keyfile

import (
	"crypto/rand"
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"tenthpoint/internal/message"
	"tenthpoint/internal/signing"
)

// Variable names the file in the environment, for scripts and for a computer with several houses.
const Variable = "TENTHPOINT_KEY"

// Path is the file of this computer's key.
func Path() (string, error) {
	if named := os.Getenv(Variable); named != "" {
		return named, nil
	}
	folder, err := os.UserConfigDir()
	if err != nil {
		return "", message.Storage.Errorf("there is no folder for this computer's key: %w. Name a file in %v", err, Variable)
	}
	return filepath.Join(folder, "tenthpoint", "computer.key"), nil
}

// Read reads a key; zero where there is no file.
func Read(path string) (signing.Key, error) {
	text, err := os.ReadFile(path)
	if errors.Is(err, fs.ErrNotExist) {
		return signing.Key{}, nil
	}
	if err != nil {
		return signing.Key{}, message.Storage.Errorf("the key %v cannot be read: %w", path, err)
	}
	k, err := signing.ReadKey(text)
	if err != nil {
		return signing.Key{}, message.Errorf("%v: %w", path, err)
	}
	return k, nil
}

// Make reads the key in a file, and makes one where there is no file.
func Make(path string) (signing.Key, error) {
	k, err := Read(path)
	if err != nil || !k.IsZero() {
		return k, err
	}
	if k, err = signing.NewKey(rand.Reader); err != nil {
		return k, err
	}
	if err := Write(path, k); errors.Is(err, fs.ErrExist) {
		return Read(path) // another program made it meanwhile
	} else if err != nil {
		return signing.Key{}, err
	}
	return k, nil
}

// MakeOwn is the key of this computer and its file; one is made where there is none.
func MakeOwn() (path string, k signing.Key, err error) {
	if path, err = Path(); err != nil {
		return path, k, err
	}
	k, err = Make(path)
	return path, k, err
}

// Write writes a key into a new file, readable by its owner alone. A file that is there stays.
func Write(path string, k signing.Key) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return message.Storage.Errorf("the key was not written: %w", err)
	}
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return message.Storage.Errorf("the key was not written: %w", err)
	}
	_, err = f.Write(k.File())
	if err := errors.Join(err, f.Sync(), f.Close()); err != nil {
		return errors.Join(message.Storage.Errorf("the key was not written: %w", err), os.Remove(path))
	}
	return nil
}

// Replace puts a new key in the place of an old one, whole or not at all.
func Replace(path string, k signing.Key) error {
	next := path + ".next"
	if err := os.Remove(next); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return message.Storage.Errorf("the key was not written: %w", err)
	}
	if err := Write(next, k); err != nil {
		return err
	}
	if err := os.Rename(next, path); err != nil {
		return message.Storage.Errorf("the key was not written: %w", err)
	}
	return nil
}
