package rates_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// inUnitTests are messages that no file of a sensible size can bring about.
var inUnitTests = []string{"the file has %d bytes; an edition or chart has at most %d"}

// TestEveryMessageHasAFixture finds every message of the readers in their
// source and asks for a broken file that brings it about.
func TestEveryMessageHasAFixture(t *testing.T) {
	wanted := allWants(t)
	messages := loaderMessages(t)
	if len(messages) < 60 {
		t.Fatalf("only %d messages found: the search no longer fits the source", len(messages))
	}
	for text, where := range messages {
		if !shape(text).MatchString(wanted) && !contains(inUnitTests, text) {
			t.Errorf("%s: no broken file brings about %q", where, text)
		}
	}
}

func contains(list []string, text string) bool {
	return strings.Contains(strings.Join(list, "\n"), text)
}

func allWants(t *testing.T) string {
	t.Helper()
	var all strings.Builder
	for _, name := range append(fixtureFiles(t, "bad/*.want", 60), fixtureFiles(t, "sets/*/*.want", 8)...) {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		all.Write(text)
	}
	return all.String()
}

// shape matches a message with any figures.
func shape(text string) *regexp.Regexp {
	parts := regexp.MustCompile(`%[a-z]`).Split(strings.ReplaceAll(text, "%%", "\x00"), -1)
	for i, part := range parts {
		parts[i] = regexp.QuoteMeta(strings.ReplaceAll(part, "\x00", "%"))
	}
	return regexp.MustCompile(strings.Join(parts, ".*"))
}

// loaderMessages are the texts that say what is wrong, with the place in the
// source.
func loaderMessages(t *testing.T) map[string]string {
	t.Helper()
	out := map[string]string{}
	var names []string
	for _, pattern := range []string{"*.go", "*/*.go", "../tomlfile/*.go"} {
		found, err := filepath.Glob(pattern)
		if err != nil {
			t.Fatal(err)
		}
		names = append(names, found...)
	}
	for _, name := range names {
		if !strings.HasSuffix(name, "_test.go") {
			messagesIn(t, name, out)
		}
	}
	return out
}

// says maps a function to the argument that describes the mistake.
var says = map[string]int{"AddProblem": 1, "wrong": 0, "add": 2, "clash": 1}

// answers are functions that return what is wrong.
var answers = map[string]bool{"seam": true, "meeting": true, "gaps": true}

func messagesIn(t *testing.T, name string, out map[string]string) {
	t.Helper()
	set := token.NewFileSet()
	file, err := parser.ParseFile(set, name, nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	keep := func(n ast.Node) {
		if text := sentence(n); text != "" {
			out[text] = set.Position(n.Pos()).String()
		}
	}
	for _, d := range file.Decls {
		fn, isFunc := d.(*ast.FuncDecl)
		if !isFunc {
			continue
		}
		ast.Inspect(fn, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if !ok {
				return true
			}
			called := calledName(call)
			if i, ok := says[called]; ok && len(call.Args) > i {
				keep(call.Args[i])
			}
			if isText(called) && answers[fn.Name.Name] {
				keep(call)
			}
			return true
		})
	}
}

func calledName(call *ast.CallExpr) string {
	switch fn := call.Fun.(type) {
	case *ast.SelectorExpr:
		return fn.Sel.Name
	case *ast.Ident:
		return fn.Name
	}
	return ""
}

// sentence is the text of an argument: a literal, a format, or a sum of such.
func sentence(n ast.Node) string {
	switch n := n.(type) {
	case *ast.BasicLit:
		text, _ := strconv.Unquote(n.Value)
		return text
	case *ast.CallExpr:
		if isText(calledName(n)) {
			return sentence(n.Args[0])
		}
	case *ast.BinaryExpr:
		left, right := sentence(n.X), sentence(n.Y)
		if left == "" && right == "" {
			return ""
		}
		return orAnything(left) + orAnything(right)
	}
	return ""
}

// isText reports whether a function makes a text of its first argument.
func isText(called string) bool { return called == "New" || called == "Words" }

func orAnything(text string) string {
	if text == "" {
		return "%s"
	}
	return text
}
