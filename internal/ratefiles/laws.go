package ratefiles

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"tenthpoint/internal/dispute"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/tomlfile"
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
	case meter.KindTolerances:
		_, err = meter.ReadTolerances(f)
	default:
		return tomlfile.Problems{tomlfile.Locate(f.Name, f.Text).Problem("law.kind", message.New("law.kind is %q", f.Kind),
			message.New("Known here: grades, recording, bushels, moisture-classes, disputes, retention, meter-tolerances."))}
	}
	return err
}
