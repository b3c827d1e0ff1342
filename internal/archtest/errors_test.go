package archtest

import (
	"go/ast"
	"go/token"
	"slices"
	"strings"
	"testing"
)

// errorTextStays keeps the words of an error for people: whoever decides on an error asks for its kind
// or its type, by errors.Is and errors.As, and never compares or searches what it says. Tests are
// counted apart, by [errorTextsRead].
func errorTextStays(sources []source) []string {
	var problems []string
	for _, s := range sources {
		if !isOfTests(s) {
			for _, at := range errorTextsRead(s) {
				problems = append(problems, at+": the text of an error is compared or searched; ask errors.Is for its kind")
			}
		}
	}
	return problems
}

// isOfTests reports whether a source is a test or of a package that helps tests.
func isOfTests(s source) bool { return s.isTest() || strings.HasSuffix(s.pkg(), "test") }

// errorTextsRead are the places of a source where the text of an error is compared or searched.
func errorTextsRead(s source) []string {
	var places []string
	ast.Inspect(s.file, func(n ast.Node) bool {
		if comparesErrorText(n) {
			places = append(places, s.at(n))
		}
		return true
	})
	return places
}

// testsReadErrors is how many places of tests read the text of an error. A new test asks for the kind
// and the figures by package errortest; who mends an old one lowers the count.
const testsReadErrors = 27

func TestTestsReadFewErrorTexts(t *testing.T) {
	var places []string
	for _, s := range readSources(t) {
		if isOfTests(s) {
			places = append(places, errorTextsRead(s)...)
		}
	}
	if len(places) != testsReadErrors {
		t.Errorf("tests read the text of an error in %d places, not in %d:\n%s", len(places), testsReadErrors, strings.Join(places, "\n"))
	}
}

// searching are the packages whose functions look into a text.
var searching = []string{"strings", "bytes", "slices", "regexp", "textsearch"}

func comparesErrorText(n ast.Node) bool {
	switch n := n.(type) {
	case *ast.BinaryExpr:
		return (n.Op == token.EQL || n.Op == token.NEQ) && (isErrorText(n.X) || isErrorText(n.Y))
	case *ast.SwitchStmt:
		return n.Tag != nil && isErrorText(n.Tag)
	case *ast.IndexExpr:
		call, is := n.Index.(*ast.CallExpr)
		return is && callsError(call)
	case *ast.CallExpr:
		name, of := calledName(n)
		return (slices.Contains(searching, of) || strings.HasPrefix(name, "Match") || strings.HasPrefix(name, "Find")) && slices.ContainsFunc(n.Args, isErrorText)
	}
	return false
}

// isErrorText reports whether an expression is x.Error() or made of it.
func isErrorText(e ast.Expr) bool {
	found := false
	ast.Inspect(e, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.SelectorExpr: // a text has no methods, so x.Error().Sign() is of a figure
			return false
		case *ast.CallExpr:
			found = found || callsError(n)
			if _, method := n.Fun.(*ast.SelectorExpr); method {
				found = found || slices.ContainsFunc(n.Args, isErrorText)
				return false
			}
		}
		return !found
	})
	return found
}

func callsError(call *ast.CallExpr) bool {
	name, _ := calledName(call)
	return name == "Error" && len(call.Args) == 0
}

func TestErrorTextStaysCanFail(t *testing.T) {
	expectProblems(t, errorTextStays([]source{
		snippet(t, "internal/load/a.go", `package load
func a(err error) bool { return err.Error() == "no" }
func b(err error) bool { return strings.Contains(err.Error(), "no") }
func c(err error) bool { return pattern.MatchString(strings.ToLower(err.Error())) }
func d(err error) { switch err.Error() { case "no": } }
func e(err error) bool { return known[err.Error()] }
func f(err error) bool { return errors.Is(err, message.NotFound) }
func g(err error) string { return "load: " + err.Error() }
func h(c meter.Check) bool { return c.Error().String() == "0.1 pt" }`),
		snippet(t, "internal/load/a_test.go", `package load
func a(err error) bool { return err.Error() == "no" }`),
	}), "a.go:2", "a.go:3", "a.go:4", "a.go:4", "a.go:5", "a.go:6")
}
