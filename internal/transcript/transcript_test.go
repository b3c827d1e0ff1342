package transcript

import (
	"bytes"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestReadsWhatItWrote(t *testing.T) {
	said := []Entry{
		{Now: "2026-10-01 13:00", Args: []string{"show", "1"}, Out: "a\n\n  b\n"},
		{Now: "2026-10-01 13:00", Args: []string{"void", "1", "--reason", "the driver's \"own\" word", ""}, Err: "error: no\n", Status: 1},
		{Now: "2026-10-02 08:00", Args: []string{"x"}, Out: "no end", Err: "# neither"},
	}
	var b bytes.Buffer
	if err := Write(&b, said); err != nil {
		t.Fatal(err)
	}
	read, err := Read(&b)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(said, read); diff != "" {
		t.Error(diff)
	}
}

func TestRefusesWhatIsNoTranscript(t *testing.T) {
	for _, text := range []string{"$ rm -r", "$ tenth 'open", "tenth show 1", "= x"} {
		if _, err := Read(strings.NewReader("now x\n" + text + "\n")); err == nil || !strings.HasPrefix(err.Error(), "line 2: ") {
			t.Errorf("%q: %v", text, err)
		}
	}
}

const list = `# comment
in: ^tenth show
was: price later
now: price not set
why: said more plainly

now: ^\.engine =
why: a new name

was: ^A heading$
why: not needed

mask: code [0-9a-f]{4}
why: hashes

order: ^  [a-z-]+ [0-9]
why: the form's order

figures: ^tenth montre$
why: other words

refused: ^error: no price
why: checked first

kept: ^tenth montrer
why: French, and more of it

in: ^tenth sum
was: ^(.*: )?Charges \.+ -(.*)$
elsewhere: ^\1All \.+ \2$
why: one total

in: ^tenth sum
now: : All
why: the total

in: ^tenth sum
with: ^Held
was: ^Drying (.*)
now: Drying -$1
why: signs of what is held
`

func TestCompare(t *testing.T) {
	for _, c := range []struct {
		name, args, was, is string
		same                bool
	}{
		{"the same", "show", "a\n", "a\n", true},
		{"a figure", "show", "Net 28,000 lb\n", "Net 28,001 lb\n", false},
		{"a word", "show", "a\n", "b\n", false},
		{"a line more", "show", "a\n", "a\nb\n", false},
		{"a line less", "show", "a\nb\n", "a\n", false},
		{"blanks", "show", "a  b\n", "a b\n", false},
		{"a word that is meant", "show", "Payable ..... price later\n", "Payable ... price not set\n", true},
		{"a wider column", "show", "Net  Payable\n-------------\n  1  price later\n", "Net  Payable  \n---------------\n  1  price not set\n", true},
		{"another figure in a wider table", "show", "Net  Sum\n  1  price later\n  2  3\n", "Net  Sum  \n  1  price not set\n  2  4\n", false},
		{"said as before", "show", "Payable ..... price later\n", "Payable ..... price later\n", true},
		{"meant elsewhere", "find", "price later\n", "price not set\n", false},
		{"meant, with another figure", "show", "7 price later\n", "8 price not set\n", false},
		{"JSON in another order", "explain", `{"a":"1","b":[]}`, `{"b":[],"a":"1"}`, true},
		{"JSON figure", "explain", `{"a":"1.0"}`, `{"a":"1.00"}`, false},
		{"JSON name that is meant", "explain", `{"a":"1"}`, `{"a":"1","engine":"2"}`, true},
		{"JSON name that is gone", "explain", `{"a":"1","b":"2"}`, `{"a":"1"}`, false},
		{"a line that may go", "find", "A heading\nb\n", "b\n", true},
		{"another order", "find", "x\n  a 1\n  b 2\ny\n", "x\n  b 2\n  a 1\ny\n", true},
		{"another order across a line", "find", "  a 1\nx\n  b 2\n", "  b 2\nx\n  a 1\n", false},
		{"another order and figure", "find", "  a 1\n  b 2\n", "  b 2\n  a 3\n", false},
		{"another order, a line more", "find", "  a 1\n  b 2\n", "  b 2\n  a 1\n  c 1\n", false},
		{"another order, with what is below", "find", "  a 1\n    of x\n  b 2\n    of y\n", "  b 2\n    of y\n  a 1\n    of x\n", true},
		{"another order, below another", "find", "  a 1\n    of x\n  b 2\n    of y\n", "  b 2\n    of x\n  a 1\n    of y\n", false},
		{"another sign behind leaders", "show", "price later ..... $5\n", "price not set .. -$5\n", false},
		{"a sum told elsewhere", "sum", "Ann: Charges ... -$5.00\nx\n", "x\nAnn: All ..... $5.00\n", true},
		{"a sum told elsewhere with another figure", "sum", "Ann: Charges ... -$5.00\nx\n", "x\nAnn: All ..... $5.01\n", false},
		{"a sum told elsewhere of another", "sum", "Ann: Charges ... -$5.00\nx\n", "x\nBo: All ..... $5.00\n", false},
		{"a sign beside a line", "sum", "Drying $5\nHeld\n", "Drying -$5\nHeld\n", true},
		{"a sign without that line", "sum", "Drying $5\nSold\n", "Drying -$5\nSold\n", false},
		{"JSON steps in another order", "explain", `{"w":[{"id":"a","v":"1"},{"id":"b","v":"2"}]}`, `{"w":[{"id":"b","v":"2"},{"id":"a","v":"1"}]}`, true},
		{"JSON steps with another figure", "explain", `{"w":[{"id":"a","v":"1"}]}`, `{"w":[{"id":"a","v":"2"}]}`, false},
		{"other words and signs", "montre", "Net 28,000 lb\nA\n", "Poids 28 000\nlb\n", true},
		{"other words, another figure", "montre", "Net 28,000 lb\n", "Poids 28 001 lb\n", false},
		{"other words, a figure more", "montre", "Net 28,000 lb\n", "Poids 28 000 lb\n1\n", false},
		{"figures kept", "montrer", "Net 28,000 lb\nA 1.5\n", "A 1,5\n7\nPoids 28 000 lb\n", true},
		{"a figure lost", "montrer", "Net 28,000 lb\nA 1.5\n", "A 1,4\n7\nPoids 28 000 lb\n", false},
		{"a code", "find", "x code 12ab y\n", "x code ff00 y\n", true},
		{"beside a code", "find", "x code 12ab y\n", "x code ff00 z\n", false},
	} {
		t.Run(c.name, func(t *testing.T) {
			allowed, err := ReadAllowed(strings.NewReader(list))
			if err != nil {
				t.Fatal(err)
			}
			problems := Compare(Entry{Args: []string{c.args}, Out: c.was}, Entry{Args: []string{c.args}, Out: c.is}, allowed)
			if same := len(problems) == 0; same != c.same {
				t.Errorf("the same: %v, %q", same, problems)
			}
		})
	}
}

func TestCompareSeesComplaintsAndStatus(t *testing.T) {
	a := Entry{Args: []string{"x"}, Err: "error: a\n", Status: 1}
	b := Entry{Args: []string{"x"}, Err: "error: b\n", Status: 0}
	if problems := Compare(a, b, &Allowed{}); len(problems) != 2 {
		t.Errorf("%q", problems)
	}
}

func TestARefusalSaidOtherwise(t *testing.T) {
	allowed, err := ReadAllowed(strings.NewReader(list))
	if err != nil {
		t.Fatal(err)
	}
	was := Entry{Args: []string{"x"}, Err: "error: no price\n", Status: 1}
	for _, c := range []struct {
		was, is Entry
		same    bool
	}{
		{was, Entry{Args: was.Args, Err: "error: no tare\n", Status: 1}, true},
		{was, Entry{Args: was.Args, Out: "done\n"}, false},
		{was, Entry{Args: was.Args, Err: "error: no tare\n", Status: 2}, false},
		{Entry{Args: was.Args, Err: "error: no tare\n", Status: 1}, was, false},
	} {
		if problems := Compare(c.was, c.is, allowed); (len(problems) == 0) != c.same {
			t.Errorf("%+v, %+v: %q", c.was, c.is, problems)
		}
	}
}

func TestNoRuleTakesAFigureAway(t *testing.T) {
	allowed, err := ReadAllowed(strings.NewReader("was: Net.*\nnow: \nwhy: x\n\nwas: .*\nwhy: y\n"))
	if err != nil {
		t.Fatal(err)
	}
	if problems := Compare(Entry{Out: "Net 28,000\n"}, Entry{}, allowed); len(problems) == 0 {
		t.Error("a figure went without a word")
	}
	if unused := allowed.Unused(); len(unused) != 2 {
		t.Errorf("%q", unused)
	}
}

func TestRefusesAListWithoutReasons(t *testing.T) {
	for _, text := range []string{"was: a\nnow: b\n", "why: x\n", "was: (\nwhy: x\n", "mask: a\nwas: b\nwhy: c\n", "what: x\n", "elsewhere: a\nwhy: x\n", "was: a\nnow: b\nelsewhere: c\nwhy: x\n", "with: a\nwhy: x\n"} {
		if _, err := ReadAllowed(strings.NewReader(text)); err == nil {
			t.Errorf("%q was taken", text)
		}
	}
}
