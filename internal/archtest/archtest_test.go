package archtest

import (
	"sort"
	"strings"
	"testing"
)

// A rule reads the sources and answers with a sentence for each problem.
type rule func([]source) []string

var rules = []rule{
	importDirection,
	testsStayInside,
	outsideParts,
	pureCore,
	noFloats,
	noStrayRounding,
	noArithmeticInViews,
	presentersDoNotDraw,
	oneRunner,
	menuShortcutsOnly,
	windowInCommandOnly,
	fileLength,
	packageSize,
	typeSize,
	sqlInStore,
	packageComments,
	folderNames,
	noSkippedTests,
	noLanguageInVariables,
	errorTextStays,
	sentencesAreMessages,
	formatsTakeTheirArguments,
}

// TestArchitecture applies every rule to the repository and reports all problems.
func TestArchitecture(t *testing.T) {
	sources := readSources(t)
	var problems []string
	for _, rule := range rules {
		problems = append(problems, rule(sources)...)
	}
	problems = append(problems, topLevel(t)...)
	sort.Strings(problems)
	for _, problem := range problems {
		t.Error(problem)
	}
	for _, reminder := range longFiles(sources) {
		t.Log(reminder)
	}
}

// expectProblems compares what a rule says about some sources with the parts it must say, one
// problem each, in any order. No parts: no problem.
func expectProblems(t *testing.T, got []string, parts ...string) {
	t.Helper()
	if len(got) != len(parts) {
		t.Errorf("want %d problems, got %d:\n%s", len(parts), len(got), strings.Join(got, "\n"))
	}
	all := strings.Join(got, "\n")
	for _, part := range parts {
		if !strings.Contains(all, part) {
			t.Errorf("no problem says %q:\n%s", part, all)
		}
	}
}
