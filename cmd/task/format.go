package main

import (
	"bytes"
	"go/format"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"tenthpoint/cmd/task/toolchain"
)

// formatStep compares every Go file with the standard format.
func formatStep() bool {
	toolchain.Say("== format")
	faults := unformatted(".")
	for _, fault := range faults {
		toolchain.Say("FAILED %s", fault)
	}
	if len(faults) > 0 {
		return false
	}
	toolchain.Say("ok     format")
	return true
}

// unformatted names every Go file under root that the formatter would write
// differently or cannot read. The formatter is the standard library's, the
// one gofmt is made of, so no gofmt program has to be found.
func unformatted(root string) []string {
	var faults []string
	err := filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		name := entry.Name()
		if entry.IsDir() && path != root && (strings.HasPrefix(name, ".") || name == "testdata") {
			return filepath.SkipDir
		}
		if entry.IsDir() || filepath.Ext(name) != ".go" {
			return nil
		}
		if fault := formatFault(path); fault != "" {
			faults = append(faults, fault)
		}
		return nil
	})
	if err != nil {
		faults = append(faults, err.Error())
	}
	return faults
}

func formatFault(path string) string {
	written, err := os.ReadFile(path)
	if err != nil {
		return err.Error()
	}
	formatted, err := format.Source(written)
	switch {
	case err != nil:
		return path + ": " + err.Error()
	case !bytes.Equal(written, formatted):
		return path + ": not in the standard format; run `gofmt -w " + path + "`"
	}
	return ""
}
