package archtest

import (
	"fmt"
	"go/ast"
	"slices"
	"testing"
)

// impure packages give an answer that depends on the machine, the moment or
// the network, or leave a trace outside the program.
var impure = []string{
	"os", "net", "math/rand", "crypto/rand", "log", "database/sql", "fyne.io",
	"path/filepath", "io/ioutil", "syscall", "runtime", "unsafe",
}

// clockNames are the parts of package time that read a clock, wait, or ask the machine for its time
// zone.
var clockNames = []string{
	"Now", "Since", "Until", "Sleep", "After", "AfterFunc", "Tick", "NewTicker", "NewTimer", "Local", "LoadLocation",
}

// clockless packages are given the time they need: the core, and the papers,
// which must come out byte for byte the same from the same facts.
var clockless = slices.Concat(core, papers)

// pureCore keeps the core a function from facts to figures.
func pureCore(sources []source) []string {
	var problems []string
	for _, s := range sources {
		if s.isTest() {
			continue
		}
		if within(s.pkg(), core...) {
			problems = append(problems, impureImports(s)...)
			problems = append(problems, printing(s)...)
		}
		if within(s.pkg(), clockless...) {
			problems = append(problems, clockReadings(s)...)
		}
	}
	return problems
}

func impureImports(s source) []string {
	var problems []string
	for _, i := range s.imports() {
		if within(i.path, impure...) {
			problems = append(problems, fmt.Sprintf(
				"%s: %s belongs to the core and may not import %s; whoever calls it brings the answer", s.at(i.node), s.pkg(), i.path))
		}
		if i.name == "." {
			problems = append(problems, fmt.Sprintf(
				"%s: an import with a dot hides what is used from the other rules", s.at(i.node)))
		}
	}
	return problems
}

func printing(s source) []string {
	var problems []string
	s.mentions(s.nameOf("fmt"), func(chosen *ast.SelectorExpr) {
		if slices.Contains([]string{"Print", "Printf", "Println"}, chosen.Sel.Name) {
			problems = append(problems, fmt.Sprintf(
				"%s: %s belongs to the core and may not print; return the text", s.at(chosen), s.pkg()))
		}
	})
	return problems
}

func clockReadings(s source) []string {
	var problems []string
	s.mentions(s.nameOf("time"), func(chosen *ast.SelectorExpr) {
		if slices.Contains(clockNames, chosen.Sel.Name) {
			problems = append(problems, fmt.Sprintf(
				"%s: %s may not use time.%s; the time is one of the facts it is given", s.at(chosen), s.pkg(), chosen.Sel.Name))
		}
	})
	return problems
}

func TestPureCoreCanFail(t *testing.T) {
	expectProblems(t, pureCore([]source{
		snippet(t, "internal/journal/a.go", `package journal
import clock "time"
import "os"
import "math/rand/v2"
import . "strings"
import "fmt"
var at = clock.Now()
var day = clock.Hour
var here = os.Args
var luck = rand.Int()
var big = ToUpper("x")
func f() { fmt.Println(at); _ = fmt.Sprint(at) }`),
		snippet(t, "internal/scaleticket/a.go", `package slip
import "time"
import "os"
var at = time.Now
var out = os.Stdout`),
		snippet(t, "internal/book/sqlite/a.go", `package sqlite
import "time"
var at = time.Now()`),
		snippet(t, "internal/journal/a_test.go", `package journal
import "os"
var _ = os.Args`),
	}),
		"internal/journal/a.go:7: internal/journal may not use time.Now",
		"a.go:3: internal/journal belongs to the core and may not import os",
		"may not import math/rand/v2",
		"a.go:5: an import with a dot",
		"a.go:12: internal/journal belongs to the core and may not print",
		"internal/scaleticket/a.go:4: internal/scaleticket may not use time.Now")
}
