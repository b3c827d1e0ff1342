package worksheet

import (
	"testing"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// figures are given steps named a, b, c … with plain numbers.
func figures(s *Sheet, values ...string) []*Step {
	var out []*Step
	for i, v := range values {
		name := string(rune('a' + i))
		out = append(out, s.Given(name, message.Words(name), quantity.Of(v, quantity.Plain), quantity.Unrounded, Unsourced))
	}
	return out
}

// Brackets are printed where leaving them out would change the result, and nowhere else.
func TestExpressionsReadAsTheyAreWorked(t *testing.T) {
	var s Sheet
	f := figures(&s, "12", "4", "2")
	a, b, c := f[0], f[1], f[2]
	for _, x := range []struct {
		e     Operand
		reads string
		value string
	}{
		{Sum(a, b, c), "a + b + c", "18"},
		{Less(a, b, c), "a − b − c", "6"},
		{Less(a, Less(b, c)), "a − (b − c)", "10"},
		{Less(a, Sum(b, c)), "a − (b + c)", "6"},
		{Less(Sum(a, b), c), "a + b − c", "14"},
		{Sum(a, Less(b, c)), "a + (b − c)", "14"},
		{Times(a, Sum(b, c)), "a × (b + c)", "72"},
		{Times(Sum(a, b), c), "(a + b) × c", "32"},
		{Over(Times(a, b), c), "a × b ÷ c", "24"},
		{Over(a, Times(b, c)), "a ÷ (b × c)", "1.5"},
		{Over(a, Over(b, c)), "a ÷ (b ÷ c)", "6"},
		{Over(Over(a, b), c), "a ÷ b ÷ c", "1.5"},
		{Times(Over(a, b), c), "a ÷ b × c", "6"},
		{Sum(Times(a, b), c), "a × b + c", "50"},
		{Times(a, Over(b, c)), "a × (b ÷ c)", "24"},
		{Lower(a, Times(b, c)), "the lower of (a; b × c)", "8"},
		{Higher(a, Times(b, c)), "the higher of (a; b × c)", "12"},
		{Times(c, Lower(a, b)), "c × the lower of (a; b)", "8"},
		{Same(a), "a", "12"},
		{Sum(a, Const(quantity.Of("3", quantity.Plain))), "a + 3", "15"},
	} {
		step := s.Work("x"+x.reads, message.Words("x"), x.e, quantity.Unrounded, Unsourced)
		if step.Formula() != x.reads || step.Value().String() != x.value {
			t.Errorf("%s = %s, want %s = %s", step.Formula(), step.Value(), x.reads, x.value)
		}
	}
}

func TestUnitsFollowFromTheParts(t *testing.T) {
	var s Sheet
	weight := s.Given("w", message.Words("Wet"), quantity.Of("52300", quantity.Lb), quantity.Unrounded, Unsourced)
	wet := s.Given("m", message.Words("Moisture"), quantity.Of("25.0", quantity.Percent), quantity.Unrounded, Unsourced)
	to := s.Given("to", message.Words("Shrink-to"), quantity.Of("15.5", quantity.Percent), quantity.Unrounded, Unsourced)
	for name, x := range map[string]struct {
		e    Expr
		want string
	}{
		"points":      {Points(wet, to), "9.5 pt"},
		"percent of":  {PercentOf(to, weight), "8,106.5 lb"},
		"as percent":  {Sum(to, AsPercent(Points(wet, to))), "25 %"},
		"water":       {Over(Times(weight, Points(wet, to)), Points(Const(quantity.Int(100, quantity.Percent)), to)), "5,879.881656… lb"},
		"per quarter": {Over(weight, Const(quantity.Of("56", quantity.LbPerBushel))), "933.928571… bu"},
	} {
		if got := x.e.Value().String(); got != x.want {
			t.Errorf("%s: %s, want %s", name, got, x.want)
		}
	}
}

// Pounds and bushels do not add, however they got there.
func TestUnlikeUnitsStopTheProgram(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("pounds and bushels were added")
		}
	}()
	Sum(Const(quantity.Int(1, quantity.Lb)), Const(quantity.Int(1, quantity.Bushel)))
}

// A step names what it was worked from, each once, in the order of the
// expression.
func TestUses(t *testing.T) {
	var s Sheet
	f := figures(&s, "12", "4", "2", "1")
	step := s.Work("x", message.Words("x"), Times(Sum(f[1], f[0]), Lower(f[0], Higher(f[2], f[1]))), quantity.Unrounded, Unsourced)
	got := ""
	for _, used := range step.Uses() {
		got += used.ID()
	}
	if got != "bac" {
		t.Errorf("uses %q, want \"bac\"", got)
	}
	if f[0].Uses() != nil || f[0].Formula() != "" || f[0].Figures() != "" {
		t.Error("a given figure claims to be worked")
	}
}
