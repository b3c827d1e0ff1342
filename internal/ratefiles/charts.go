package ratefiles

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"tenthpoint/internal/moisture/chart"
	"tenthpoint/schedules"
)

// ReadCharts gathers the moisture charts of the elevator: its own, from every TOML and CSV file in
// the subfolder "charts" of the folder of its rates, and the example charts inside the program. An
// example whose id the elevator has given to a chart of its own stays out. A folder that is not
// there has none. The error names every mistake in every file.
func ReadCharts(folder string) (*chart.Set, error) {
	examples, err := schedules.Charts()
	if err != nil || folder == "" {
		return examples, err
	}
	if _, err := os.Stat(filepath.Join(folder, "charts")); errors.Is(err, fs.ErrNotExist) {
		return examples, nil
	}
	own, err := schedules.ReadCharts(os.DirFS(folder))
	if err != nil {
		return nil, err
	}
	all := own.All()
	for _, c := range examples.All() {
		if _, err := own.ByID(c.ID); err != nil {
			all = append(all, c)
		}
	}
	return chart.NewSet(all...)
}
