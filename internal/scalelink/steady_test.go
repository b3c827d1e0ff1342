package scalelink

import (
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/quantity"
)

func TestSteadyJudges(t *testing.T) {
	over := Reading{Weight: lb("0"), State: Over}
	said := func(weight string, state State) Reading { return Reading{Weight: lb(weight), State: state} }
	tests := []struct {
		name     string
		rule     Steady
		readings []Reading
		want     []State
	}{
		{"no rule believes the indicator", Steady{},
			[]Reading{said("20", Stable), said("9000", Motion), said("40", Unsaid)}, []State{Stable, Motion, Unsaid}},
		{"three within one division", Steady{1, 3},
			[]Reading{said("100", Unsaid), said("120", Unsaid), said("100", Unsaid), said("140", Unsaid), said("140", Unsaid), said("140", Unsaid)},
			[]State{Motion, Motion, Stable, Motion, Motion, Stable}},
		{"three the same", Steady{0, 3},
			[]Reading{said("100", Unsaid), said("100", Unsaid), said("120", Unsaid), said("120", Unsaid), said("120", Unsaid)},
			[]State{Motion, Motion, Motion, Motion, Stable}},
		{"both must agree", Steady{0, 2},
			[]Reading{said("100", Stable), said("100", Motion), said("100", Stable), said("120", Stable)}, []State{Motion, Motion, Stable, Motion}},
		{"an overload starts the count again", Steady{0, 2},
			[]Reading{said("100", Unsaid), over, said("100", Unsaid), said("100", Unsaid)}, []State{Motion, Over, Motion, Stable}},
		{"another unit starts the count again and is not judged", Steady{0, 2},
			[]Reading{said("100", Unsaid), {Weight: kg("100")}, said("100", Unsaid), said("100", Unsaid)}, []State{Motion, Unsaid, Motion, Stable}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			judge := newRest(tt.rule, lb("20"))
			for i, reading := range tt.readings {
				if got := judge.byRule(reading).State; got != tt.want[i] {
					t.Errorf("reading %d (%s) is judged %s, want %s", i+1, reading.Weight, got, tt.want[i])
				}
			}
		})
	}
}

// The rule, said again in whole numbers over the whole list at each step.
func TestSteadyIsTheSpreadOfTheLast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rule := Steady{rapid.IntRange(0, 3).Draw(t, "divisions"), rapid.IntRange(2, 5).Draw(t, "readings")}
		shown := rapid.SliceOfN(rapid.Int64Range(0, 6), 1, 30).Draw(t, "shown")
		judge := newRest(rule, lb("20"))
		for i, n := range shown {
			got := judge.byRule(Reading{Weight: quantity.Int(20*n, quantity.Lb)}).IsStable()
			want := i+1 >= rule.Readings
			for _, a := range shown[max(0, i+1-rule.Readings) : i+1] {
				for _, b := range shown[max(0, i+1-rule.Readings) : i+1] {
					want = want && a-b <= int64(rule.Divisions)
				}
			}
			if got != want {
				t.Fatalf("after %v by %+v: at rest %v, want %v", shown[:i+1], rule, got, want)
			}
		}
	})
}

func TestSteadyCheck(t *testing.T) {
	for rule, good := range map[Steady]bool{
		{}: true, {0, 2}: true, {3, 100}: true, {1, 0}: false, {1, 1}: false, {-1, 3}: false, {1, 101}: false,
	} {
		if err := rule.check(); (err == nil) != good {
			t.Errorf("%+v: check() = %v, want good %v", rule, err, good)
		}
	}
}

// At rest is what two frames running say alike.
func TestTwoEqualFramesAreAtRest(t *testing.T) {
	judge := newRest(Steady{}, lb("20"))
	for i, step := range []struct {
		said Reading
		want State
	}{
		{Reading{Weight: lb("100"), State: Stable}, Motion},
		{Reading{Weight: lb("100"), State: Stable}, Stable},
		{Reading{Weight: lb("900"), State: Stable}, Motion},
		{Reading{Weight: lb("100"), State: Stable}, Motion},
		{Reading{Weight: lb("100"), State: Stable}, Stable},
		{Reading{Weight: kg("100"), State: Stable}, Motion},
		{Reading{Weight: lb("100"), State: Motion}, Motion},
		{Reading{Weight: lb("100"), State: Stable}, Motion},
		{Reading{Weight: lb("100"), State: Stable, Mode: Net}, Motion},
		{Reading{Weight: lb("100"), State: Stable, Mode: Net}, Stable},
	} {
		if got := judge.judge(step.said).State; got != step.want {
			t.Errorf("frame %d is judged %s, want %s", i+1, got, step.want)
		}
	}
	judge.forget()
	if got := judge.judge(Reading{Weight: lb("100"), State: Stable, Mode: Net}).State; got != Motion {
		t.Errorf("after a frame that could not be read: %s", got)
	}
}
