package schedules

import (
	"io/fs"

	"tenthpoint/internal/tariff"
)

// Tariffs reads every shipped tariff and holds them against each other.
func Tariffs() (*tariff.Set, error) {
	folder, err := fs.Sub(Files, "tariffs")
	if err != nil {
		return nil, err
	}
	return tariff.Load(folder)
}
