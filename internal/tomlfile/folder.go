package tomlfile

import (
	"errors"
	"io/fs"
)

// ReadFolder reads every TOML file of a folder. The error has every mistake in every file.
func ReadFolder[E any](files fs.FS, read func(name string, text []byte) (E, error)) ([]E, error) {
	names, err := fs.Glob(files, "*.toml")
	if err != nil {
		return nil, err
	}
	var out []E
	var mistakes []error
	for _, name := range names {
		one, err := readFile(files, name, read)
		if err != nil {
			mistakes = append(mistakes, err)
			continue
		}
		out = append(out, one)
	}
	return out, errors.Join(mistakes...)
}

func readFile[E any](files fs.FS, name string, read func(name string, text []byte) (E, error)) (none E, err error) {
	text, err := fs.ReadFile(files, name)
	if err != nil {
		return none, err
	}
	return read(name, text)
}
