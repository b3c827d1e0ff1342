package tariff

import (
	"errors"
	"io/fs"
)

// Load reads every TOML file of a folder as a tariff and gathers them into a set. The error has
// every mistake in every file; only when there is none are the tariffs compared with each other.
func Load(files fs.FS) (*Set, error) {
	names, err := fs.Glob(files, "*.toml")
	if err != nil {
		return nil, err
	}
	var tariffs []*Edition
	var mistakes []error
	for _, name := range names {
		text, err := fs.ReadFile(files, name)
		if err != nil {
			return nil, err
		}
		e, err := Read(name, text)
		if err != nil {
			mistakes = append(mistakes, err)
			continue
		}
		tariffs = append(tariffs, e)
	}
	if err := errors.Join(mistakes...); err != nil {
		return nil, err
	}
	set, problems := NewSet(tariffs...)
	return set, problems.Err()
}
