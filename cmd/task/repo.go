package main

import (
	"fmt"
	"hash/crc32"
	"os"
	"path/filepath"
)

// fromRoot steps into the root of the repository and does the chore there.
func fromRoot(does func([]string) error, args []string) error {
	here, err := os.Getwd()
	if err != nil {
		return err
	}
	root, err := findRoot(here)
	if err != nil {
		return err
	}
	if err := os.Chdir(root); err != nil {
		return err
	}
	return does(args)
}

// findRoot walks up from dir to the folder that holds go.mod.
func findRoot(dir string) (string, error) {
	for at := dir; ; at = filepath.Dir(at) {
		if _, err := os.Stat(filepath.Join(at, "go.mod")); err == nil {
			return at, nil
		}
		if at == filepath.Dir(at) {
			return "", fmt.Errorf("no go.mod in %s or above it: start inside the repository", dir)
		}
	}
}

// buildFolder returns the folder for built programs: in the user's cache, never in the clone, so a
// chore leaves the working tree unchanged. Each clone, from whose root chores run, has its own: a
// chore of another never builds over a program in use.
func buildFolder() (string, error) {
	cache, err := os.UserCacheDir()
	if err != nil {
		cache = os.TempDir()
	}
	root, err := os.Getwd()
	if err != nil {
		return "", err
	}
	dir := filepath.Join(cache, "tenthpoint", "bin", fmt.Sprintf("%08x", crc32.ChecksumIEEE([]byte(root))))
	return dir, os.MkdirAll(dir, 0o755)
}
