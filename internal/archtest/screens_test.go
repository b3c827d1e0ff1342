package archtest

import (
	"fmt"
	"go/ast"
	"slices"
	"testing"
)

// runnerFiles are where the screens may start work beside the window's own
// goroutine; everywhere else a background answer would race with typing.
var runnerFiles = []string{"ui/shell/runner.go", "ui/shell/runner_test.go"}

// oneRunner keeps goroutines and fyne.Do in one file.
func oneRunner(sources []source) []string {
	var problems []string
	for _, s := range sources {
		if !within(s.pkg(), "ui") || slices.Contains(runnerFiles, s.path) {
			continue
		}
		ast.Inspect(s.file, func(n ast.Node) bool {
			if g, ok := n.(*ast.GoStmt); ok {
				problems = append(problems, fmt.Sprintf("%s: a go statement; use the runner in %s", s.at(g), runnerFiles[0]))
			}
			return true
		})
		s.mentions(s.nameOf("fyne.io/fyne/v2"), func(chosen *ast.SelectorExpr) {
			if chosen.Sel.Name == "Do" || chosen.Sel.Name == "DoAndWait" {
				problems = append(problems, fmt.Sprintf("%s: fyne.%s; use the runner in %s", s.at(chosen), chosen.Sel.Name, runnerFiles[0]))
			}
		})
	}
	return problems
}

// menuShortcutsOnly: a shortcut on the canvas is silent while a field has the
// focus, which at this desk is always. Shortcuts belong to menu items.
func menuShortcutsOnly(sources []source) []string {
	var problems []string
	for _, s := range sources {
		if !within(s.pkg(), "ui", "cmd/tenthpoint") {
			continue
		}
		s.calls(func(call *ast.CallExpr, chosen *ast.SelectorExpr) {
			if chosen.Sel.Name == "AddShortcut" {
				problems = append(problems, fmt.Sprintf(
					"%s: AddShortcut does not fire while a field has the focus; give the shortcut to a menu item", s.at(call)))
			}
		})
	}
	return problems
}

// calculators are ways to make an amount out of text or of other amounts.
var calculators = map[string][]string{
	"strconv": {"Atoi", "ParseInt", "ParseUint", "ParseFloat", "FormatFloat"},
	"fmt":     {"Sscan", "Sscanf", "Sscanln"},
}

// noArithmeticInViews: a view shows strings that a presenter made ready. It
// may add up pixels, but has no way to read an amount or to work one out.
func noArithmeticInViews(sources []source) []string {
	var problems []string
	for _, s := range sources {
		if s.isTest() || !s.draws() || within(s.pkg(), widgetPackages...) {
			continue
		}
		for from, names := range calculators {
			s.mentions(s.nameOf(from), func(chosen *ast.SelectorExpr) {
				if slices.Contains(names, chosen.Sel.Name) {
					problems = append(problems, fmt.Sprintf(
						"%s: %s.%s in a view; the presenter reads what was typed", s.at(chosen), from, chosen.Sel.Name))
				}
			})
		}
		for _, i := range s.imports() {
			if i.path == "math" || i.path == "fyne.io/fyne/v2/data/binding" {
				problems = append(problems, fmt.Sprintf(
					"%s: %s in a view; the presenter does the arithmetic and hands over strings", s.at(i.node), i.path))
			}
		}
	}
	return problems
}

func TestOneRunnerCanFail(t *testing.T) {
	const broken = `package x
import toolkit "fyne.io/fyne/v2"
func f() { go f() }
func g() { toolkit.Do(f) }`
	expectProblems(t, oneRunner([]source{
		snippet(t, "ui/yard/screen.go", broken),
		snippet(t, "ui/shell/runner.go", broken),
		snippet(t, "internal/scalelink/a.go", broken),
	}), "ui/yard/screen.go:3: a go statement", "ui/yard/screen.go:4: fyne.Do")
}

func TestMenuShortcutsOnlyCanFail(t *testing.T) {
	const broken = `package x
func f() { window.Canvas().AddShortcut(save, f) }`
	expectProblems(t, menuShortcutsOnly([]source{
		snippet(t, "ui/widgets/a.go", broken),
		snippet(t, "cmd/tenthpoint/a.go", broken),
	}), "ui/widgets/a.go:2", "cmd/tenthpoint/a.go:2")
}

func TestNoArithmeticInViewsCanFail(t *testing.T) {
	const broken = `package x
import "strconv"
import "math"
var n, _ = strconv.Atoi("1")
var s = strconv.Itoa(1)
var f = math.Pi`
	expectProblems(t, noArithmeticInViews([]source{
		snippet(t, "ui/yard/screen.go", broken),
		snippet(t, "ui/yard/a.go", broken),
	}), "ui/yard/screen.go:4: strconv.Atoi", "ui/yard/screen.go:3: math in a view")
}
