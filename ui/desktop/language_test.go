package desktop

import (
	"errors"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/entrytest"
	"tenthpoint/internal/i18n"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/schedules"
	"testing"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// languages are all there are.
var languages = []string{"en", "fr"}

// textsOf are the texts of a language.
func textsOf(t *testing.T, code string) map[string]string {
	t.Helper()
	return i18n.Texts(code)
}

// speak sets the language of a scene's elevator and turns its window to it. A new book has no
// elevator yet.
func (s *scene) speak(code string) {
	s.t.Helper()
	if p := s.desk.Profile(); p.Business != "" {
		p.Language = code
		must(s.t, scalehouse.SetProfile(s.t.Context(), s.desk, p))
	}
	must(s.t, s.Session.SetLanguage(code))
}

// languageOf is the language of a code.
func languageOf(t *testing.T, code string) session.Language {
	t.Helper()
	language, err := session.LanguageOf(code)
	must(t, err)
	return language
}

// Every language has the same texts, none empty, each with the same gaps for
// figures; English says what the code says.
func TestLanguagesHaveTheSameTexts(t *testing.T) {
	first := textsOf(t, i18n.English)
	for key, text := range first {
		if text != key {
			t.Errorf("en: %q says %q", key, text)
		}
	}
	for _, code := range languages[1:] {
		texts := textsOf(t, code)
		for key := range first {
			if _, there := texts[key]; !there {
				t.Errorf("%s lacks %q", code, key)
			}
		}
		for key, text := range texts {
			if _, there := first[key]; !there {
				t.Errorf("%s has %q, which en has not", code, key)
			}
			if strings.TrimSpace(text) == "" || !slices.Equal(verbsOf(key), verbsOf(text)) {
				t.Errorf("%s: %q has the gaps %v, %q has %v", code, key, verbsOf(key), text, verbsOf(text))
			}
		}
	}
}

var anyVerb = regexp.MustCompile(`%(?:\[\d\])?[-+#0]*\d*(?:\.\d+)?[a-zA-Z%]`)

// verbsOf are the gaps of a text, in order; of a text that names them by number,
// sorted.
func verbsOf(text string) []string {
	out := anyVerb.FindAllString(text, -1)
	for i, v := range out {
		out[i] = regexp.MustCompile(`\[\d\]`).ReplaceAllString(v, "")
	}
	slices.Sort(out)
	return out
}

// Whatever the code says is in the files of the languages: every text handed to Say, every word of
// the slip and of package widgets, every name the trade brings.
func TestEveryTextIsTranslated(t *testing.T) {
	texts := textsOf(t, i18n.English)
	said := textsInCode(t)
	for text, where := range wordsFromElsewhere() {
		said[text] = where
	}
	for _, label := range fieldLabels(t) {
		said[label] = "fields of a load"
	}
	var missing []string
	for text, where := range said {
		if _, there := texts[text]; !there && text != "" {
			missing = append(missing, fmt.Sprintf("%q (%s)", text, where))
		}
	}
	slices.Sort(missing)
	for _, m := range missing {
		t.Errorf("in no language: %s", m)
	}
}

// wordTables are the tables in the code whose words are said when they are
// shown.
var wordTables = []string{
	"doubtWords", "exclusionWords", "purposeWords", "aboutWords", "shortTitles", "shortNames", "DayParts", "Screens", "noMeter",
}

// textsInCode are the texts that presenters and views say, with where.
func textsInCode(t *testing.T) map[string]string {
	t.Helper()
	out := map[string]string{}
	files, err := filepath.Glob("../*/*.go")
	must(t, err)
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		must(t, err)
		ast.Inspect(parsed, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.CallExpr:
				if text, said := saidText(n); said {
					out[text] = name
				}
			case *ast.ValueSpec:
				if slices.Contains(wordTables, n.Names[0].Name) || isActTable(n) {
					wordsIn(n, func(text string) { out[text] = name + ", " + n.Names[0].Name })
				}
			}
			return true
		})
	}
	if len(out) < 500 {
		t.Fatalf("only %d texts were found in the code", len(out))
	}
	return out
}

// isActTable reports whether a variable is a table of acts, whose titles and
// reasons are said when the window is made.
func isActTable(spec *ast.ValueSpec) bool {
	if len(spec.Values) != 1 {
		return false
	}
	table, ok := spec.Values[0].(*ast.CompositeLit)
	if !ok {
		return false
	}
	list, ok := table.Type.(*ast.ArrayType)
	if !ok {
		return false
	}
	row, ok := list.Elt.(*ast.IndexExpr)
	if !ok {
		return false
	}
	of, ok := row.X.(*ast.SelectorExpr)
	return ok && of.Sel.Name == "ActRow"
}

// saidText is the text of a call of Say.
func saidText(call *ast.CallExpr) (string, bool) {
	name := ""
	switch f := call.Fun.(type) {
	case *ast.Ident:
		name = f.Name
	case *ast.SelectorExpr:
		name = f.Sel.Name
	}
	if name != "Say" || len(call.Args) == 0 {
		return "", false
	}
	literal, ok := call.Args[0].(*ast.BasicLit)
	if !ok {
		return "", false
	}
	text, err := strconv.Unquote(literal.Value)
	return text, err == nil
}

// wordsIn visits the words of a table: values, and of rows the titles.
func wordsIn(spec *ast.ValueSpec, visit func(string)) {
	ast.Inspect(spec, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.KeyValueExpr:
			if key, plain := n.Key.(*ast.Ident); plain && key.Name == "ID" {
				return false
			}
			if _, literal := n.Key.(*ast.BasicLit); literal {
				n = &ast.KeyValueExpr{Key: &ast.Ident{Name: "_"}, Value: n.Value}
				ast.Inspect(n.Value, literals(visit))
				return false
			}
		case *ast.CompositeLit:
			if len(n.Elts) > 1 {
				if first, id := n.Elts[0].(*ast.BasicLit); id {
					for _, e := range n.Elts[1:] {
						if e != first {
							if _, function := e.(*ast.FuncLit); !function {
								ast.Inspect(e, literals(visit))
							}
						}
					}
					return false
				}
			}
		case *ast.BasicLit:
			literals(visit)(n)
		}
		return true
	})
}

func literals(visit func(string)) func(ast.Node) bool {
	return func(n ast.Node) bool {
		if l, ok := n.(*ast.BasicLit); ok && l.Kind == token.STRING {
			if text, err := strconv.Unquote(l.Value); err == nil {
				visit(text)
			}
		}
		return true
	}
}

// fieldLabels are the labels of a load's fields, received or shipped.
func fieldLabels(t *testing.T) []string {
	t.Helper()
	editions, err := schedules.Editions()
	must(t, err)
	at := office.NewEntering(t.Context(), entrytest.Open(t, "lb", editions))
	var out []string
	for _, way := range []load.Direction{load.Inbound, load.Outbound} {
		for _, field := range entry.New(at, entry.Start{Direction: way}).Fields() {
			out = append(out, field.Label)
		}
	}
	if len(out) < 40 {
		t.Errorf("only %d fields of a load", len(out))
	}
	return out
}

// wordsFromElsewhere are the words of the trade, the slip and package widgets.
func wordsFromElsewhere() map[string]string {
	out := map[string]string{}
	for _, w := range scaleticket.WordKeys() {
		out[w] = "slip"
	}
	words := reflect.ValueOf(widgets.EnglishWords())
	for i := range words.NumField() {
		out[words.Field(i).String()] = "kit"
	}
	for _, c := range grain.All() {
		out[c.Name] = "grain"
		for _, f := range c.Factors {
			out[f.Name] = "grain"
		}
		for _, s := range c.Special {
			out[s.Name] = "special grades"
		}
		if table := c.Grades; table != nil {
			for _, text := range append([]string{table.Below, table.NotJudged, grain.Advisory}, table.Names...) {
				out[text] = "grade tables"
			}
		}
	}
	for _, name := range grain.MoistureGrains() {
		classes, _ := grain.Classes(name)
		for _, c := range classes {
			out[c.Name] = "moisture classes"
		}
	}
	for _, m := range meter.Methods() {
		out[m.String()] = "bench"
	}
	return out
}

// A language nobody speaks is refused by name.
func TestUnknownLanguageIsRefused(t *testing.T) {
	s := newScene(t, shell.Look{}, 0)
	if err := s.Session.SetLanguage("xx"); err == nil || !errors.Is(err, message.NotFound) {
		t.Errorf("xx gives %v", err)
	}
	if s.Session.Code() != i18n.English {
		t.Errorf("the desk speaks %s", s.Session.Code())
	}
}

// A text without gaps is said in the language; what is no text of the desk, such as a name or a finished
// sentence, stays.
func TestOnlyKeysAreTranslated(t *testing.T) {
	french := languageOf(t, "fr")
	for english, want := range map[string]string{
		"Yard":                              "Cour",
		"Test weight discount":              "Escompte, poids spécifique",
		"Ruby corn discount":                "Ruby corn discount",
		"Winifred Aske":                     "Winifred Aske",
		"No moisture yet: test the sample.": "Pas encore d'humidité : analysez l'échantillon.",
		"tare read one line too high":       "tare read one line too high",
		"Test 2":                            "Test 2",
		"":                                  "",
	} {
		if got := french.Say(english); got != want {
			t.Errorf("%q is said as\n%q, want\n%q", english, got, want)
		}
		if again := french.Say(want); again != want {
			t.Errorf("said twice, %q becomes %q", want, again)
		}
	}
}

// inFrench lets a desk and the elevator of a scene speak French.
func inFrench(t *testing.T, look shell.Look, loads int) *scene {
	t.Helper()
	s := newScene(t, look, loads)
	s.speak("fr")
	return s
}

// TestShotsInFrench draws every screen in French for a person to look at.
func TestShotsInFrench(t *testing.T) {
	look := shell.Look{Scale: apptheme.TextOrdinary}
	s := inFrench(t, look, 120)
	for _, row := range Screens {
		s.Go(row.ID)
		s.shoot("french-1280", row.ID, look)
	}
	s.shootLoads("french-1280", look)
	s.shootBench("french-1280", look)
	s.shootMeters("french-1280", look)
	s.shootDay("french-1280", look)
}
