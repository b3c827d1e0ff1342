package tariff

import (
	"io/fs"

	"tenthpoint/internal/tomlfile"
)

// Load reads every TOML file of a folder as a tariff and gathers them into a set. The error has
// every mistake in every file; only when there is none are the tariffs compared with each other.
func Load(files fs.FS) (*Set, error) {
	tariffs, err := tomlfile.ReadFolder(files, Read)
	if err != nil {
		return nil, err
	}
	set, problems := NewSet(tariffs...)
	return set, problems.Err()
}
