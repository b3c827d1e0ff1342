package scalehouse_test

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tenthpoint/internal/paper/pdf/pdfwords"
	"tenthpoint/internal/report"
)

var update = flag.Bool("update", false, "write the golden papers anew")

// golden compares a text with the one kept under testdata.
func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("..", "..", "testdata", "daysheet", name)
	if *update {
		must(t, os.MkdirAll(filepath.Dir(path), 0o755))
		must(t, os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	must(t, err)
	if string(want) != got {
		t.Errorf("%s is not what is composed now; got:\n%s", path, got)
	}
}

// pdf sets a paper.
func pdf(t testing.TB, d report.Document, p report.Page) []byte {
	t.Helper()
	b, err := d.PDF(p)
	must(t, err)
	return b
}

// pdfText returns the readable text in the PDF of a paper, a text a line.
func pdfText(t testing.TB, d report.Document, p report.Page) string {
	t.Helper()
	pages, err := pdfwords.Pages(pdf(t, d, p))
	must(t, err)
	var b strings.Builder
	for _, page := range pages {
		b.WriteString(strings.Join(page, "\n") + "\n\f\n")
	}
	return b.String()
}

// plainCell is a printed figure without its commas.
func plainCell(cell string) string { return strings.ReplaceAll(cell, ",", "") }
