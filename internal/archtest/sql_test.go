package archtest

import (
	"fmt"
	"go/ast"
	"go/token"
	"maps"
	"regexp"
	"slices"
	"testing"
)

// sqlStatement matches the beginnings of statements of SQL; ordinary sentences
// have no such words in capitals.
var sqlStatement = regexp.MustCompile(`\b(SELECT\s[\s\S]*\bFROM|INSERT\s+(OR\s+\w+\s+)?INTO|UPDATE\s+\w+\s+SET|DELETE\s+FROM|CREATE\s+(TABLE|INDEX|VIEW|TRIGGER)|PRAGMA)\b|(?i:^\s*(select\s[\s\S]*\sfrom|insert\s+into|update\s+\w+\s+set|delete\s+from)\s)`)

// sqlOwners may speak SQL: another kind of book is then one package. The head office is no book: it
// holds the chains of many.
var sqlOwners = []string{"internal/book", "internal/headoffice/central", "migrations"}

// sqlElsewhere are the files that spoke it when the rule was made, with how many
// statements. A number may only become smaller.
var sqlElsewhere = map[string]int{}

// sqlInStore keeps SQL in the packages that keep the book.
func sqlInStore(sources []source) []string {
	counts := map[string]int{}
	var problems []string
	for _, s := range sources {
		if s.isTest() || within(s.pkg(), sqlOwners...) {
			continue
		}
		for _, literal := range statements(s) {
			counts[s.path]++
			if counts[s.path] > sqlElsewhere[s.path] {
				problems = append(problems, fmt.Sprintf("%s: SQL outside the book's own packages; ask the book for what is wanted", s.at(literal)))
			}
		}
	}
	for _, file := range slices.Sorted(maps.Keys(sqlElsewhere)) {
		if counts[file] < sqlElsewhere[file] {
			problems = append(problems, fmt.Sprintf("%s: %d statements of SQL are left, and its exception allows %d; lower it", file, counts[file], sqlElsewhere[file]))
		}
	}
	return problems
}

func statements(s source) []ast.Node {
	var found []ast.Node
	ast.Inspect(s.file, func(n ast.Node) bool {
		if l, ok := n.(*ast.BasicLit); ok && l.Kind == token.STRING && sqlStatement.MatchString(l.Value[1:len(l.Value)-1]) {
			found = append(found, l)
		}
		return true
	})
	return found
}

func TestSQLInStoreCanFail(t *testing.T) {
	const text = `package x
const a = "SELECT number FROM ticket"
const b = ` + "`INSERT OR IGNORE INTO ticket (number) VALUES (1)`" + `
const c = "update the book from its facts, and select the rates from the list"
const d = "UPDATE ticket SET number = 1"
const e = "delete from ticket where number = 1"
const f = "PRAGMA journal_mode"`
	got := sqlInStore([]source{
		snippet(t, "internal/scalehouse/a.go", text),
		snippet(t, "internal/book/a.go", text),
		snippet(t, "internal/scalehouse/a_test.go", text),
	})
	var here []string
	for _, p := range got {
		if len(p) > 24 && p[:24] == "internal/scalehouse/a.go" {
			here = append(here, p)
		}
	}
	expectProblems(t, here, "a.go:2: SQL", "a.go:3: SQL", "a.go:5: SQL", "a.go:6: SQL", "a.go:7: SQL")
}
