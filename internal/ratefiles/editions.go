// Package ratefiles reads the editions and moisture charts that an elevator keeps as files of its
// own, and combines them with the built-in examples.
package ratefiles

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"tenthpoint/internal/book/place"
	"tenthpoint/internal/message"
	"tenthpoint/internal/rates"
	"tenthpoint/schedules"
)

// ratesBeside is the folder, beside a book, that an elevator keeps its own
// rates in.
const ratesBeside = "schedules"

// RatesBeside is the folder of a book's own rates.
func RatesBeside(book string) string { return filepath.Join(place.Beside(book), ratesBeside) }

// ReadRates gathers the rates to settle under: the elevator's own, from every TOML file in the
// folder or in its subfolder "editions", and the built-in example editions for every commodity of a
// schedule for which the elevator has none of its own. A folder that does not exist has none. The
// error names every mistake in every file.
func ReadRates(folder string) (*rates.Set, error) {
	files, err := EditionFiles(folder)
	if err != nil {
		return nil, err
	}
	own, err := ReadEditions(files)
	if err != nil {
		return nil, err
	}
	return WithExamples(own)
}

// WithExamples checks the elevator's own editions against each other and adds the built-in examples
// where it has none of its own.
func WithExamples(own []*rates.Edition) (*rates.Set, error) {
	examples, err := schedules.Editions()
	if err != nil {
		return nil, err
	}
	theirs := map[[2]string]bool{}
	for _, e := range own {
		theirs[line(e)] = true
	}
	all := slices.Clone(own)
	for _, e := range examples.All() {
		if !theirs[line(e)] {
			all = append(all, e)
		}
	}
	set, problems := rates.NewSet(all...)
	return set, problems.Err()
}

// line is the series in which editions replace each other.
func line(e *rates.Edition) [2]string { return [2]string{e.Schedule, e.Commodity.ID} }

// EditionFiles are the files of a folder that hold editions: its own and those
// of its subfolder "editions". A folder that is not there has none.
func EditionFiles(folder string) ([]string, error) {
	if folder == "" {
		return nil, nil
	}
	if _, err := os.ReadDir(folder); errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	} else if err != nil {
		return nil, message.Storage.Errorf("the folder of rates cannot be read: %w", err)
	}
	var paths []string
	for _, pattern := range []string{"*.toml", "editions/*.toml"} {
		names, err := fs.Glob(os.DirFS(folder), pattern)
		if err != nil {
			return nil, err
		}
		for _, name := range names {
			paths = append(paths, filepath.Join(folder, filepath.FromSlash(name)))
		}
	}
	return paths, nil
}

// longestText is far beyond any edition or chart, in bytes.
const longestText = 1 << 20

// ReadText reads a file of rates or a chart. A device, or a file longer than any
// of these, is refused before the memory is full.
func ReadText(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, longestText+1))
	if err == nil && len(text) > longestText {
		return nil, message.Invalid.Errorf("%s is longer than %d bytes: this is no file of rates or moistures", path, longestText)
	}
	return text, err
}

// ReadEditions reads files as editions. Those that can be read come back also
// when others cannot; the error names every mistake in every file.
func ReadEditions(paths []string) ([]*rates.Edition, error) {
	var editions []*rates.Edition
	var mistakes []error
	for _, path := range paths {
		text, err := ReadText(path)
		if err != nil {
			mistakes = append(mistakes, message.Errorf("the rates in %s cannot be read: %w", path, err))
			continue
		}
		e, err := rates.Read(path, text)
		if err != nil {
			mistakes = append(mistakes, err)
			continue
		}
		editions = append(editions, e)
	}
	return editions, errors.Join(mistakes...)
}
