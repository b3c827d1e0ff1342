package sheet

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/tickettest"
)

// TestShots draws every ticket on both sizes of paper. Where TENTHPOINT_SHOTS
// names a folder the papers are kept there to be looked at.
func TestShots(t *testing.T) {
	dir := os.Getenv("TENTHPOINT_SHOTS")
	if dir == "" {
		dir = t.TempDir()
	}
	var b bytes.Buffer
	label, err := scaleticket.SampleLabel(tickettest.Corn(t))
	if err != nil {
		t.Fatal(err)
	}
	if err := Label(&b, label); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "label.pdf"), b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, c := range tickettest.Table {
		d := scaleticket.Compose(c.Make(t))
		for suffix, size := range map[string]Size{"": HalfLetter, "-a5": A5} {
			var b bytes.Buffer
			if err := PDF(&b, d, size, Options{}); err != nil {
				t.Errorf("%s: %v", c.Name, err)
			}
			if !bytes.HasPrefix(b.Bytes(), []byte("%PDF-")) || !bytes.HasSuffix(bytes.TrimSpace(b.Bytes()), []byte("%%EOF")) {
				t.Errorf("%s is not a whole PDF", c.Name)
			}
			if err := os.WriteFile(filepath.Join(dir, "slip-"+c.Name+suffix+".pdf"), b.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}
