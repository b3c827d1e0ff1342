package report

import "testing"

// No name that a person typed is run by the spreadsheet it is opened in; figures stay figures.
func TestSpreadsheetCellsAreNeverFormulas(t *testing.T) {
	for text, want := range map[string]string{
		"=cmd|'/C calc'!A0": "'=cmd|'/C calc'!A0", "+1+1": "'+1+1", "@SUM(A1)": "'@SUM(A1)", "-2+3": "'-2+3", "\t=1+1": "' =1+1", "\r=1": "' =1", "  =1": "'  =1", "=": "'=", "-A": "'-A",
		"-1,250.50": "-1,250.50", "+0.5": "+0.5", "-": "-", "Ada=Bo": "Ada=Bo", "a\x1bb": "a b", "": "",
	} {
		if got := SpreadsheetCell(text); got != want {
			t.Errorf("%q is written as %q, want %q", text, got, want)
		}
	}
}
