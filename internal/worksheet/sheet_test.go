package worksheet

import (
	"encoding/json"
	"flag"
	"os"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"tenthpoint/internal/quantity"
)

var update = flag.Bool("update", false, "write the golden files anew")

var wholeLb = quantity.To("1", quantity.HalfUp)

// example is a small settlement: every kind of step, rounded and not.
func example() *Sheet {
	s := &Sheet{}
	s.Section("Weights")
	gross := s.Given("gross", "Gross", quantity.Of("78400", quantity.Lb), quantity.Unrounded, "scale 1")
	tare := s.Given("tare", "Tare", quantity.Of("26100", quantity.Lb), quantity.Unrounded, "")
	net := s.Work("net", "Net", Less(gross, tare), quantity.Unrounded, "")
	s.Section("Sample")
	moisture := s.Given("moisture", "Moisture", quantity.Of("18.34", quantity.Percent), quantity.To("0.1", quantity.HalfUp), "meter A")
	s.Word(s.Given("musty", "Musty odor", quantity.Int(1, quantity.Count), quantity.Unrounded, ""), "present")
	s.Section("Shrink")
	to := s.Rate("to", "Shrink-to", quantity.Of("15.0", quantity.Percent), "corn-2026: shrink, to, line 35")
	water := s.Work("water", "Water shrink", Over(Times(net, Points(moisture, to)), Points(Const(quantity.Int(100, quantity.Percent)), to)), wholeLb, "corn-2026: shrink, line 31")
	s.Skip("handling", "Handling loss", quantity.Lb, wholeLb, "this edition takes nothing for handling", "")
	dry := s.Work("dry", "Dry-equivalent weight", Less(net, water), quantity.Unrounded, "")
	s.Section("Money")
	bushels := s.Work("bushels", "Bushels", Over(dry, Const(quantity.Of("56", quantity.LbPerBushel))), quantity.To("0.01", quantity.HalfUp), "")
	price := s.Given("price", "Price", quantity.Of("4.10", quantity.DollarsPerBu), quantity.Unrounded, "posted")
	value := s.Work("value", "Value", Times(price, bushels), quantity.To("0.01", quantity.HalfUp), "")
	drying := s.Note(s.Given("drying", "Drying charge", quantity.Of("80.40", quantity.Dollar), quantity.Unrounded, ""), "charged by hand")
	s.Work("payable", "Payable", Less(value, drying), quantity.Unrounded, "")
	return s
}

func golden(t *testing.T, name, got string) {
	t.Helper()
	if *update {
		if err := os.WriteFile("testdata/"+name, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), got); diff != "" {
		t.Errorf("%s (-want +got)\n%s", name, diff)
	}
}

func TestText(t *testing.T) {
	golden(t, "example.txt", example().Text(72))
	golden(t, "example-narrow.txt", example().Text(32))
}

func TestJSON(t *testing.T) {
	text, err := json.MarshalIndent(example(), "", "  ")
	if err != nil {
		t.Fatal(err)
	}
	golden(t, "example.json", string(text)+"\n")
	var steps []map[string]any
	if err := json.Unmarshal(text, &steps); err != nil {
		t.Fatal(err)
	}
	for _, step := range steps {
		for key, value := range step {
			if _, isNumber := value.(float64); isNumber {
				t.Errorf("%s: %s is a JSON number", step["id"], key)
			}
		}
	}
	if empty, err := json.Marshal(&Sheet{}); err != nil || string(empty) != "[]" {
		t.Errorf("an empty sheet is %s, %v", empty, err)
	}
}

// A later step uses the rounded figure, the one that is printed.
func TestLaterStepsUseTheRoundedFigure(t *testing.T) {
	s := example()
	dry, _ := s.Step("dry")
	water, _ := s.Step("water")
	if water.Exact().String() != "2,030.470588… lb" || water.Value().String() != "2,030 lb" || dry.Value().String() != "50,270 lb" {
		t.Errorf("water %s, rounded %s, dry %s", water.Exact(), water.Value(), dry.Value())
	}
}

// Sums of printed figures keep their decimals; products have those of their
// rounding.
func TestPrinted(t *testing.T) {
	var s Sheet
	a := s.Given("a", "a", quantity.Of("49.03", quantity.Dollar), quantity.Unrounded, "")
	b := s.Given("b", "b", quantity.Of("41.57", quantity.Dollar), quantity.Unrounded, "")
	for want, e := range map[string]Operand{
		"$90.60":  Sum(a, b),
		"$7.46":   Less(a, b),
		"$49.03":  Higher(a, b),
		"$139.63": Sum(Sum(a, b), a),
	} {
		if got := s.Work(want, "x", e, quantity.Unrounded, "").Printed(); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
	rate := s.Given("r", "r", quantity.Of("0.020", quantity.DollarsPerBu), quantity.Unrounded, "")
	count := s.Given("n", "n", quantity.Of("2.0", quantity.Plain), quantity.Unrounded, "")
	if got := s.Work("each", "each", Times(rate, count), quantity.Unrounded, "").Printed(); got != "$0.04/bu" {
		t.Errorf("a product is printed %s", got)
	}
}

func TestTwoStepsOfOneIDStopTheProgram(t *testing.T) {
	defer func() {
		if text, _ := recover().(string); !strings.Contains(text, `two steps are called "net"`) {
			t.Errorf("recovered %q", text)
		}
	}()
	s := example()
	s.Rate("net", "Net again", quantity.Int(1, quantity.Lb), "")
}

func TestCompareSheets(t *testing.T) {
	if same := Compare(example(), example()); len(same) != 0 {
		t.Errorf("a sheet differs from itself: %v", same)
	}
	before, after := &Sheet{}, &Sheet{}
	lb := func(s *Sheet, id, value string) {
		s.Given(id, strings.ToUpper(id), quantity.Of(value, quantity.Lb), quantity.Unrounded, "")
	}
	lb(before, "same", "5")
	lb(before, "changed", "10")
	lb(before, "gone", "3")
	lb(before, "unlike", "3")
	lb(after, "same", "5.0")
	lb(after, "changed", "12")
	after.Given("unlike", "UNLIKE", quantity.Of("3", quantity.Kg), quantity.Unrounded, "")
	lb(after, "new", "4")
	var got []string
	for _, d := range Compare(before, after) {
		got = append(got, d.ID+" "+d.Label+" "+d.Before.String()+" "+d.After.String()+" "+d.Change.String())
	}
	want := []string{"changed CHANGED 10 lb 12 lb 2 lb", "gone GONE 3 lb 0 lb -3 lb", "new NEW 0 lb 4 lb 4 lb"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// Two sheets of one digest hold the same figures in any words.
func TestDigest(t *testing.T) {
	one, two := &Sheet{}, &Sheet{}
	one.Given("a", "Gross", quantity.Of("10", quantity.Lb), wholeLb, "scale")
	two.Given("a", "Full", quantity.Of("10", quantity.Lb), wholeLb, "typed")
	if one.Digest() != two.Digest() || one.Digest() == "" {
		t.Error("other words, other digest")
	}
	three := &Sheet{}
	three.Given("a", "Gross", quantity.Of("10.1", quantity.Lb), wholeLb, "scale")
	if one.Digest() == three.Digest() {
		t.Error("another exact figure, the same digest")
	}
}

// However narrow the paper: no figure is lost and no line is wider than it
// must be.
func TestTextAtAnyWidth(t *testing.T) {
	s := example()
	rapid.Check(t, func(rt *rapid.T) {
		width := rapid.IntRange(0, 120).Draw(rt, "width")
		text := s.Text(width)
		if text != s.Text(width) {
			rt.Fatal("the same sheet gives two texts")
		}
		flat := strings.Join(strings.Fields(text), " ")
		for _, step := range s.Steps() {
			if step.Kind() != NotApplied && !strings.Contains(flat, step.Printed()) {
				rt.Fatalf("%s, %s, is not on the paper", step.Label(), step.Printed())
			}
		}
		for _, line := range strings.Split(text, "\n") {
			if body, small := strings.CutPrefix(line, "    "); small && len(unbroken(body)) > 1 && utf8.RuneCountInString(body) > width-4 {
				rt.Fatalf("%q is wider than %d", line, width)
			}
		}
	})
}
