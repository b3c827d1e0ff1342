package archtest

import (
	"fmt"
	"go/ast"
	"go/token"
	"slices"
	"testing"
)

// languages are the types that say what a window or a terminal speaks, with what makes their values.
var languages = map[string][]string{
	"internal/message": {"Printer", "NewPrinter"},
	"internal/i18n":    {"In"},
	"ui/session":       {"Language", "LanguageOf"},
	"ui/widgets":       {"Words", "EnglishWords"},
}

// noLanguageInVariables keeps the language with a session or a window: a variable of a package would
// be that of the whole program, which may have two windows in two languages.
func noLanguageInVariables(sources []source) []string {
	var problems []string
	for _, s := range sources {
		if within(s.pkg(), "internal/i18n") {
			continue
		}
		for _, d := range s.file.Decls {
			variables, is := d.(*ast.GenDecl)
			if !is || variables.Tok != token.VAR {
				continue
			}
			for _, spec := range variables.Specs {
				spec := spec.(*ast.ValueSpec)
				if s.isLanguage(spec.Type) || slices.ContainsFunc(spec.Values, s.isLanguage) {
					problems = append(problems, fmt.Sprintf(
						"%s: %s is a language of the whole program; it belongs to a session or a window", s.at(spec), spec.Names[0].Name))
				}
			}
		}
	}
	return problems
}

// isLanguage reports whether a type is one of a language, or a value is made as one.
func (s source) isLanguage(e ast.Expr) bool {
	switch e := e.(type) {
	case *ast.StarExpr:
		return s.isLanguage(e.X)
	case *ast.UnaryExpr:
		return s.isLanguage(e.X)
	case *ast.CompositeLit:
		return s.isLanguage(e.Type)
	case *ast.CallExpr:
		return s.isLanguage(e.Fun)
	case *ast.Ident:
		return slices.Contains(languages[s.pkg()], e.Name)
	case *ast.SelectorExpr:
		x, is := e.X.(*ast.Ident)
		if !is {
			return false
		}
		for of, names := range languages {
			if x.Name == s.nameOf("tenthpoint/"+of) && slices.Contains(names, e.Sel.Name) {
				return true
			}
		}
	}
	return false
}

func TestNoLanguageInVariablesCanFail(t *testing.T) {
	expectProblems(t, noLanguageInVariables([]source{
		snippet(t, "ui/session/a.go", `package session
import "tenthpoint/internal/message"
var printer *message.Printer
var desk = Language{}
var english = "English"
func f() { var here Language; _ = here }`),
		snippet(t, "ui/shell/a.go", `package shell
import (
	speech "tenthpoint/internal/i18n"
	"tenthpoint/ui/widgets"
)
var words, more = widgets.EnglishWords(), 1
var french = speech.In("fr")
var codes = speech.Codes()
type window struct { words widgets.Words }`),
		snippet(t, "internal/i18n/a.go", `package i18n
import "tenthpoint/internal/message"
var all *message.Printer`),
	}), "a.go:3: printer is", "a.go:4: desk is", "a.go:6: words is", "a.go:7: french is")
}
