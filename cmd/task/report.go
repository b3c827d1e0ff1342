package main

import (
	"encoding/json"
	"fmt"
	"io"
	"sort"
	"strings"
)

// An event is one line of `go test -json`, as `go doc test2json` describes it.
type event struct {
	Action      string
	Package     string
	ImportPath  string
	Test        string
	Output      string
	Elapsed     float64 // seconds
	FailedBuild string
}

// topTest is the test function the event belongs to; its cases (subtests)
// are named after a slash.
func (e event) topTest() string {
	top, _, _ := strings.Cut(e.Test, "/")
	return top
}

// A report turns the events of a test run into lines for a person and a
// tally. Output of tests that pass is dropped; that of tests that fail is
// printed whole, at once, when they end.
type report struct {
	tally
	out      io.Writer
	packages map[string]*packageRun
	builds   map[string]*strings.Builder // compiler output by import path
}

// packageRun is one package whose tests are under way.
type packageRun struct {
	tally
	own     strings.Builder             // output outside any test
	running map[string]*strings.Builder // output by test function
}

func newReport(out io.Writer) *report {
	return &report{out: out, packages: map[string]*packageRun{}, builds: map[string]*strings.Builder{}}
}

// take handles one line of the stream. A line that is no event is printed unchanged: it can only be
// an error of the go command.
func (r *report) take(line []byte) {
	var e event
	if err := json.Unmarshal(line, &e); err != nil {
		r.out.Write(line)
		return
	}
	switch {
	case e.ImportPath != "":
		keep(r.builds, e.ImportPath, e.Output)
	case e.Test == "":
		r.takePackage(e)
	default:
		r.takeTest(e)
	}
}

func (r *report) of(pkg string) *packageRun {
	if r.packages[pkg] == nil {
		r.packages[pkg] = &packageRun{running: map[string]*strings.Builder{}}
	}
	return r.packages[pkg]
}

// takeTest enters an event of a test function or of one of its cases. Only
// the function's own end is counted.
func (r *report) takeTest(e event) {
	run := r.of(e.Package)
	if e.Action == "output" {
		keep(run.running, e.topTest(), e.Output)
	}
	if e.Test != e.topTest() {
		return
	}
	switch e.Action {
	case "pass":
		run.count(true)
		delete(run.running, e.Test)
	case "fail", "skip":
		run.count(false)
		fmt.Fprintf(r.out, "FAILED %s %s (%s)\n", e.Package, e.Test, e.Action)
		if kept := run.running[e.Test]; kept != nil {
			fmt.Fprint(r.out, kept)
		}
		delete(run.running, e.Test)
	}
}

// takePackage enters an event of a package as a whole.
func (r *report) takePackage(e event) {
	run := r.of(e.Package)
	switch e.Action {
	case "output":
		run.own.WriteString(e.Output)
	case "pass":
		r.add(run.tally)
		fmt.Fprintf(r.out, "ok     %s: %d tests in %.1f s\n", e.Package, run.passed, e.Elapsed)
	case "skip":
		fmt.Fprintf(r.out, "-      %s: no tests\n", e.Package)
	case "fail":
		r.packageFailed(run, e)
	}
}

// packageFailed prints what has not been printed yet. A package that failed
// without a failing test (it did not compile, it exited) counts as one.
func (r *report) packageFailed(run *packageRun, e event) {
	if run.failed == 0 {
		run.count(false)
		if compiler := r.builds[e.FailedBuild]; compiler != nil {
			fmt.Fprint(r.out, compiler)
		}
		for _, test := range sortedKeys(run.running) {
			fmt.Fprint(r.out, run.running[test])
		}
		fmt.Fprint(r.out, run.own.String())
	}
	r.add(run.tally)
	fmt.Fprintf(r.out, "FAILED %s: %d passed, %d failed\n", e.Package, run.passed, run.failed)
}

func keep(kept map[string]*strings.Builder, key, text string) {
	if kept[key] == nil {
		kept[key] = &strings.Builder{}
	}
	kept[key].WriteString(text)
}

func sortedKeys(m map[string]*strings.Builder) []string {
	var keys []string
	for key := range m {
		keys = append(keys, key)
	}
	sort.Strings(keys)
	return keys
}
