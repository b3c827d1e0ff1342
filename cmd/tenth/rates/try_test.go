package rates

import "testing"

// The words of an edition reach the reasons of a trial: none may run in a spreadsheet.
func TestTrialRowsRunNothing(t *testing.T) {
	rows := spreadsheetRows([][]string{{"moisture %", "refused"}, {"15.0", `=cmd|'/C calc'!A0`}, {"-1.5", "@SUM(A1)"}})
	if rows[1][1] != `'=cmd|'/C calc'!A0` || rows[2][1] != "'@SUM(A1)" || rows[2][0] != "-1.5" || rows[0][0] != "moisture %" {
		t.Errorf("%q", rows)
	}
}
