package main

import (
	"os"
	"strings"
	"testing"
)

// TestReportCountsAndPrints replays a recorded run of four packages: one that
// passes, one with a failing case, one skip and one panic, one that does not
// compile, and one without tests.
func TestReportCountsAndPrints(t *testing.T) {
	stream, err := os.Open("testdata/run.json")
	if err != nil {
		t.Fatal(err)
	}
	defer stream.Close()
	var out strings.Builder
	r := newReport(&out)
	if err := r.readAll(stream); err != nil {
		t.Fatal(err)
	}
	if got, want := r.closingLine(), "3 passed, 4 failed"; got != want {
		t.Errorf("closing line %q, want %q\n%s", got, want, &out)
	}
	for _, want := range []string{
		"ok     demo/good: 2 tests in 0.0 s",
		"FAILED demo/bad TestTable (fail)",
		"bad_test.go:9: 15.3 is not 15.2", // from a case below TestTable
		"FAILED demo/bad TestLeftOut (skip)",
		"panic: the pit is full",
		"demo/bad: 1 passed, 3 failed",
		"broken.go:3:2: undefined: truck", // from the compiler
		"FAILED demo/broken: 0 passed, 1 failed",
		"-      demo/bare: no tests",
		"a line that is no event",
	} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("the report lacks %q:\n%s", want, &out)
		}
	}
	if strings.Contains(out.String(), "chatter of a passing test") {
		t.Errorf("the report prints the output of a passing test:\n%s", &out)
	}
}

func TestReportCountsAPackageThatExits(t *testing.T) {
	var out strings.Builder
	r := newReport(&out)
	err := r.readAll(strings.NewReader(`{"Action":"run","Package":"demo/x","Test":"TestA"}
{"Action":"output","Package":"demo/x","Test":"TestA","Output":"last words\n"}
{"Action":"output","Package":"demo/x","Output":"exit status 3\n"}
{"Action":"fail","Package":"demo/x","Elapsed":0.1}
`))
	if err != nil {
		t.Fatal(err)
	}
	if got, want := r.closingLine(), "0 passed, 1 failed"; got != want {
		t.Errorf("closing line %q, want %q", got, want)
	}
	for _, want := range []string{"last words", "exit status 3"} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("the report lacks %q:\n%s", want, &out)
		}
	}
}
