package archtest

import (
	"fmt"
	"go/ast"
	"slices"
	"strings"
	"testing"
)

// A file is one idea. Past the first length it probably holds two; past the
// second it certainly does.
const (
	longLines    = 400
	tooLongLines = 500
)

func fileLength(sources []source) []string {
	return longerThan(sources, tooLongLines, "split it by idea")
}

// longFiles are worth a look, and no more.
func longFiles(sources []source) []string {
	return longerThan(sources, longLines, "is it still one idea?")
}

func longerThan(sources []source, lines int, advice string) []string {
	var problems []string
	for _, s := range sources {
		if s.lines > lines {
			problems = append(problems, fmt.Sprintf("%s: %d lines, more than %d: %s", s.path, s.lines, lines, advice))
		}
	}
	return problems
}

// packageComments: every package teaches its idea before its first line of
// code, in the words `go doc` prints.
func packageComments(sources []source) []string {
	begins := map[string]string{}
	for _, s := range sources {
		if s.isTest() {
			continue
		}
		if _, known := begins[s.pkg()]; !known {
			begins[s.pkg()] = ""
		}
		if s.file.Doc != nil {
			begins[s.pkg()] = s.file.Doc.Text()
		}
	}
	var problems []string
	for pkg, text := range begins {
		if !strings.HasPrefix(text, "Package ") && !strings.HasPrefix(text, "Command ") {
			problems = append(problems, fmt.Sprintf("%s: no comment beginning \"Package\" or \"Command\" tells what this package is about", pkg))
		}
	}
	return problems
}

// noSkippedTests: a test that did not run is taken for one that passed. Only
// the real-window run, which a machine may be unable to do, may skip.
func noSkippedTests(sources []source) []string {
	var problems []string
	for _, s := range sources {
		if !s.isTest() || within(s.pkg(), "cmd/tenthpoint") {
			continue
		}
		for _, runner := range []string{"t", "tb", "b", "f"} {
			s.mentions(runner, func(chosen *ast.SelectorExpr) {
				if slices.Contains([]string{"Skip", "Skipf", "SkipNow"}, chosen.Sel.Name) {
					problems = append(problems, fmt.Sprintf("%s: a skipped test proves nothing; make it run or remove it", s.at(chosen)))
				}
			})
		}
	}
	return problems
}

func TestFileLengthCanFail(t *testing.T) {
	long := snippet(t, "internal/settle/a.go", "package settle\n"+strings.Repeat("\n", longLines))
	tooLong := snippet(t, "internal/settle/b.go", "package settle\n"+strings.Repeat("\n", tooLongLines))
	short := snippet(t, "internal/settle/c.go", "package settle\n"+strings.Repeat("\n", longLines-1))
	sources := []source{long, tooLong, short}
	expectProblems(t, fileLength(sources), "internal/settle/b.go: 501 lines, more than 500")
	expectProblems(t, longFiles(sources), "a.go: 401 lines, more than 400", "b.go: 501 lines, more than 400")
}

func TestPackageCommentsCanFail(t *testing.T) {
	expectProblems(t, packageComments([]source{
		snippet(t, "internal/a/doc.go", "// Package a weighs.\npackage a"),
		snippet(t, "internal/a/b.go", "package a"),
		snippet(t, "internal/b/b.go", "package b"),
		snippet(t, "internal/b/b_test.go", "// Package b is told only by its test.\npackage b"),
		snippet(t, "internal/c/c.go", "// weighs\npackage c"),
		snippet(t, "internal/d/d.go", "// Package d is apart from its line.\n\npackage d"),
	}), "internal/b: no comment", "internal/c: no comment", "internal/d: no comment")
}

func TestNoSkippedTestsCanFail(t *testing.T) {
	const skips = `package x
func TestA(t *testing.T) { t.Skip("later") }
func FuzzA(f *testing.F) { f.SkipNow() }
func g() { rows.Skip(1) }`
	expectProblems(t, noSkippedTests([]source{
		snippet(t, "internal/settle/a_test.go", skips),
		snippet(t, "cmd/tenthpoint/a_test.go", skips),
	}), "internal/settle/a_test.go:2", "internal/settle/a_test.go:3")
}
