package archtest

import (
	"bufio"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// The names at the top of the repository. A newcomer reads them first, so
// each one has to earn its place.
var (
	topRequired = []string{
		"cmd", "internal", "ui", "migrations", "schedules", "testdata",
		"README.md", "DEVELOPERS.md", "LICENSE", "go.mod", "go.sum", ".ci", ".gitignore",
	}
	topAllowed = []string{".git", ".gitattributes"}
)

// topLevel compares the root folder with the two lists.
func topLevel(t *testing.T) []string {
	t.Helper()
	entries, err := os.ReadDir(root)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, entry := range entries {
		names = append(names, entry.Name())
	}
	ignored, err := os.ReadFile(filepath.Join(root, ".gitignore"))
	if err != nil {
		t.Error(err)
	}
	return topProblems(names, string(ignored))
}

// topProblems names what is there and should not be, and what should be and
// is not. What .gitignore names with a leading slash may lie about.
func topProblems(names []string, gitignore string) []string {
	var problems []string
	allowed := slices.Concat(topRequired, topAllowed, ignoredAtTop(gitignore))
	for _, name := range names {
		if !slices.Contains(allowed, name) {
			problems = append(problems, fmt.Sprintf("%s: nothing of this name belongs in the root of the repository", name))
		}
	}
	for _, name := range topRequired {
		if !slices.Contains(names, name) {
			problems = append(problems, fmt.Sprintf("%s is missing from the root of the repository", name))
		}
	}
	return problems
}

func ignoredAtTop(gitignore string) []string {
	var names []string
	lines := bufio.NewScanner(strings.NewReader(gitignore))
	for lines.Scan() {
		if name, ok := strings.CutPrefix(lines.Text(), "/"); ok {
			names = append(names, strings.TrimSuffix(name, "/"))
		}
	}
	return names
}

// vagueNames say nothing about what is inside, so anything gets put there.
var vagueNames = []string{
	"util", "utils", "common", "helper", "helpers", "manager", "managers", "misc", "shared", "base",
}

// folderNames refuses vague names anywhere in a package's path.
func folderNames(sources []source) []string {
	var problems []string
	seen := map[string]bool{}
	for _, s := range sources {
		if seen[s.pkg()] {
			continue
		}
		seen[s.pkg()] = true
		for _, part := range strings.Split(s.pkg(), "/") {
			if slices.Contains(vagueNames, part) {
				problems = append(problems, fmt.Sprintf("%s: %q does not say what is inside; use a word of the trade", s.pkg(), part))
			}
		}
	}
	return problems
}

func TestTopLevelCanFail(t *testing.T) {
	names := append(slices.Clone(topRequired[1:]), ".git", "shots", "notes.txt")
	expectProblems(t, topProblems(names, "# leftovers\n/shots/\n*.db\n"),
		"notes.txt: nothing of this name", "cmd is missing")
	expectProblems(t, topProblems(append(slices.Clone(topRequired), topAllowed...), ""))
}

func TestFolderNamesCanFail(t *testing.T) {
	expectProblems(t, folderNames([]source{
		snippet(t, "internal/common/a.go", "package common"),
		snippet(t, "internal/common/b.go", "package common"),
		snippet(t, "internal/settle/utils/a.go", "package utils"),
		snippet(t, "internal/settle/a.go", "package settle"),
	}), `internal/common: "common"`, `internal/settle/utils: "utils"`)
}
