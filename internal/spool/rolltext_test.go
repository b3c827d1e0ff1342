package spool

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestRollText(t *testing.T) {
	job, err := RollText("roll-1042", "TICKET 1042  \r\nGross  52,300 lb\n\n", Roll{Columns: 16, Feed: 3})
	if err != nil {
		t.Fatal(err)
	}
	if want := "TICKET 1042\nGross  52,300 lb\n\n\n\n"; string(job.Bytes) != want {
		t.Errorf("roll text %q, want %q", job.Bytes, want)
	}
	if job.Name != "roll-1042" || job.MIME != Text || job.Copies != 1 {
		t.Errorf("job %+v, want one text copy of roll-1042", job)
	}
}

func TestRollTextFaultsAllAtOnce(t *testing.T) {
	_, err := RollText("roll", "Gross  52,300 lb\nok\nbell\a", Roll{Columns: 12})
	for _, want := range []string{
		`Line 1 of "roll" is 16 letters wide and the roll holds 12: 4 too many`,
		`Line 3 of "roll" holds a control character`,
	} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("error %v lacks %q", err, want)
		}
	}
	if err != nil && strings.Contains(err.Error(), "Line 2") {
		t.Errorf("error %q faults the good line", err)
	}
}

func TestRollTextRefusesImpossiblePaperAndEmptyText(t *testing.T) {
	for text, roll := range map[string]Roll{"x": {Columns: 0}, "y": {Columns: 10, Feed: -1}, " \n\n ": {Columns: 10}} {
		if job, err := RollText("roll", text, roll); err == nil {
			t.Errorf("RollText(%q, %+v) = %q, want a refusal", text, roll, job.Bytes)
		}
	}
}

// What is on the roll is what was asked for: every line, in order, none wider
// than the paper.
func TestRollTextKeepsEveryLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lines := rapid.SliceOfN(rapid.StringMatching(`[A-Za-z0-9é,.][A-Za-z0-9 ,.]{0,20}[a-z]`), 1, 8).Draw(t, "lines")
		columns := rapid.IntRange(10, 30).Draw(t, "columns")
		fits := true
		for _, line := range lines {
			fits = fits && len([]rune(line)) <= columns
		}
		job, err := RollText("roll", strings.Join(lines, "\n"), Roll{Columns: columns, Feed: 2})
		if fits != (err == nil) {
			t.Fatalf("fits %v but error %v", fits, err)
		}
		if want := strings.Join(lines, "\n") + "\n\n\n"; fits && string(job.Bytes) != want {
			t.Fatalf("got %q, want %q", job.Bytes, want)
		}
	})
}
