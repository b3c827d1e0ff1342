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

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/textwrap"
)

var update = flag.Bool("update", false, "write the golden files anew")

var wholeLb = quantity.To("1", quantity.HalfUp)

// example is a small settlement: every kind of step, rounded and not.
func example() *Sheet {
	s := &Sheet{}
	s.Section(message.Words("Weights"))
	gross := s.Given("gross", message.Words("Gross"), quantity.Of("78400", quantity.Lb), quantity.Unrounded, message.Words("scale 1"))
	tare := s.Given("tare", message.Words("Tare"), quantity.Of("26100", quantity.Lb), quantity.Unrounded, Unsourced)
	net := s.Work("net", message.Words("Net"), Less(gross, tare), quantity.Unrounded, Unsourced)
	s.Section(message.Words("Sample"))
	moisture := s.Given("moisture", message.Words("Moisture"), quantity.Of("18.34", quantity.Percent), quantity.To("0.1", quantity.HalfUp), message.Words("meter A"))
	s.Word(s.Given("musty", message.Words("Musty odor"), quantity.Int(1, quantity.Count), quantity.Unrounded, Unsourced), message.Words("present"))
	s.Section(message.Words("Shrink"))
	to := s.Rate("to", message.Words("Shrink-to"), quantity.Of("15.0", quantity.Percent), message.Words("corn-2026: shrink, to, line 35"))
	water := s.Work("water", message.Words("Water shrink"), Over(Times(net, Points(moisture, to)), Points(Const(quantity.Int(100, quantity.Percent)), to)), wholeLb, message.Words("corn-2026: shrink, line 31"))
	s.Skip("handling", message.Words("Handling loss"), quantity.Lb, wholeLb, message.Words("this edition takes nothing for handling"), Unsourced)
	dry := s.Work("dry", message.Words("Dry-equivalent weight"), Less(net, water), quantity.Unrounded, Unsourced)
	s.Section(message.Words("Money"))
	bushels := s.Work("bushels", message.Words("Bushels"), Over(dry, Const(quantity.Of("56", quantity.LbPerBushel))), quantity.To("0.01", quantity.HalfUp), Unsourced)
	price := s.Given("price", message.Words("Price"), quantity.Of("4.10", quantity.DollarsPerBu), quantity.Unrounded, message.Words("posted"))
	value := s.Work("value", message.Words("Value"), Times(price, bushels), quantity.To("0.01", quantity.HalfUp), Unsourced)
	drying := s.Note(s.Given("drying", message.Words("Drying charge"), quantity.Of("80.40", quantity.Dollar), quantity.Unrounded, Unsourced), message.Words("charged by hand"))
	s.Work("payable", message.Words("Payable"), Less(value, drying), quantity.Unrounded, Unsourced)
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
	a := s.Given("a", message.Words("a"), quantity.Of("49.03", quantity.Dollar), quantity.Unrounded, Unsourced)
	b := s.Given("b", message.Words("b"), quantity.Of("41.57", quantity.Dollar), quantity.Unrounded, Unsourced)
	for want, e := range map[string]Operand{
		"$90.60":  Sum(a, b),
		"$7.46":   Less(a, b),
		"$49.03":  Higher(a, b),
		"$139.63": Sum(Sum(a, b), a),
	} {
		if got := s.Work(want, message.Words("x"), e, quantity.Unrounded, Unsourced).Printed(); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
	rate := s.Given("r", message.Words("r"), quantity.Of("0.020", quantity.DollarsPerBu), quantity.Unrounded, Unsourced)
	count := s.Given("n", message.Words("n"), quantity.Of("2.0", quantity.Plain), quantity.Unrounded, Unsourced)
	if got := s.Work("each", message.Words("each"), Times(rate, count), quantity.Unrounded, Unsourced).Printed(); got != "$0.04/bu" {
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
	s.Rate("net", message.Words("Net again"), quantity.Int(1, quantity.Lb), Unsourced)
}

func TestCompareSheets(t *testing.T) {
	if same := Compare(example(), example()); len(same) != 0 {
		t.Errorf("a sheet differs from itself: %v", same)
	}
	before, after := &Sheet{}, &Sheet{}
	lb := func(s *Sheet, id, value string) {
		s.Given(id, message.Words(strings.ToUpper(id)), quantity.Of(value, quantity.Lb), quantity.Unrounded, Unsourced)
	}
	lb(before, "same", "5")
	lb(before, "changed", "10")
	lb(before, "gone", "3")
	lb(before, "unlike", "3")
	lb(after, "same", "5.0")
	lb(after, "changed", "12")
	after.Given("unlike", message.Words("UNLIKE"), quantity.Of("3", quantity.Kg), quantity.Unrounded, Unsourced)
	lb(after, "new", "4")
	var got []string
	for _, d := range Compare(before, after) {
		got = append(got, d.ID+" "+d.Label.String()+" "+d.Before.String()+" "+d.After.String()+" "+d.Change.String())
	}
	want := []string{"changed CHANGED 10 lb 12 lb 2 lb", "gone GONE 3 lb 0 lb -3 lb", "new NEW 0 lb 4 lb 4 lb"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// Two sheets of one digest hold the same figures in any words.
func TestDigest(t *testing.T) {
	one, two := &Sheet{}, &Sheet{}
	one.Given("a", message.Words("Gross"), quantity.Of("10", quantity.Lb), wholeLb, message.Words("scale"))
	two.Given("a", message.Words("Full"), quantity.Of("10", quantity.Lb), wholeLb, message.Words("typed"))
	if one.Digest() != two.Digest() || one.Digest() == "" {
		t.Error("other words, other digest")
	}
	three := &Sheet{}
	three.Given("a", message.Words("Gross"), quantity.Of("10.1", quantity.Lb), wholeLb, message.Words("scale"))
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
			if body, small := strings.CutPrefix(line, "    "); small && len(textwrap.Words(body)) > 1 && utf8.RuneCountInString(body) > width-4 {
				rt.Fatalf("%q is wider than %d", line, width)
			}
		}
	})
}
