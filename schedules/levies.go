package schedules

import (
	"io/fs"

	"tenthpoint/internal/levy"
)

// Levies reads every shipped levy and holds them against each other.
func Levies() (*levy.Set, error) {
	names, err := fs.Glob(Files, "levies/*.toml")
	if err != nil {
		return nil, err
	}
	var all []*levy.Levy
	for _, name := range names {
		text, err := fs.ReadFile(Files, name)
		if err != nil {
			return nil, err
		}
		l, err := levy.Read(name, text)
		if err != nil {
			return nil, err
		}
		all = append(all, l)
	}
	set, problems := levy.NewSet(all...)
	return set, problems.Err()
}
