package ratefiles

import (
	"errors"
	"path/filepath"

	"tenthpoint/internal/levy"
	"tenthpoint/internal/message"
	"tenthpoint/schedules"
)

// ReadLevies gathers the levies known: the elevator's own, from the subfolder "levies" of the folder
// of its rates, and those of the program, of which one of the elevator replaces any of the same
// jurisdiction, grain and title.
func ReadLevies(folder string) (*levy.Set, error) {
	var own []*levy.Levy
	if folder != "" {
		var err error
		if own, err = OpenLevies(tomlFiles(filepath.Join(folder, "levies"))); err != nil {
			return nil, err
		}
	}
	return WithShippedLevies(own)
}

// WithShippedLevies checks the elevator's own levies against each other and adds those of the
// program where it has none of its own.
func WithShippedLevies(own []*levy.Levy) (*levy.Set, error) {
	shipped, err := schedules.Levies()
	if err != nil {
		return nil, err
	}
	theirs := map[string]bool{}
	for _, l := range own {
		theirs[l.Dated().Line] = true
	}
	all := own[:len(own):len(own)]
	for _, l := range shipped.All() {
		if !theirs[l.Dated().Line] {
			all = append(all, l)
		}
	}
	set, problems := levy.NewSet(all...)
	return set, problems.Err()
}

// OpenLevies reads files as levies. The error names every mistake in every file.
func OpenLevies(paths []string) (out []*levy.Levy, err error) {
	var mistakes []error
	for _, path := range paths {
		text, err := ReadText(path)
		if err != nil {
			mistakes = append(mistakes, message.Errorf("the levy in %s cannot be read: %w", path, err))
			continue
		}
		l, err := levy.Read(path, text)
		if err != nil {
			mistakes = append(mistakes, err)
			continue
		}
		out = append(out, l)
	}
	return out, errors.Join(mistakes...)
}
