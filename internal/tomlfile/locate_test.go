package tomlfile

import (
	"strings"
	"testing"
)

const sample = `# rates
title = "Corn"

[shrink]
method = "water" # the formula
  to = "15.0 %"
"round" = "1 half-up"
note = """
to = "not this line"
[drying]
"""

[shrink . extra]
a.b = "1"

[[discount]]
factor = "damage"

[[discount.row]]
upto = "5.0 %"

[[discount.row]]
over = "5.0 %"

[[discount]]
factor = "musty"
order = [
  "x = y",
  "z",
]

[[discount.row]]
upto = "1 %"

[discount.limits]
most = "3 %"
`

// The line of every key, also in elements of arrays, dotted names, quoted keys
// and around texts of several lines.
func TestLines(t *testing.T) {
	at := locate(strings.Split(sample, "\n"))
	lines := strings.Split(sample, "\n")
	for path, want := range map[string]string{
		"title": `title = "Corn"`, "shrink": "[shrink]", "shrink.method": `method = "water" # the formula`,
		"shrink.to": `  to = "15.0 %"`, "shrink.round": `"round" = "1 half-up"`, "shrink.note": `note = """`,
		"shrink.extra": "[shrink . extra]", "shrink.extra.a.b": `a.b = "1"`,
		"discount.0": "[[discount]]", "discount.0.factor": `factor = "damage"`,
		"discount.0.row.0.upto": `upto = "5.0 %"`, "discount.0.row.1.over": `over = "5.0 %"`,
		"discount.1.factor": `factor = "musty"`, "discount.1.row.0.upto": `upto = "1 %"`,
		"discount.1.order": "order = [", "discount.1.limits.most": `most = "3 %"`,
	} {
		if n := at[path]; n == 0 || lines[n-1] != want {
			t.Errorf("%s is said to stand on line %d", path, n)
		}
	}
	if _, found := at["drying"]; found {
		t.Error("a heading inside a text was taken for one")
	}
	for path, want := range map[string]string{
		"shrink.trigger": "[shrink]", "discount.1.row.0.over": "[[discount.row]]", "discount.1.row.7": "[[discount]]",
	} {
		if n := lineOf(at, path); n == 0 || lines[n-1] != want {
			t.Errorf("%s, which is missing, is shown at line %d", path, n)
		}
	}
	if n := lineOf(at, "nowhere.at.all"); n != 0 {
		t.Errorf("a table that is missing is shown at line %d", n)
	}
}
