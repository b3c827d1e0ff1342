package tomlfile

import (
	"strings"
	"testing"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

func parse(t *testing.T, text string) *File {
	t.Helper()
	f := Parse("test.toml", []byte(text))
	if err := f.Problems().Err(); err != nil {
		t.Fatal(err)
	}
	return f
}

func TestGetters(t *testing.T) {
	f := parse(t, `
name = " corn "
yes = true
rate = "0.045 $/bu/pt"
place = "0.01 half-up"
day = "2026-08-01"
list = ["a", "b"]
way = "up"

[inner]
x = "1 lb"

[[row]]
y = "2 lb"

[[row]]
y = "3 lb"
`)
	r := f.Root()
	if r.Text("name") != "corn" || !r.Bool("yes") || r.Choice("way", "down", "up") != "up" {
		t.Error("text, flag or choice")
	}
	if a := r.Amount("rate", quantity.DollarsPerBu.Per(quantity.Point)); a.String() != "$0.045/bu/pt" {
		t.Errorf("amount %s", a)
	}
	if a, ok := r.Figure("rate"); !ok || a.IsZero() {
		t.Error("a figure in any unit")
	}
	if r.Rounding("place").String() != "0.01 half-up" || r.Date("day").String() != "2026-08-01" || strings.Join(r.Texts("list"), "") != "ab" {
		t.Error("rounding, date or list")
	}
	inner, ok := r.Table("inner", true)
	if !ok || inner.Amount("x", quantity.Lb).String() != "1 lb" || inner.Source("x").String() != "inner, x, line 11" || inner.Name("x").String() != "inner.x" {
		t.Errorf("inner table: %s, %s", inner.Source("x"), inner.Name("x"))
	}
	rows := r.Tables("row")
	if len(rows) != 2 || rows[0].Amount("y").String() != "2 lb" || rows[1].Amount("y").String() != "3 lb" || rows[1].Line("y") != 17 {
		t.Errorf("%d rows", len(rows))
	}
	rows[1].SetTitle(message.New("second row"))
	if rows[1].Name("y").String() != "second row, y" || rows[1].Name("").String() != "second row" || rows[1].Source("").String() != "second row, line 16" {
		t.Errorf("a named row is called %s, %s", rows[1].Name("y"), rows[1].Source(""))
	}
	r.RejectUnknownKeys()
	if err := f.Problems().Err(); err != nil {
		t.Errorf("nothing is wrong: %v", err)
	}
}

func TestWhatMayBeLeftOut(t *testing.T) {
	f := parse(t, "")
	r := f.Root()
	if r.OptionalText("a") != "" || !r.OptionalDate("b").IsZero() || r.Texts("c") != nil || r.Tables("d") != nil {
		t.Error("something came of nothing")
	}
	if _, found := r.OptionalAmount("e", quantity.Lb); found {
		t.Error("an amount came of nothing")
	}
	if got := r.OptionalRounding("f", quantity.To("1", quantity.Up)); got.String() != "1 up" {
		t.Errorf("rounding %s", got)
	}
	if _, found := r.Table("g", false); found || r.Has("g") {
		t.Error("a table came of nothing")
	}
	if err := f.Problems().Err(); err != nil {
		t.Errorf("nothing is wrong: %v", err)
	}
}

// A table that is missing is one problem; its keys are none.
func TestMissingTableIsOneProblem(t *testing.T) {
	f := parse(t, "x = \"1\"\n")
	r := f.Root()
	r.OptionalText("x")
	gone, ok := r.Table("gone", true)
	gone.Text("a")
	gone.Bool("b")
	gone.Choice("c", "d")
	gone.Amount("e", quantity.Lb)
	gone.Date("f")
	gone.Rounding("g")
	inside, _ := gone.Table("h", true)
	inside.Text("i")
	r.RejectUnknownKeys()
	if problems := f.Problems(); ok || len(problems) != 1 || problems[0].What.String() != "the table [gone] is missing" {
		t.Errorf("problems: %v", problems)
	}
}

// After a mistake that takes the meaning from a table its other keys are left
// alone.
func TestLeave(t *testing.T) {
	f := parse(t, "[a]\nmethod = \"pencil\"\nrate = 5\n")
	a, _ := f.Root().Table("a", true)
	if a.Choice("method", "water") == "" {
		a.IgnoreRest()
	}
	f.Root().RejectUnknownKeys()
	if problems := f.Problems(); len(problems) != 1 || !strings.Contains(problems[0].What.String(), `a.method is "pencil"`) {
		t.Errorf("problems: %v", problems)
	}
}

// Problems come in the order of the file, with file, line, excerpt and remedy.
func TestProblemsInOrder(t *testing.T) {
	f := parse(t, "last = 5\n\n[a]\nfirst = 7\nunit = \"7\"\n")
	a, _ := f.Root().Table("a", true)
	a.Text("first")
	a.Amount("unit", quantity.Lb)
	f.Root().Text("last")
	f.Root().RejectUnknownKeys()
	want := `test.toml:1: last is a bare number
    last = 5
    Write it in quotes, with its unit if it has one, like "15.5 %".
test.toml:4: a.first is a bare number
    first = 7
    Write it in quotes, with its unit if it has one, like "15.5 %".
test.toml:5: a.unit: "7" has no unit; write the figure and its unit, such as "15.5 %" or "0.045 $/bu/pt"
    unit = "7"
    Write the figure in digits and its unit, lb.`
	if got := f.Problems().Error(); got != want {
		t.Errorf("got:\n%s\nwant:\n%s", got, want)
	}
}

// A bare number would become a binary fraction before anyone could stop it:
// nothing but quoted text is taken for a figure.
func TestBareValuesAreRefused(t *testing.T) {
	for value, kind := range map[string]string{
		"15": "number", "15.5": "number", "true": "true or false", "2026-08-01": "date", "[1]": "list", "{a = 1}": "table",
	} {
		f := parse(t, "x = "+value+"\n")
		f.Root().Amount("x", quantity.Percent)
		if problems := f.Problems(); len(problems) != 1 || problems[0].What.String() != "x is a bare "+kind {
			t.Errorf("%s: %v", value, problems)
		}
	}
}

// The parser tells of the end of a file as of a byte zero, which nobody sees in the file.
func TestFileThatStopsTooSoon(t *testing.T) {
	for _, text := range []string{"[edition", "[[edition]", "a = \"b", "a = [", "a ="} {
		problems := Parse("test.toml", []byte(text)).Problems()
		if len(problems) == 0 || problems[0].Line != 1 || strings.Contains(problems[0].What.String(), `\x00`) {
			t.Errorf("%q: %v", text, problems)
		}
	}
}

func TestFileTooLarge(t *testing.T) {
	f := Parse("test.toml", []byte(strings.Repeat("#\n", maxBytes)))
	if problems := f.Problems(); len(problems) != 1 || !strings.Contains(problems[0].What.String(), "the file has 2097152 bytes; an edition or chart has at most 1048576") {
		t.Errorf("problems: %v", problems)
	}
	if f.Root() == nil || f.Root().Has("x") {
		t.Error("a file that was not read has something in it")
	}
}

// Whatever the text, reading it neither stops the program nor names a line the
// file does not have; what is not TOML is said to be so at once.
func FuzzParse(f *testing.F) {
	for _, text := range []string{sample, "", "= no", "a = 15.5", "[a]\n[a]", "a.b.c = \"1 lb\"", "x = '''\n", "[[a]]\n[a.b]\n[[a]]", "\xff\xfe", "a = [", "\"a\\u0000\" = 1", "a = 1\r\nb = 2\r"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		file := Parse("fuzz.toml", []byte(text))
		r := file.Root()
		for _, key := range []string{"a", "title", "shrink", "discount", "x"} {
			r.OptionalText(key)
			r.OptionalAmount(key, quantity.Lb)
			r.OptionalDate(key)
			r.Texts(key)
			if inner, ok := r.Table(key, false); ok {
				inner.Text("b")
			}
			for _, row := range r.Tables(key) {
				row.Amount("y")
				row.Table("limits", true)
			}
		}
		r.RejectUnknownKeys()
		for _, p := range file.Problems() {
			if p.Line < 0 || p.Line > strings.Count(text, "\n")+1 || p.What.IsZero() {
				t.Errorf("problem %+v in %q", p, text)
			}
		}
	})
}
