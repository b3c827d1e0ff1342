package ratefiles

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"tenthpoint/internal/deadline"
	"tenthpoint/internal/dispute"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/title"
	"tenthpoint/internal/tomlfile"
	"tenthpoint/internal/truckscale"
)

// ReadLaws gathers the published rules in use: those of the program, and the elevator's own from
// the subfolder "law" of the folder of its rates. A file of the elevator that is about the same
// thing and begins later goes before the program's. The error names every mistake in every file.
func ReadLaws(folder string) (*law.Set, error) {
	var own []*law.File
	below := filepath.Join(folder, "law")
	if _, err := os.Stat(below); folder != "" && !errors.Is(err, fs.ErrNotExist) {
		if own, err = law.OpenAll(os.DirFS(below)); err != nil {
			return nil, err
		}
	}
	var mistakes []error
	for _, f := range own {
		mistakes = append(mistakes, CheckLaw(f))
	}
	set, problems := law.NewSet(append(own, law.Shipped()...)...)
	if err := errors.Join(append(mistakes, problems.Err())...); err != nil {
		return nil, err
	}
	return set, nil
}

// CheckLaws reads files of law as the desk would: each alone, then beside the
// others of the house and those of the program. The error names every mistake in
// every file.
func CheckLaws(folder string, paths []string) ([]*law.File, error) {
	var given []*law.File
	var mistakes []error
	for _, path := range paths {
		text, err := ReadText(path)
		if err != nil {
			mistakes = append(mistakes, message.Errorf("the law in %v cannot be read: %w", path, err))
			continue
		}
		f, err := law.Open(path, text)
		if err == nil {
			given, err = append(given, f), CheckLaw(f)
		}
		mistakes = append(mistakes, err)
	}
	if err := errors.Join(mistakes...); err != nil {
		return given, err
	}
	others, err := ReadLaws(folder)
	if err != nil {
		return given, err
	}
	_, problems := law.NewSet(slices.Concat(given, without(others.All(), given))...)
	return given, problems.Err()
}

// without are the files that are not among others, by their texts.
func without(files, others []*law.File) []*law.File {
	there := map[string]bool{}
	for _, f := range others {
		there[f.Hash] = true
	}
	return slices.DeleteFunc(slices.Clone(files), func(f *law.File) bool { return there[f.Hash] })
}

// LawFiles are the house's own files of law, below the folder of its rates.
func LawFiles(folder string) []string {
	var paths []string
	_ = filepath.WalkDir(filepath.Join(folder, "law"), func(path string, entry fs.DirEntry, err error) error {
		if err == nil && !entry.IsDir() && filepath.Ext(path) == ".toml" {
			paths = append(paths, path)
		}
		return nil // without the folder the house has none
	})
	return paths
}

// CheckLaw reads a file of rules with the package its kind belongs to.
func CheckLaw(f *law.File) (err error) {
	if known, err := grain.CheckLaw(f); known {
		return err
	}
	switch f.Kind {
	case dispute.KindDisputes:
		_, err = dispute.ReadRule(f)
	case moisture.KindRetention:
		_, err = moisture.ReadRetentions(f)
	case title.KindTitles:
		_, err = title.ReadRules(f)
	case law.Deadlines:
		_, err = deadline.ReadRules(f)
	case meter.KindTolerances:
		_, err = meter.ReadTolerances(f)
	case truckscale.KindTolerances:
		_, err = truckscale.ReadLadder(f)
	default:
		return tomlfile.Problems{tomlfile.Locate(f.Name, f.Text).Problem("law.kind", message.New("law.kind is %q", f.Kind),
			message.New("Known here: grades, recording, bushels, moisture-classes, disputes, retention, meter-tolerances, scale-tolerances, titles, deadlines."))}
	}
	return err
}
