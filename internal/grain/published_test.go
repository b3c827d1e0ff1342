package grain

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"testing"

	"github.com/BurntSushi/toml"
)

// published reads a transcribed table: a map of column to cell for each row.
func published(t *testing.T, folder, file string) []map[string]string {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "..", "testdata", "published", folder, file))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, line := range lines[1:] {
		row := map[string]string{}
		for i, cell := range line {
			row[lines[0][i]] = cell
		}
		rows = append(rows, row)
	}
	return rows
}

// TestPublishedTablesNameTheirSource: a table without its source is a rumour.
func TestPublishedTablesNameTheirSource(t *testing.T) {
	for _, folder := range []string{"ams-grain-standards", "canada-off-grades-order", "states-bushel-weights"} {
		var source map[string]any
		if _, err := toml.DecodeFile(filepath.Join("..", "..", "testdata", "published", folder, "SOURCE.toml"), &source); err != nil {
			t.Fatal(err)
		}
		for _, key := range []string{"title", "publisher", "year", "address", "how_read", "exception"} {
			if _, ok := source[key]; !ok {
				t.Errorf("%s: SOURCE.toml has no %s", folder, key)
			}
		}
	}
}
