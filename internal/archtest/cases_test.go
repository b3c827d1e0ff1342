package archtest

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// TestCasesOfTheTradeAreHeld: what testdata/trade/cases.txt says holds a case is there.
func TestCasesOfTheTradeAreHeld(t *testing.T) {
	cases := read(t, filepath.Join(root, "testdata/trade/cases.txt"))
	for _, problem := range casesNotHeld(cases, holders(t)) {
		t.Error(problem)
	}
}

// TestCasesCanBeFoundNotHeld: a test, a file or words that are not there are told, and a case twice.
func TestCasesCanBeFoundNotHeld(t *testing.T) {
	h := holding{tests: map[string]bool{"TestHeld": true}, files: map[string]bool{"held.txtar": true}, developers: "held because it is so"}
	lines := "# a heading\n\nd.1 | held | TestHeld, held.txtar, why: because it is so\n"
	if got := casesNotHeld(lines, h); len(got) > 0 {
		t.Errorf("held, and told %v", got)
	}
	lines += "d.1 | twice | TestHeld\nd.2 | no test | TestGone\nd.3 | no file | gone.txtar\nd.4 | no words | why: nobody wrote it\nd.5 | by nothing\n"
	if got := casesNotHeld(lines, h); len(got) != 5 {
		t.Errorf("told %v", got)
	}
}

// holding is what may hold a case: tests and files by name, and the words of DEVELOPERS.md.
type holding struct {
	tests, files map[string]bool
	developers   string
}

// holders are what this repository has.
func holders(t *testing.T) holding {
	t.Helper()
	h := holding{tests: map[string]bool{}, files: map[string]bool{}}
	h.developers = strings.Join(strings.Fields(read(t, filepath.Join(root, "DEVELOPERS.md"))), " ")
	for _, dir := range []string{"internal", "ui", "cmd", "schedules", "testdata"} {
		err := filepath.WalkDir(filepath.Join(root, dir), func(path string, entry os.DirEntry, err error) error {
			if err != nil || entry.IsDir() {
				return err
			}
			h.files[entry.Name()] = true
			if strings.HasSuffix(path, "_test.go") {
				for _, found := range testFunc.FindAllStringSubmatch(read(t, path), -1) {
					h.tests[found[1]] = true
				}
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return h
}

var testFunc = regexp.MustCompile(`(?m)^func (Test\w+)\(`)

// casesNotHeld names what holds a case and is not there, and cases that have no line of their own.
func casesNotHeld(cases string, h holding) []string {
	var out []string
	seen := map[string]bool{}
	for n, line := range strings.Split(cases, "\n") {
		if strings.TrimSpace(line) == "" || strings.HasPrefix(line, "#") {
			continue
		}
		cells := strings.SplitN(line, "|", 3)
		id := strings.TrimSpace(cells[0])
		if len(cells) < 3 || seen[id] {
			out = append(out, fmt.Sprintf("cases.txt:%d: %s is no case of its own with what holds it", n+1, id))
			continue
		}
		seen[id] = true
		held, why, _ := strings.Cut(cells[2], "why:")
		for _, by := range strings.FieldsFunc(held, func(r rune) bool { return r == ',' || r == ' ' }) {
			if !h.tests[by] && !h.files[by] {
				out = append(out, fmt.Sprintf("cases.txt:%d: %s is held by %s, which is not there", n+1, id, by))
			}
		}
		if !strings.Contains(h.developers, strings.TrimSpace(why)) {
			out = append(out, fmt.Sprintf("cases.txt:%d: DEVELOPERS.md does not say why %s: %s", n+1, id, strings.TrimSpace(why)))
		}
	}
	return out
}

func read(t *testing.T, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}
