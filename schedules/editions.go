package schedules

import (
	"io/fs"

	"tenthpoint/internal/rates"
)

// Editions reads every shipped edition and holds them against each other. The
// error names every mistake in every file.
func Editions() (*rates.Set, error) { return ReadEditions(Files) }

// ReadEditions reads the editions of a folder laid out like the shipped files:
// each TOML file under editions is one edition.
func ReadEditions(files fs.FS) (*rates.Set, error) {
	folder, err := fs.Sub(files, "editions")
	if err != nil {
		return nil, err
	}
	return rates.Load(folder)
}
