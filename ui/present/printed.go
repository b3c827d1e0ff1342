package present

import (
	"bytes"

	"tenthpoint/internal/scaleticket"
)

// pdfOf is the paper of a slip: a half letter sheet.
func pdfOf(d scaleticket.Document) ([]byte, error) {
	var paper bytes.Buffer
	err := scaleticket.PDF(&paper, d, scaleticket.HalfLetter, scaleticket.Options{})
	return paper.Bytes(), err
}
