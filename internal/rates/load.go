package rates

import (
	"io/fs"

	"tenthpoint/internal/tomlfile"
)

// Load reads every TOML file of a folder as an edition and gathers them into a set. The error has
// every mistake in every file; only when there is none are the editions compared with each other.
func Load(files fs.FS) (*Set, error) {
	editions, err := tomlfile.ReadFolder(files, Read)
	if err != nil {
		return nil, err
	}
	set, problems := NewSet(editions...)
	if err := problems.Err(); err != nil {
		return nil, err
	}
	return set, nil
}
