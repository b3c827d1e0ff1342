package rates_test

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tenthpoint/internal/rates"
	"tenthpoint/internal/tomlfile"
)

var update = flag.Bool("update", false, "write the .want files beside the fixtures anew")

const fixtures = "../../testdata/rates"

// matches compares a text with the .want file beside a fixture.
func matches(t *testing.T, fixture, got string) {
	t.Helper()
	name := strings.TrimSuffix(fixture, ".toml") + ".want"
	if *update {
		if err := os.WriteFile(name, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s\ngot:\n%s\nwant:\n%s", name, got, want)
	}
}

func fixtureFiles(t *testing.T, pattern string, least int) []string {
	t.Helper()
	names, err := filepath.Glob(filepath.Join(fixtures, pattern))
	if err != nil || len(names) < least {
		t.Fatalf("%s: %d files, %v", pattern, len(names), err)
	}
	return names
}

func readFixture(t *testing.T, name string) (*rates.Edition, error) {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return rates.Read(filepath.Base(name), text)
}

// Every good file is read, and what it says is written out line by line beside
// it.
func TestGoodEditions(t *testing.T) {
	for _, name := range fixtureFiles(t, "good/*.toml", 4) {
		e, err := readFixture(t, name)
		if err != nil {
			t.Error(err)
			continue
		}
		for _, l := range e.Lines() {
			if l.At == 0 {
				t.Errorf("%s: no line of the file says %s", name, l.Key)
			}
		}
		matches(t, name, shown(e))
	}
}

func shown(e *rates.Edition) string {
	var b strings.Builder
	for _, l := range e.Lines() {
		fmt.Fprintf(&b, "%d | %s | %s | %s | %s\n", l.At, l.Key, l.Section, l.Label, l.Value)
	}
	return b.String()
}

// Every broken file is refused for its one mistake, in the words beside it.
// Each message names the file and says what to do; all but those about
// something missing from the whole file show line and excerpt.
func TestBadEditions(t *testing.T) {
	for _, name := range fixtureFiles(t, "bad/*.toml", 80) {
		_, err := readFixture(t, name)
		problems, ok := err.(tomlfile.Problems)
		if !ok {
			t.Errorf("%s was read: %v", name, err)
			continue
		}
		if len(problems) != 1 {
			t.Errorf("%s has one mistake and %d messages:\n%v", name, len(problems), problems)
		}
		for _, p := range problems {
			inside := p.Line > 0 && p.Excerpt != "" || strings.Contains(p.What.String(), "the table [")
			if p.File != filepath.Base(name) || !inside || p.Remedy.IsZero() {
				t.Errorf("%s: the message lacks place, excerpt or remedy: %+v", name, p)
			}
		}
		matches(t, name, problems.Error()+"\n")
	}
}

// Sets of editions that each can be read and do not fit together.
func TestSets(t *testing.T) {
	for _, folder := range fixtureFiles(t, "sets/*", 8) {
		var editions []*rates.Edition
		for _, name := range fixtureFiles(t, "sets/"+filepath.Base(folder)+"/*.toml", 1) {
			e, err := readFixture(t, name)
			if err != nil {
				t.Fatal(err)
			}
			editions = append(editions, e)
		}
		_, problems := rates.NewSet(editions...)
		for _, p := range problems {
			if p.File == "" || p.Line == 0 || p.Excerpt == "" || p.Remedy.IsZero() {
				t.Errorf("%s: the message lacks place, excerpt or remedy: %+v", folder, p)
			}
		}
		text := ""
		if len(problems) > 0 {
			text = problems.Error() + "\n"
		}
		matches(t, filepath.Join(folder, "problems"), text)
	}
}
