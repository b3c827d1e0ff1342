package scaleticket

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
)

// TestShots draws every ticket on both sizes of paper. Where TENTHPOINT_SHOTS
// names a folder the papers are kept there to be looked at.
func TestShots(t *testing.T) {
	dir := os.Getenv("TENTHPOINT_SHOTS")
	if dir == "" {
		dir = t.TempDir()
	}
	var b bytes.Buffer
	label, err := SampleLabel(cornTicket(t))
	if err != nil {
		t.Fatal(err)
	}
	if err := label.PDF(&b); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "label.pdf"), b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, c := range ticketTable {
		d := Compose(c.make(t))
		for suffix, size := range map[string]Size{"": HalfLetter, "-a5": A5} {
			var b bytes.Buffer
			if err := PDF(&b, d, size, Options{}); err != nil {
				t.Errorf("%s: %v", c.name, err)
			}
			if !bytes.HasPrefix(b.Bytes(), []byte("%PDF-")) || !bytes.HasSuffix(bytes.TrimSpace(b.Bytes()), []byte("%%EOF")) {
				t.Errorf("%s is not a whole PDF", c.name)
			}
			if err := os.WriteFile(filepath.Join(dir, "slip-"+c.name+suffix+".pdf"), b.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}
