package desk

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"tenthpoint/internal/rates"
	"tenthpoint/schedules"
)

// ratesBeside is the folder, beside a book, that an elevator keeps its own
// rates in.
const ratesBeside = "schedules"

// RatesBeside is the folder of a book's own rates.
func RatesBeside(book string) string { return filepath.Join(filepath.Dir(book), ratesBeside) }

// ReadRates gathers the rates to settle under: the elevator's own, from every
// TOML file in the folder or in its subfolder "editions", and the example
// editions inside the program for whatever commodity of whatever schedule the
// elevator has none of its own. A folder that is not there has none. The error
// names every mistake in every file.
func ReadRates(folder string) (*rates.Set, error) {
	own, err := ownRates(folder)
	if err != nil {
		return nil, err
	}
	examples, err := schedules.Editions()
	if err != nil {
		return nil, err
	}
	theirs := map[[2]string]bool{}
	for _, e := range own {
		theirs[line(e)] = true
	}
	all := own
	for _, e := range examples.All() {
		if !theirs[line(e)] {
			all = append(all, e)
		}
	}
	set, problems := rates.NewSet(all...)
	if len(problems) > 0 {
		return nil, fmt.Errorf("the rates in %s: %w", folder, sentences(problems))
	}
	return set, nil
}

// line is what editions follow each other in.
func line(e *rates.Edition) [2]string { return [2]string{e.Schedule, e.Commodity.ID} }

func ownRates(folder string) ([]*rates.Edition, error) {
	if folder == "" {
		return nil, nil
	}
	if _, err := os.Stat(folder); errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	var own []*rates.Edition
	var mistakes []error
	for _, place := range []string{folder, filepath.Join(folder, "editions")} {
		set, err := rates.Load(os.DirFS(place))
		if err != nil {
			mistakes = append(mistakes, err)
			continue
		}
		own = append(own, set.All()...)
	}
	return own, errors.Join(mistakes...)
}
