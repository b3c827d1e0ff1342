package schedules

import (
	"errors"
	"io/fs"

	"tenthpoint/internal/moisture/chart"
)

// Charts reads every shipped chart. The error names every mistake in every
// file.
func Charts() (*chart.Set, error) { return ReadCharts(Files) }

// ReadCharts reads the charts of a folder laid out like the shipped files: each
// TOML or CSV file under charts is one chart.
func ReadCharts(files fs.FS) (*chart.Set, error) {
	var names []string
	for _, pattern := range []string{"charts/*.toml", "charts/*.csv"} {
		found, err := fs.Glob(files, pattern)
		if err != nil {
			return nil, err
		}
		names = append(names, found...)
	}
	return ChartsFrom(names, func(name string) ([]byte, error) { return fs.ReadFile(files, name) })
}

// ChartsFrom reads charts by name and holds them against each other. The error
// names every mistake in every file, also a file that could not be read.
func ChartsFrom(names []string, read func(name string) ([]byte, error)) (*chart.Set, error) {
	var charts []*chart.Chart
	var mistakes []error
	for _, name := range names {
		text, err := read(name)
		if err != nil {
			mistakes = append(mistakes, err)
			continue
		}
		chart, err := chart.Read(name, text)
		if err != nil {
			mistakes = append(mistakes, err)
			continue
		}
		charts = append(charts, chart)
	}
	set, err := chart.NewSet(charts...)
	if err := errors.Join(append(mistakes, err)...); err != nil {
		return nil, err
	}
	return set, nil
}
