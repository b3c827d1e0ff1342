package archtest

import (
	"fmt"
	"go/ast"
	"strconv"
	"strings"
	"testing"
)

// formatsTakeTheirArguments compares the gaps of a text with what is set into them: the compiler cannot,
// and a person would read %!d(MISSING) or %!(EXTRA ...) on a paper.
func formatsTakeTheirArguments(sources []source) []string {
	var problems []string
	for _, s := range sources {
		if s.isTest() || !within(s.pkg(), "internal", "ui", "cmd/tenth", "cmd/tenthpoint") {
			continue
		}
		s.calls(func(call *ast.CallExpr, _ *ast.SelectorExpr) {
			first, last, own := formatArguments(call)
			if last < 0 || last >= len(call.Args) || call.Ellipsis.IsValid() {
				return
			}
			given := own + len(call.Args) - last - 1
			for _, at := range call.Args[first : last+1] {
				format, is := constantText(at)
				if most, picks := gapsOf(format); is && (most > given || most < given && !picks) {
					problems = append(problems, fmt.Sprintf("%s: %q has gaps for %d arguments, not for %d", s.at(call), format, most, given))
				}
			}
		})
	}
	return problems
}

// formatArguments are the first and the last argument of a call that is a format, -1 for none; the rest
// is set into them, after own arguments that the call has before them.
func formatArguments(call *ast.CallExpr) (first, last, own int) {
	name, of := calledName(call)
	switch {
	case of == "message" && name == "Count":
		return 1, 2, 1 // the number itself
	case of == "message" && (name == "New" || name == "Errorf"), strings.HasPrefix(of, "message.") && name == "Errorf", name == "Say":
		return 0, 0, 0
	case of == "terminal" && name == "Refusal":
		return 1, 1, 0
	}
	return 0, -1, 0
}

// gapsOf counts the arguments a format has gaps for, and tells whether it picks them by number: then it may
// leave some out.
func gapsOf(format string) (most int, picks bool) {
	next := 1
	for _, gap := range aVerb.FindAllStringSubmatch(strings.ReplaceAll(format, "%%", ""), -1) {
		if n, err := strconv.Atoi(strings.Trim(gap[1], "[]")); err == nil {
			next, picks = n, true
		}
		next += strings.Count(gap[0], "*") // a width that is given
		most = max(most, next)
		next++
	}
	return most, picks
}

func TestFormatsTakeTheirArgumentsCanFail(t *testing.T) {
	expectProblems(t, formatsTakeTheirArguments([]source{
		snippet(t, "internal/load/a.go", `package load
func a() any { return message.New("%s of %s at 100 %%", 1) }
func b() any { return message.Count(2, "%d load", "%d loads", 2) }
func c() error { return message.Refused.Errorf("refused", 1) }
func d() any { return message.Count(2, "load %[2]s", "%[1]d loads: %[2]s", "x") }
func e(args []any) any { return message.New("%s and %s", args...) }
func f() string { return session.Say("%s", "x") }
func g() error { return terminal.Refusal("do this", "it is %s") }
func h() string { return session.Say("%-*s %s", 3, "x") }`),
	}), "a.go:2", "a.go:3", "a.go:3", "a.go:4", "a.go:8", "a.go:9")
}
