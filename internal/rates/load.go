package rates

import (
	"errors"
	"io/fs"
)

// Load reads every TOML file of a folder as an edition and gathers them into a set. The error has
// every mistake in every file; only when there is none are the editions compared with each other.
func Load(files fs.FS) (*Set, error) {
	names, err := fs.Glob(files, "*.toml")
	if err != nil {
		return nil, err
	}
	var editions []*Edition
	var mistakes []error
	for _, name := range names {
		e, err := readFile(files, name)
		if err != nil {
			mistakes = append(mistakes, err)
			continue
		}
		editions = append(editions, e)
	}
	if err := errors.Join(mistakes...); err != nil {
		return nil, err
	}
	set, problems := NewSet(editions...)
	if err := problems.Err(); err != nil {
		return nil, err
	}
	return set, nil
}

func readFile(files fs.FS, name string) (*Edition, error) {
	text, err := fs.ReadFile(files, name)
	if err != nil {
		return nil, err
	}
	return Read(name, text)
}
