package present

import (
	"bytes"

	"tenthpoint/internal/slip"
)

// pdfOf is the paper of a slip: a half letter sheet.
func pdfOf(d slip.Document) ([]byte, error) {
	var paper bytes.Buffer
	err := slip.PDF(&paper, d, slip.HalfLetter, slip.Options{})
	return paper.Bytes(), err
}
