package ratefiles

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/tariff"
	"tenthpoint/schedules"
)

// ReadTariffs gathers the tariffs in use: the elevator's own, from the subfolder "tariffs" of the
// folder of its rates, and the built-in examples for every line for which it has none of its own.
// The error names every mistake in every file.
func ReadTariffs(folder string) (*tariff.Set, error) {
	own, err := OpenTariffs(TariffFiles(folder))
	if err != nil {
		return nil, err
	}
	return WithExampleTariffs(own)
}

// WithExampleTariffs checks the elevator's own tariffs against each other and adds the built-in
// examples where it has none of its own.
func WithExampleTariffs(own []*tariff.Edition) (*tariff.Set, error) {
	examples, err := schedules.Tariffs()
	if err != nil {
		return nil, err
	}
	theirs := map[string]bool{}
	for _, e := range own {
		theirs[e.Dated().Line] = true
	}
	all := slices.Clone(own)
	for _, e := range examples.All() {
		if !theirs[e.Dated().Line] {
			all = append(all, e)
		}
	}
	set, problems := tariff.NewSet(all...)
	return set, problems.Err()
}

// TariffFiles are the house's own tariffs, below the folder of its rates. Without a folder there
// are none.
func TariffFiles(folder string) []string {
	if folder == "" {
		return nil
	}
	return tomlFiles(filepath.Join(folder, "tariffs"))
}

// tomlFiles are the TOML files of a folder; one that cannot be listed has none.
func tomlFiles(folder string) []string {
	names, err := fs.Glob(os.DirFS(folder), "*.toml")
	if err != nil {
		return nil
	}
	for i, name := range names {
		names[i] = filepath.Join(folder, name)
	}
	return names
}

// OpenTariffs reads files as tariffs; of a folder, every TOML file. Those that can be read come
// back also when others cannot; the error names every mistake in every file.
func OpenTariffs(paths []string) ([]*tariff.Edition, error) {
	var out []*tariff.Edition
	var mistakes []error
	for _, path := range paths {
		if info, err := os.Stat(path); err == nil && info.IsDir() {
			inside, err := OpenTariffs(tomlFiles(path))
			out, mistakes = append(out, inside...), append(mistakes, err)
			continue
		}
		text, err := ReadText(path)
		if err != nil {
			mistakes = append(mistakes, message.Errorf("the tariff in %s cannot be read: %w", path, err))
			continue
		}
		e, err := tariff.Read(path, text)
		if err != nil {
			mistakes = append(mistakes, err)
			continue
		}
		out = append(out, e)
	}
	return out, errors.Join(mistakes...)
}
