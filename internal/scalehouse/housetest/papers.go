package housetest

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tenthpoint/internal/dispute"
	"tenthpoint/internal/explanation"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/paper/pdf/pdfwords"
	"tenthpoint/internal/report"
	"tenthpoint/internal/scalehouse/disputes"
)

var update = flag.Bool("update", false, "write the golden papers anew")

// Golden compares a text with the one kept under testdata.
func Golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join(testdata(t), "daysheet", name)
	if *update {
		Must(t, os.MkdirAll(filepath.Dir(path), 0o755))
		Must(t, os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	Must(t, err)
	if string(want) != got {
		t.Errorf("%s is not what is composed now; got:\n%s", path, got)
	}
}

// testdata is the folder of goldens at the root of the repository, from wherever a test runs.
func testdata(t *testing.T) string {
	t.Helper()
	root, err := os.Getwd()
	Must(t, err)
	for up := ""; root != up; up, root = root, filepath.Dir(root) {
		if _, err := os.Stat(filepath.Join(root, "go.mod")); err == nil {
			return filepath.Join(root, "testdata")
		}
	}
	t.Fatal("the test does not run in the repository")
	return ""
}

// PDF sets a paper.
func PDF(t testing.TB, d report.Document, p report.Page) []byte {
	t.Helper()
	b, err := d.PDF(p)
	Must(t, err)
	return b
}

// PDFText returns the readable text in the PDF of a paper, a text a line.
func PDFText(t testing.TB, d report.Document, p report.Page) string {
	t.Helper()
	pages, err := pdfwords.Pages(PDF(t, d, p))
	Must(t, err)
	var b strings.Builder
	for _, page := range pages {
		b.WriteString(strings.Join(page, "\n") + "\n\f\n")
	}
	return b.String()
}

// PlainCell is a printed figure without its commas.
func PlainCell(cell string) string { return strings.ReplaceAll(cell, ",", "") }

// Proof collects the parts of the proof of a ticket.
func (s *Scene) Proof(number int64, o office.ProofOptions) explanation.Facts {
	s.T.Helper()
	f, err := office.ProofFacts(ctx, s.Desk, number, o)
	Must(s.T, err)
	return f
}

// Raised raises a dispute and returns it with what is said of it.
func (s *Scene) Raised(ticket int64, about string, official bool) (dispute.Dispute, string) {
	s.T.Helper()
	id, err := disputes.Raise(ctx, s.Desk, dispute.Raised{Ticket: ticket, By: "Ada Field", About: about, Claim: "16.8 at home", Official: official})
	Must(s.T, err)
	one, err := office.DisputeByID(ctx, s.Desk, id)
	Must(s.T, err)
	said, err := office.WhenRaised(ctx, s.Desk, one)
	Must(s.T, err)
	return one, message.Texts(" ", said).String()
}
