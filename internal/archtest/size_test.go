package archtest

import (
	"fmt"
	"go/ast"
	"maps"
	"path"
	"slices"
	"strings"
	"testing"
)

// A package that one can read through in a sitting, and a type whose methods
// one can keep in mind.
const (
	mostFiles   = 25
	mostMethods = 30
)

// packageSize counts the files of each package, without its tests.
func packageSize(sources []source) []string {
	return overLimit(filesOf(sources), mostFiles, "files; a folder for each area of it")
}

// typeSize counts the methods of each type, without those of tests.
func typeSize(sources []source) []string {
	return overLimit(methodsOf(sources), mostMethods, "methods; it has more than one job")
}

func filesOf(sources []source) map[string]int {
	files := map[string]int{}
	for _, s := range sources {
		if !s.isTest() {
			files[s.pkg()]++
		}
	}
	return files
}

func methodsOf(sources []source) map[string]int {
	methods := map[string]int{}
	for _, s := range sources {
		if s.isTest() {
			continue
		}
		for _, declared := range s.file.Decls {
			if f, ok := declared.(*ast.FuncDecl); ok && f.Recv != nil {
				methods[s.pkg()+"."+receiverName(f.Recv.List[0].Type)]++
			}
		}
	}
	return methods
}

// receiverName is the type a method belongs to, without pointer and type
// parameters.
func receiverName(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.StarExpr:
		return receiverName(e.X)
	case *ast.IndexExpr:
		return receiverName(e.X)
	case *ast.IndexListExpr:
		return receiverName(e.X)
	case *ast.Ident:
		return e.Name
	}
	return ""
}

// overLimit names what is larger than the limit.
func overLimit(counts map[string]int, limit int, what string) []string {
	var problems []string
	for _, name := range slices.Sorted(maps.Keys(counts)) {
		if counts[name] > limit {
			problems = append(problems, fmt.Sprintf("%s: %d, more than %d %s", name, counts[name], limit, what))
		}
	}
	return problems
}

func TestSizeCanFail(t *testing.T) {
	expectProblems(t, overLimit(map[string]int{"a": 10, "b": 11, "c": 15}, 10, "files"),
		"b: 11, more than 10 files", "c: 15, more than 10 files")
}

func TestSizesAreCounted(t *testing.T) {
	sources := []source{
		snippet(t, "internal/settle/a.go", `package settle
type T struct{}
type G[K, V any] struct{}
func (t T) A() {}
func (t *T) B() {}
func (g *G[K, V]) C() {}
func D() {}`),
		snippet(t, "internal/settle/b.go", "package settle\nfunc (t T) E() {}"),
		snippet(t, "internal/settle/b_test.go", "package settle\nfunc (t T) F() {}"),
	}
	if got := methodsOf(sources); got["internal/settle.T"] != 3 || got["internal/settle.G"] != 1 || len(got) != 2 {
		t.Errorf("methods %v", got)
	}
	if got := filesOf(sources); got["internal/settle"] != 2 || len(got) != 1 {
		t.Errorf("files %v", got)
	}
	var many []source
	for n := range mostFiles + 1 {
		many = append(many, snippet(t, path.Join("internal/new", fmt.Sprintf("f%d.go", n)), "package new\nfunc (t T) A() {}\nfunc (t *T) B() {}"))
	}
	if got := packageSize(many); len(got) < 1 || !slices.ContainsFunc(got, func(p string) bool { return strings.HasPrefix(p, "internal/new: 26") }) {
		t.Errorf("26 files: %q", got)
	}
	if got := typeSize(many); !slices.ContainsFunc(got, func(p string) bool { return strings.HasPrefix(p, "internal/new.T: 52") }) {
		t.Errorf("52 methods: %q", got)
	}
}
