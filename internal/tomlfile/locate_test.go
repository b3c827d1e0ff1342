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
	at, _ := locate([]byte(sample))
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

// A mistake is reported at its own line, for every way to write a key: with dots, in a table in
// braces, in quotes, with unusual letters.
func TestLinesOfEveryWayToWriteAKey(t *testing.T) {
	for _, c := range []struct {
		name, text, path string
		line             int
	}{
		{"a list of tables", "a = \"1\"\n\n[[diScount]]\nfactor = \"x\"\n[[diScount]]", "diScount", 3},
		{"its second element", "[[diScount]]\n[[diScount]]", "diScount.1", 2},
		{"a list of tables by a dotted name", "[a]\n\n[[a.row]]", "a.row", 3},
		{"a table only its inner table names", "a = \"1\"\n[shrink.extra]\nb = \"1\"", "shrink", 2},
		{"a table after its inner table", "[shrink.extra]\nb = \"1\"\n[shrink]", "shrink", 3},
		{"the front of a dotted key", "a = \"1\"\nshrink.to = \"15 %\"\nshrink.round = \"1 up\"", "shrink", 2},
		{"the end of a dotted key", "a = \"1\"\nshrink.to = \"15 %\"\nshrink.round = \"1 up\"", "shrink.round", 3},
		{"a dotted key with spaces and quotes", "\n'shrink' . \"to\" = \"15 %\"", "shrink.to", 2},
		{"a key with a sign that ends keys elsewhere", "\n\"a=b\" = \"1\"", "a=b", 2},
		{"a heading with a bracket in quotes", "\n[\"a]b\"]\nc = \"1\"", "a]b.c", 3},
		{"a key written with an escape", "\n\"sh\\u0072ink\" = \"1\"", "shrink", 2},
		{"a key in braces", "\nshrink = { to = \"15 %\", round = \"1 up\" }", "shrink.round", 2},
		{"a dotted key in braces", "\nshrink = { a.b = \"1\" }", "shrink.a.b", 2},
		{"a list of tables in braces", "row = [\n  { upto = \"5 %\" },\n  { upto = \"9 %\", x = \"1\" },\n]", "row.1.x", 3},
		{"an element in braces", "row = [\n  { upto = \"5 %\" },\n  { upto = \"9 %\" },\n]", "row.1", 3},
		{"after a text with three quotes in it", "a = '''\nx \"\"\" y\n'''\nb = \"1\"", "b", 4},
		{"after a text of several lines in a list", "a = [\"\"\"x\n\"\"\", \"\"\"y\"\"\"]\nb = \"1\"", "b", 3},
		{"with the line ends of another system", "a = \"1\"\r\n[b]\r\nc = \"1\"\r\n", "b.c", 3},
		{"after the mark some editors begin a file with", "\ufeffa = \"1\"\nb = \"2\"", "a", 1},
	} {
		if n := Locate("test.toml", []byte(c.text)).Line(c.path); n != c.line {
			t.Errorf("%s: %s is said to stand on line %d, not %d", c.name, c.path, n, c.line)
		}
	}
	for _, path := range []string{"x", "y", "row.upto"} {
		text := "a = '''\nx = \"1\"\n'''\norder = [\n  \"y = 1\",\n]\nrow = [{ upto = \"1\" }]"
		if n := Locate("test.toml", []byte(text)).Line(path); n != 0 {
			t.Errorf("%s, which is no key, is said to stand on line %d", path, n)
		}
	}
}

// A heading with a wrong letter is shown with its line.
func TestAnUnknownListHasItsLine(t *testing.T) {
	f := Parse("test.toml", []byte("[[discount]]\n\n[[diScount]]\n"))
	f.Root().Tables("discount")
	f.Root().RejectUnknownKeys()
	p := f.Problems()
	if len(p) != 1 || p[0].Line != 3 || p[0].Excerpt != "[[diScount]]" {
		t.Errorf("%v", p)
	}
}

// Deep nesting is refused at once: the decoder would be busy for minutes.
func TestDeepNestingIsRefused(t *testing.T) {
	deep := strings.Repeat("a.", 20_000) + "a"
	nested := func(n int) string { return strings.Repeat("{ a = ", n) + "1" + strings.Repeat(" }", n) }
	for name, text := range map[string]string{
		"a key": "\n" + deep + " = \"1\"", "a heading": "\n[" + deep + "]", "a list": "\n[[" + deep + "]]",
		"braces": "\na = " + nested(9_000), "more than the parser takes": "\na = " + nested(20_000),
		"lists":            "\na = " + strings.Repeat("[", 200_000) + strings.Repeat("]", 200_000),
		"after quotes":     `a = ['\', "\"", '''it's ''', """x\""""]` + "\nb = " + nested(40),
		"after a lost end": "a = \"[\nb = " + nested(40),
		"braces in lists":  "\na = " + strings.Repeat("[{ a = ", 100) + "1" + strings.Repeat(" }]", 100),
	} {
		f := Parse("test.toml", []byte(text))
		p := f.Problems()
		if len(p) != 1 || p[0].Line != 2 || !strings.Contains(p[0].What.String(), "deep") {
			t.Errorf("%s: %.200v", name, p)
		}
		if len(f.at) > 2*mostParts {
			t.Errorf("%s: %d places are kept", name, len(f.at))
		}
	}
	brackets := strings.Repeat("[", 40)
	for name, text := range map[string]string{
		"a key of eight parts":    `a.b.c.d.e.f.g.h = "1"`,
		"many lists side by side": "a = [" + strings.Repeat("[1], ", 100) + "[2]]",
		"brackets in texts": `a = "` + brackets + `\"` + brackets + `"` + "\nb = '" + brackets + "'\nc = \"\"\"\n" + brackets + "\n\"" + brackets +
			"\"\"\"\nd = '''" + brackets + "''' # " + brackets,
	} {
		if err := Parse("test.toml", []byte(text)).Problems().Err(); err != nil || !Fits([]byte(text)) {
			t.Errorf("%s: %v", name, err)
		}
	}
}
