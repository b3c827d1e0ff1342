package ratefiles_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/ratefiles"
	"tenthpoint/internal/scalehouse/housetest"
)

// The elevator's own charts lie under "charts" in the folder of its rates; one with an example's id
// takes the example's place, and mistakes are named with their file.
func TestReadChartsFromTheHousesFolder(t *testing.T) {
	folder := t.TempDir()
	examples, err := ratefiles.ReadCharts(filepath.Join(folder, "not there"))
	housetest.Must(t, err)
	corn, err := examples.ByID("example-corn-250g")
	housetest.Must(t, err)
	housetest.Must(t, os.Mkdir(filepath.Join(folder, "charts"), 0o755))
	write := func(name, text string) {
		housetest.Must(t, os.WriteFile(filepath.Join(folder, "charts", name), []byte(text), 0o644))
	}
	text := string(corn.Lines())
	write("same.csv", strings.Replace(text, "invented for this program", "the house", 1))
	write("other.csv", strings.NewReplacer("example-corn-250g", "our-corn", "Example dial meter A", "Our meter").Replace(text))
	both, err := ratefiles.ReadCharts(folder)
	housetest.Must(t, err)
	if got, want := len(both.All()), len(examples.All())+1; got != want {
		t.Errorf("%d charts are in use, want %d", got, want)
	}
	if own, err := both.ByID("example-corn-250g"); err != nil || own.Origin.By != "the house" {
		t.Errorf("the example stands where the house's own chart should: %+v, %v", own, err)
	}
	write("broken.csv", "chart,id\n")
	_, err = ratefiles.ReadCharts(folder)
	housetest.Refused(t, err, errortest.Invalid("charts/broken.csv"))
}
