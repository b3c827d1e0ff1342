package archtest

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// root is the repository as seen from this package.
const root = "../.."

// modulePrefix begins the import path of every package of this repository.
const modulePrefix = "tenthpoint/"

// A source is one parsed Go file.
type source struct {
	path  string // from the root, with slashes: internal/settle/drying.go
	lines int
	set   *token.FileSet
	file  *ast.File
}

// pkg is the folder of the file, which names its package in every rule.
func (s source) pkg() string { return path.Dir(s.path) }

func (s source) isTest() bool { return strings.HasSuffix(s.path, "_test.go") }

// at returns the place of a node as a problem names it.
func (s source) at(node ast.Node) string {
	return fmt.Sprintf("%s:%d", s.path, s.set.Position(node.Pos()).Line)
}

// imported is one import of a file: what, and by which name the file calls it.
type imported struct {
	path string
	name string
	node ast.Node
}

func (s source) imports() []imported {
	var all []imported
	for _, spec := range s.file.Imports {
		what, err := strconv.Unquote(spec.Path.Value)
		if err != nil {
			continue // the compiler refuses it too
		}
		name := path.Base(what)
		if spec.Name != nil {
			name = spec.Name.Name
		}
		all = append(all, imported{what, name, spec})
	}
	return all
}

// nameOf is the name by which the file calls an imported package, or nothing.
func (s source) nameOf(importPath string) string {
	for _, i := range s.imports() {
		if i.path == importPath {
			return i.name
		}
	}
	return ""
}

// calls visits every call of a function chosen by a dot: x.Name(...).
func (s source) calls(visit func(call *ast.CallExpr, chosen *ast.SelectorExpr)) {
	ast.Inspect(s.file, func(n ast.Node) bool {
		if call, ok := n.(*ast.CallExpr); ok {
			if chosen, ok := call.Fun.(*ast.SelectorExpr); ok {
				visit(call, chosen)
			}
		}
		return true
	})
}

// mentions visits every x.Name where x is the given identifier.
func (s source) mentions(of string, visit func(chosen *ast.SelectorExpr)) {
	ast.Inspect(s.file, func(n ast.Node) bool {
		chosen, ok := n.(*ast.SelectorExpr)
		if !ok {
			return true
		}
		if x, ok := chosen.X.(*ast.Ident); ok && of != "" && x.Name == of {
			visit(chosen)
		}
		return true
	})
}

// readSources parses every Go file of the repository.
func readSources(t *testing.T) []source {
	t.Helper()
	var all []source
	err := filepath.WalkDir(root, func(at string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		name := entry.Name()
		if entry.IsDir() && at != root && (strings.HasPrefix(name, ".") || name == "testdata") {
			return filepath.SkipDir
		}
		if entry.IsDir() || filepath.Ext(name) != ".go" {
			return nil
		}
		text, err := os.ReadFile(at)
		if err != nil {
			return err
		}
		short, err := filepath.Rel(root, at)
		if err != nil {
			return err
		}
		s, err := parse(filepath.ToSlash(short), text)
		if err != nil {
			return err
		}
		all = append(all, s)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

func parse(name string, text []byte) (source, error) {
	set := token.NewFileSet()
	file, err := parser.ParseFile(set, name, text, parser.ParseComments|parser.SkipObjectResolution)
	return source{name, bytes.Count(text, []byte("\n")), set, file}, err
}

// snippet is a source written inside a test.
func snippet(t *testing.T, name, text string) source {
	t.Helper()
	s, err := parse(name, []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// within reports whether a folder is one of the given or lies below one.
func within(folder string, folders ...string) bool {
	for _, f := range folders {
		if folder == f || strings.HasPrefix(folder, f+"/") {
			return true
		}
	}
	return false
}
