package moisture

import (
	"fmt"
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/message"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

func directs(percents ...string) []Reading {
	var out []Reading
	for i, p := range percents {
		out = append(out, direct(i+1, p))
	}
	return out
}

func TestMeanIsRoundedOnceAtTheEnd(t *testing.T) {
	e := atBench(t)
	for _, c := range []struct {
		tests []Reading
		exact string
		want  string
	}{
		{directs("15.3"), "15.3 %", "15.3 %"},
		{directs("2.45"), "2.45 %", "2.5 %"}, // 7 CFR 810.104's own examples
		{directs("0.35"), "0.35 %", "0.4 %"},
		{directs("14.44", "14.48"), "14.46 %", "14.5 %"},
		{directs("14.44", "14.45"), "14.445 %", "14.4 %"}, // by way of 14.4 and 14.5 it would be 14.5
		{directs("14.1", "14.2", "14.2"), "14.166666… %", "14.2 %"},
		{directs("14.1", "14.1", "14.2"), "14.133333… %", "14.1 %"},
		{[]Reading{byDial(1, "25"), byDial(2, "25.3")}, "12.545 %", "12.5 %"}, // 12.5 and 12.59
	} {
		var s worksheet.Sheet
		r, err := Tests{Readings: c.tests}.Determine(&s, e, house())
		if err != nil {
			t.Errorf("%s: %v", c.exact, err)
			continue
		}
		if r.Moisture.ID() != "moisture" || r.Moisture.Exact().String() != c.exact || r.Moisture.Printed() != c.want {
			t.Errorf("%s: step %s is %s, printed %s; want %s", c.exact, r.Moisture.ID(), r.Moisture.Exact(), r.Moisture.Printed(), c.want)
		}
		if source := r.Moisture.Source(); !strings.Contains(source.String(), "7 CFR 810.104") {
			t.Errorf("source %q", source)
		}
	}
}

func TestHouseMayRoundByItsRates(t *testing.T) {
	h := house()
	h.Rounding = quantity.To("0.5", quantity.Down)
	var s worksheet.Sheet
	r, err := Tests{Readings: directs("14.9", "14.99")}.Determine(&s, atBench(t), h)
	if err != nil || r.Moisture.Printed() != "14.5 %" || r.Moisture.Source().String() != "moisture to 0.5 down: house" {
		t.Errorf("%s [%s], %v", r.Moisture.Printed(), r.Moisture.Source(), err)
	}
}

func TestPolicyAsksForMoreTests(t *testing.T) {
	limits := []Limit{{Name: message.Words("drying trigger"), At: pct("15.0")}, {Name: message.Words("Canadian tough"), At: pct("17.0")}}
	two := DefaultPolicy()
	two.Count = 2
	for _, c := range []struct {
		name   string
		policy Policy
		tests  []string
		more   int
		flags  []Code
	}{
		{"one is enough away from a limit", DefaultPolicy(), []string{"14.4"}, 0, nil},
		{"half a point below is near", DefaultPolicy(), []string{"14.5"}, 2, []Code{NearLimit}},
		{"half a point above is near", DefaultPolicy(), []string{"15.5"}, 2, []Code{NearLimit}},
		{"just past half a point", DefaultPolicy(), []string{"15.51"}, 0, nil},
		{"two near", DefaultPolicy(), []string{"15.2", "15.1"}, 1, []Code{NearLimit}},
		{"three near", DefaultPolicy(), []string{"15.2", "15.1", "15.0"}, 0, nil},
		{"house asks for two", two, []string{"12"}, 1, []Code{TooFewTests}},
		{"house asks for two, near", two, []string{"15"}, 2, []Code{TooFewTests, NearLimit}},
		{"too wide", DefaultPolicy(), []string{"12", "12.51"}, 0, []Code{WideSpread}},
		{"as wide as allowed", DefaultPolicy(), []string{"12", "12.5"}, 0, nil},
	} {
		h := house()
		h.Policy, h.Limits = c.policy, limits
		var s worksheet.Sheet
		r, err := Tests{Readings: directs(c.tests...)}.Determine(&s, atBench(t), h)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if r.More != c.more {
			t.Errorf("%s: %d more, want %d", c.name, r.More, c.more)
		}
		expectFlags(t, c.name, r.Flags, c.flags...)
	}
}

// A spread reads as the difference of the tests as they are listed, and never as
// allowed when it is not.
func TestShownSpread(t *testing.T) {
	p := DefaultPolicy() // 0.5 pt
	for exact, want := range map[string]string{"2.0211": "2.02 pt", "0.5001": "0.51 pt", "0.5": "0.5 pt", "0.4999": "0.5 pt", "0.516": "0.52 pt"} {
		if got := p.ShownSpread(quantity.Of(exact, quantity.Point)); got.String() != want {
			t.Errorf("%s pt is shown as %s, want %s", exact, got, want)
		}
	}
}

func TestOvenStandsOnItsOwn(t *testing.T) {
	h := house()
	h.Policy.Count, h.Limits = 3, []Limit{{Name: message.Words("trigger"), At: pct("15")}}
	oven := Reading{Seq: 1, Method: meter.ByOven, Crop: "corn", Day: day, Tester: "A", Dish: Dish{gram("115"), gram("100"), gram("15")}}
	var s worksheet.Sheet
	r, err := Tests{Readings: []Reading{oven}}.Determine(&s, atBench(t), h)
	if err != nil || r.More != 0 || len(r.Flags) != 0 || r.Moisture.Printed() != "15.0 %" {
		t.Errorf("oven: %+v, %v", r, err)
	}
}

func TestDroppedTestsStayListed(t *testing.T) {
	tests := Tests{Readings: directs("14.2", "14.3", "16.9"), Exclusions: []Exclusion{{Test: 3, Rule: FarthestFromMiddle, By: "B. Tester", Reason: "sample was not mixed"}}}
	var s worksheet.Sheet
	r, err := tests.Determine(&s, atBench(t), house())
	if err != nil {
		t.Fatal(err)
	}
	if r.Moisture.Printed() != "14.3 %" || r.Moisture.Exact().String() != "14.25 %" || r.Spread.Value().String() != "0.1 pt" {
		t.Errorf("mean %s, spread %s", r.Moisture.Exact(), r.Spread.Value())
	}
	if len(r.Outcomes) != 3 || r.Outcomes[2].Exclusion == nil || r.Outcomes[2].Step.Value().String() != "16.9 %" {
		t.Errorf("outcomes %+v", r.Outcomes)
	}
	text := s.Text(78)
	for _, want := range []string{"Test 3 left out", "16.9 %, left out by B. Tester: farthest from the middle one", "sample was not mixed"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not on the sheet:\n%s", want, text)
		}
	}
}

func TestDropsNeedARuleAndAPerson(t *testing.T) {
	spoiledOnly := DefaultPolicy()
	spoiledOnly.MayExclude = []ExclusionRule{Spoiled}
	far := func(test int) Exclusion { return Exclusion{Test: test, Rule: FarthestFromMiddle, By: "B"} }
	spoiled := func(test int) Exclusion { return Exclusion{Test: test, Rule: Spoiled, By: "B", Reason: "spilled"} }
	for _, c := range []struct {
		name   string
		policy Policy
		tests  []string
		drops  []Exclusion
		want   errortest.Want // empty: it is accepted
	}{
		{"farthest of three", DefaultPolicy(), []string{"14.2", "14.3", "16.9"}, []Exclusion{far(3)}, errortest.Want{}},
		{"not the farthest", DefaultPolicy(), []string{"14.2", "14.3", "16.9"}, []Exclusion{far(1)}, errortest.Invalid("1", "14.2 %", "16.9 %")},
		{"either of a tie", DefaultPolicy(), []string{"14.0", "15", "16"}, []Exclusion{far(1)}, errortest.Want{}},
		{"farthest of four", DefaultPolicy(), []string{"14", "14.2", "14.4", "15"}, []Exclusion{far(4)}, errortest.Want{}},
		{"no middle of two", DefaultPolicy(), []string{"14.2", "16.9"}, []Exclusion{far(2)}, errortest.Invalid("2")},
		{"spread allowed", DefaultPolicy(), []string{"14.2", "14.3", "14.7"}, []Exclusion{far(3)}, errortest.Invalid("0.5 pt")},
		{"two as farthest", DefaultPolicy(), []string{"14", "15", "16"}, []Exclusion{far(1), far(3)}, errortest.Invalid("2")},
		{"not this house's rule", spoiledOnly, []string{"14.2", "14.3", "16.9"}, []Exclusion{far(3)}, errortest.Invalid()},
		{"no rule", DefaultPolicy(), []string{"14.2", "14.3"}, []Exclusion{{Test: 1, By: "B"}}, errortest.Invalid()},
		{"no person", DefaultPolicy(), []string{"14.2", "14.3"}, []Exclusion{{Test: 1, Rule: Spoiled, Reason: "spilled"}}, errortest.Invalid()},
		{"spoiled", DefaultPolicy(), []string{"14.2", "14.3"}, []Exclusion{spoiled(1)}, errortest.Want{}},
		{"spoiled, no reason", DefaultPolicy(), []string{"14.2", "14.3"}, []Exclusion{{Test: 1, Rule: Spoiled, By: "B"}}, errortest.Invalid()},
		{"no such test", DefaultPolicy(), []string{"14.2", "14.3"}, []Exclusion{spoiled(7)}, errortest.Invalid("7")},
		{"twice", DefaultPolicy(), []string{"14.2", "14.3"}, []Exclusion{spoiled(1), spoiled(1)}, errortest.Invalid("1")},
		{"all", DefaultPolicy(), []string{"14.2"}, []Exclusion{spoiled(1)}, errortest.Invalid()},
		{"spoiled does not count for the middle", DefaultPolicy(), []string{"14.2", "14.3", "16.9"}, []Exclusion{spoiled(1), far(3)}, errortest.Invalid("2")},
	} {
		h := house()
		h.Policy = c.policy
		var s worksheet.Sheet
		_, err := Tests{Readings: directs(c.tests...), Exclusions: c.drops}.Determine(&s, atBench(t), h)
		if !c.want.Met(err) {
			t.Errorf("%s: %v; want %q", c.name, err, c.want)
		}
	}
}

func TestTestsOfOneSampleBelongTogether(t *testing.T) {
	soy := direct(2, "14.3")
	soy.Crop = "soybeans"
	for _, c := range []struct {
		name  string
		tests Tests
		want  errortest.Want
	}{
		{"none", Tests{}, errortest.Invalid()},
		{"one number twice", Tests{Readings: []Reading{direct(1, "14"), direct(1, "14")}}, errortest.Invalid("1")},
		{"two crops", Tests{Readings: []Reading{direct(1, "14"), soy}}, errortest.Invalid("2", "soybeans", "1", "corn")},
		{"two methods", Tests{Readings: []Reading{direct(1, "14"), byDial(2, "30")}}, errortest.Invalid("2", "bench-1", "1", "bench-2")},
		{"two faults at once", Tests{Readings: []Reading{byDial(1, "50"), byDial(2, "60")}}, errortest.Invalid("2", "60 dial")},
	} {
		var s worksheet.Sheet
		if _, err := c.tests.Determine(&s, atBench(t), house()); !c.want.Met(err) {
			t.Errorf("%s: %v; want %q", c.name, err, c.want)
		}
	}
	retest := Tests{Readings: []Reading{direct(1, "19"), byDial(2, "30")}, Exclusions: []Exclusion{{Test: 1, Rule: Spoiled, By: "B", Reason: "wrong crop was set"}}}
	var s worksheet.Sheet
	if r, err := retest.Determine(&s, atBench(t), house()); err != nil || r.Moisture.Printed() != "14.0 %" {
		t.Errorf("after leaving the other method out: %v", err)
	}
}

func TestPolicyChecksAndChoice(t *testing.T) {
	corn := Policy{Crop: "corn", Count: 3, Spread: pt("0.3"), Near: pt("0"), NearCount: 3}
	all := Policy{Count: 2, Spread: pt("0.4"), Near: pt("0.5"), NearCount: 3}
	for _, c := range []struct {
		policies []Policy
		crop     string
		count    int
	}{{[]Policy{all, corn}, "corn", 3}, {[]Policy{all, corn}, "soybeans", 2}, {[]Policy{corn}, "soybeans", 1}} {
		if got := PolicyFor(c.policies, c.crop).Count; got != c.count {
			t.Errorf("%s tests %d times, want %d", c.crop, got, c.count)
		}
	}
	expectErrors(t, "default", DefaultPolicy().Check())
	expectErrors(t, "corn", corn.Check())
	expectErrors(t, "bad", Policy{Crop: "corn", Count: 0, NearCount: -1, Spread: pct("0.5"), Near: pt("-0.1"), MayExclude: []ExclusionRule{"whim"}}.Check(),
		errortest.Invalid("0"), errortest.Invalid(), errortest.Invalid("0.5 %"), errortest.Invalid("-0.1 pt"), errortest.Invalid("whim"))
	if corn.isNear(pct("15"), Limit{At: pct("15")}) {
		t.Error("zero as near means never")
	}
}

// The mean lies between the lowest and the highest test, is the exact mean
// rounded once, and does not depend on the order of the tests.
func TestMeanIsTheMean(t *testing.T) {
	e := Equipment{Meters: []meter.Meter{{ID: "bench-2", Method: meter.Direct}}}
	rapid.Check(t, func(t *rapid.T) {
		hundredths := rapid.SliceOfN(rapid.Int64Range(100, 4000), 1, 6).Draw(t, "tests")
		var forward, backward []Reading
		sum := new(big.Rat)
		for i, h := range hundredths {
			text := fmt.Sprintf("%d.%02d", h/100, h%100)
			forward = append(forward, direct(i+1, text))
			backward = append([]Reading{direct(i+1, text)}, backward...)
			sum.Add(sum, big.NewRat(h, 100))
		}
		mean := sum.Quo(sum, big.NewRat(int64(len(hundredths)), 1))
		var one, other worksheet.Sheet
		a, errA := Tests{Readings: forward}.Determine(&one, e, house())
		b, errB := Tests{Readings: backward}.Determine(&other, e, house())
		if errA != nil || errB != nil {
			t.Fatal(errA, errB)
		}
		if a.Moisture.Exact().Rat().Cmp(mean) != 0 || a.Moisture.Value().Rat().FloatString(1) != mean.FloatString(1) {
			t.Fatalf("mean %s is %s, printed %s", mean, a.Moisture.Exact(), a.Moisture.Printed())
		}
		if !a.Moisture.Value().Equal(b.Moisture.Value()) || !a.Spread.Value().Equal(b.Spread.Value()) {
			t.Fatalf("another order gives %s, spread %s", b.Moisture.Printed(), b.Spread.Value())
		}
	})
}

// What the elevator stops on for every crop stops the sample as a whole too, not only its single
// tests.
func TestHouseStopsOnTheSampleAsAWhole(t *testing.T) {
	h := house()
	h.Trust.Blocks = []Code{WideSpread}
	tests := Tests{Readings: []Reading{direct(1, "15.0"), direct(2, "16.0")}}
	r, err := tests.Determine(&worksheet.Sheet{}, atBench(t), h)
	if err != nil {
		t.Fatal(err)
	}
	if !r.Stopped() {
		t.Errorf("nothing stops the ticket: %v", r.Flags)
	}
}
