package report

import (
	"encoding/csv"
	"io"
	"strings"
	"unicode"
)

// CSV writes one of the document's tables with a heading row, as RFC 4180 has it. In every language
// a comma separates the cells and a point the decimals, and nothing the thousands, so that a program
// reads every elevator's lines alike; a spreadsheet with a decimal comma is served by [Document.XLSX].
func (d Document) CSV(w io.Writer, t Table) error {
	p := t.printed(d.forPrograms())
	out := csv.NewWriter(w)
	if err := out.Write(p.titles()); err != nil {
		return err
	}
	for _, r := range p.rows {
		cells := make([]string, len(r.cells))
		for i, printed := range r.cells {
			cells[i] = SpreadsheetCell(p.columns[i].cell(printed))
		}
		if err := out.Write(cells); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// SpreadsheetCell escapes a CSV cell so that no spreadsheet runs it as a formula: it puts an
// apostrophe before a text that begins like one, and replaces control characters with blanks.
// Signed figures stay unchanged.
func SpreadsheetCell(text string) string {
	plain := strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(text, "\ufffd"))
	if strings.HasPrefix(text, "\t") || strings.HasPrefix(text, "\r") {
		return "'" + plain
	}
	first := strings.TrimLeft(plain, " ")
	if first == "" || !strings.ContainsAny(first[:1], "=+-@") || isSignedFigure(first) {
		return plain
	}
	return "'" + plain
}

// isSignedFigure reports whether a text is a sign and digits alone.
func isSignedFigure(text string) bool {
	digits := strings.Trim(text[1:], "0123456789.,")
	return text[0] != '=' && text[0] != '@' && digits == "" && len(text) > 1 || text == "-"
}
