package engine

import (
	"encoding/json"
	"go/ast"
	"go/parser"
	"go/token"
	"maps"
	"path"
	"regexp"
	"slices"
	"strconv"
)

// textsOf are the texts within the engine, as a list: every string of its source and of the rules it
// reads. A page has the translations of these alone.
func textsOf(parts []part) ([]byte, error) {
	said := map[string]bool{}
	for _, p := range parts {
		switch path.Ext(p.name) {
		case ".go":
			file, err := parser.ParseFile(token.NewFileSet(), p.name, p.data, parser.SkipObjectResolution)
			if err != nil {
				return nil, err
			}
			ast.Inspect(file, func(n ast.Node) bool {
				if text, is := textOf(n); is {
					said[text] = true
					return false
				}
				return true
			})
		case ".toml":
			for _, quoted := range inQuotes.FindAllSubmatch(p.data, -1) {
				said[string(quoted[1])] = true
			}
		}
	}
	delete(said, "")
	return json.MarshalIndent(slices.Sorted(maps.Keys(said)), "", " ")
}

// inQuotes are the texts of a rule file.
var inQuotes = regexp.MustCompile(`"([^"\n]*)"`)

// textOf is a string of the source, also one set together of several.
func textOf(n ast.Node) (string, bool) {
	switch e := n.(type) {
	case *ast.BasicLit:
		if e.Kind == token.STRING {
			text, err := strconv.Unquote(e.Value)
			return text, err == nil
		}
	case *ast.BinaryExpr:
		left, is := textOf(e.X)
		right, also := textOf(e.Y)
		return left + right, e.Op == token.ADD && is && also
	}
	return "", false
}
