package archtest

import (
	"go/ast"
	"go/token"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"tenthpoint/internal/i18n"
)

// mayLack is the most texts of the program that a complete language may lack: Spanish follows a little
// behind, what it lacks is said in English.
var mayLack = map[string]int{"fr": 0, "es": 100}

// TestEveryTextIsInTheCatalogs finds every text that the program can say, on a
// screen, a paper or a terminal, and asks the catalogs of the complete languages
// for it.
func TestEveryTextIsInTheCatalogs(t *testing.T) {
	said := textsSaid(readSources(t))
	if len(said) < 1500 {
		t.Fatalf("only %d texts were found", len(said))
	}
	for code, most := range mayLack {
		catalog, there := i18n.Catalog(code)
		if !there {
			t.Fatalf("there is no catalog %s", code)
		}
		var lost []string
		for text, where := range said {
			if !catalog.Has(text) {
				lost = append(lost, where+": "+strconv.Quote(text))
			}
		}
		slices.Sort(lost)
		if len(lost) > most {
			t.Errorf("%s lacks %d texts of %d, at most %d may be missing:\n%s", code, len(lost), len(said), most, strings.Join(lost, "\n"))
		}
	}
}

func TestTextsInTheCatalogsCanFail(t *testing.T) {
	said := textsSaid([]source{
		snippet(t, "internal/load/a.go", `package load
func f() error { return message.Refused.Errorf("a load "+"of %s", "x") }
func g() any { return message.New("new %d", 1) }`),
		snippet(t, "ui/yard/a.go", `package yard
func f() string { return session.Say("said") }
func (p *form) g() string { return p.sheet.session.Say("said by a form") }`),
		snippet(t, "internal/daysheet/a.go", `package daysheet
var columns = []column{{wordsColumn("a column")}, {unitColumn("a weight", quantity.Lb)}}`),
		snippet(t, "cmd/tenth/yard/a.go", `package yard
type c struct { A string `+"`help:\"Help.\" placeholder:\"BIN=WEIGHT\"`"+` }
func f() error { return terminal.Refusal("do", "what %s", "x") }`),
	})
	for _, text := range []string{"a load of %s", "a column", "a weight", "new %d", "said", "said by a form", "Help.", "typed|WEIGHT", "do", "what %s"} {
		if said[text] == "" {
			t.Errorf("%q was not found in %v", text, said)
		}
	}
}

// textsSaid are the texts in the code, with where each is.
func textsSaid(sources []source) map[string]string {
	out := map[string]string{}
	for _, s := range sources {
		if s.isTest() || !within(s.pkg(), "internal", "ui", "cmd/tenth", "cmd/tenthpoint") || within(s.pkg(), notForPeople...) {
			continue
		}
		ast.Inspect(s.file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.CallExpr:
				for _, i := range saidArguments(n) {
					if i < len(n.Args) {
						text, is := constantText(n.Args[i])
						for _, one := range strings.Split(text, "\t") { // headings of a table
							if is && strings.ContainsFunc(aVerb.ReplaceAllString(one, ""), unicode.IsLetter) {
								out[one] = s.at(n)
							}
						}
					}
				}
			case *ast.Field:
				if within(s.pkg(), "cmd/tenth") {
					for _, text := range helpTags(n) {
						out[text] = s.at(n)
					}
				}
			}
			return true
		})
	}
	return out
}

// aVerb is a gap of a format.
var aVerb = regexp.MustCompile(`%(\[\d\])?[-+#0*]*\d*(\.\d+)?[a-zA-Z]`)

// notForPeople are packages whose errors only programmers see.
var notForPeople = inside("message", "archtest", "transcript", "entrytest", "tickettest", "demo", "simulation", "book/booktest", "fonts", "paper", "report", "scaleticket/barcode", "scaleticket/sheet", "atomicfile")

// saidArguments are which arguments of a call are texts for people.
func saidArguments(call *ast.CallExpr) []int {
	name, of := calledName(call)
	switch {
	case of == "message" && (name == "New" || name == "Words" || name == "Errorf"):
		return []int{0}
	case of == "message" && name == "Count":
		return []int{2}
	case name == "Errorf" && strings.HasPrefix(of, "message."):
		return []int{0}
	case name == "Say":
		return []int{0}
	case name == "Refusal":
		return []int{0, 1}
	case name == "Table" && of == "p":
		return []int{1, 3}
	case name == "wordsColumn" || name == "figureColumn" || name == "unitColumn":
		return []int{0}
	case name == "Columns":
		return []int{0, 2}
	case of == "faults" && name == "Add":
		return []int{0}
	case of == "faults" && name == "Unless":
		return []int{1}
	}
	return nil
}

// calledName returns the function called, and its package or receiver: Errorf of message.Refused.
func calledName(call *ast.CallExpr) (name, of string) {
	switch f := call.Fun.(type) {
	case *ast.Ident:
		return f.Name, ""
	case *ast.SelectorExpr:
		switch x := f.X.(type) {
		case *ast.Ident:
			return f.Sel.Name, x.Name
		case *ast.SelectorExpr:
			if pkg, is := x.X.(*ast.Ident); is {
				return f.Sel.Name, pkg.Name + "." + x.Sel.Name
			}
		}
		return f.Sel.Name, ""
	}
	return "", ""
}

// constantText is a text written in the code, in one piece or several.
func constantText(e ast.Expr) (string, bool) {
	switch e := e.(type) {
	case *ast.BasicLit:
		if e.Kind == token.STRING {
			text, err := strconv.Unquote(e.Value)
			return text, err == nil
		}
	case *ast.BinaryExpr:
		left, okLeft := constantText(e.X)
		right, okRight := constantText(e.Y)
		return left + right, okLeft && okRight && e.Op == token.ADD
	}
	return "", false
}

// helpTags are the texts of a flag or argument: its help, and the words that stand for what is typed.
func helpTags(f *ast.Field) []string {
	if f.Tag == nil {
		return nil
	}
	written, err := strconv.Unquote(f.Tag.Value)
	if err != nil {
		return nil
	}
	tag := reflect.StructTag(written)
	if tag.Get("help") == "" {
		return nil
	}
	out := []string{tag.Get("help")}
	places := tag.Get("placeholder")
	if _, isArgument := tag.Lookup("arg"); isArgument {
		places = strings.ToUpper(f.Names[0].Name)
	}
	for _, word := range aPlace.FindAllString(places, -1) {
		out = append(out, "typed|"+word)
	}
	return out
}

// aPlace is a word that stands in help for what is typed.
var aPlace = regexp.MustCompile(`[A-Z]{2,}(-[A-Z]+)*`)
