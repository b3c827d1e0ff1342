package archtest

import (
	"fmt"
	"go/ast"
	"regexp"
	"strings"
	"testing"
)

// sentencesAreMessages keeps what people read out of fmt and errors: a finished English sentence can
// be said in no other language. What only programmers see, such as the text of a panic, may be one.
func sentencesAreMessages(sources []source) []string {
	var problems []string
	for _, s := range sources {
		if s.isTest() || strings.HasSuffix(s.pkg(), "test") || !within(s.pkg(), "internal", "ui", "cmd/tenth") || within(s.pkg(), notForPeople...) || within(s.pkg(), programmersOnly...) {
			continue
		}
		s.calls(func(call *ast.CallExpr, _ *ast.SelectorExpr) {
			name, of := calledName(call)
			makesText := of == "fmt" && (name == "Sprintf" || name == "Errorf") || of == "errors" && name == "New"
			if !makesText || len(call.Args) == 0 {
				return
			}
			if text, is := constantText(call.Args[0]); is && !ofThePackage.MatchString(text) && aSentence.MatchString(aVerb.ReplaceAllString(text, "%")) {
				problems = append(problems, fmt.Sprintf("%s: %q is a finished sentence; make it a message", s.at(call), text))
			}
		})
	}
	return problems
}

// aSentence matches two words of a sentence in a row.
var aSentence = regexp.MustCompile(`[a-z]{2,} [a-z]{2,}`)

// ofThePackage matches the beginning of what a panic says to programmers: "quantity: unlike units".
var ofThePackage = regexp.MustCompile(`^[a-z]+(\.[A-Z][A-Za-z]*)?: `)

// programmersOnly are packages whose texts no person at a desk sees.
var programmersOnly = inside("i18n")

func TestSentencesAreMessagesCanFail(t *testing.T) {
	expectProblems(t, sentencesAreMessages([]source{
		snippet(t, "internal/load/a.go", `package load
func a(n int) string { return fmt.Sprintf("load %d was refused", n) }
func b() error { return errors.New("there is no load") }
func c(n int) string { return fmt.Sprintf("%d:%s", n, "x") }
func e() { panic(fmt.Sprintf("load: unlike units of %d", 2)) }
func d(n int) error { return message.Refused.Errorf("load %d was refused", n) }`),
		snippet(t, "internal/load/a_test.go", `package load
func a(n int) string { return fmt.Sprintf("load %d was refused", n) }`),
	}), "a.go:2", "a.go:3")
}
