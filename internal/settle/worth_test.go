package settle_test

import (
	"errors"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
)

var tenth = quantity.Of("0.1", quantity.Point)

func worth(t testing.TB, f settle.Facts, tables ...string) settle.Worth {
	t.Helper()
	w, err := settle.Current.WorthOf(f, scene(t, tables...), tenth)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func expectChange(t *testing.T, name string, got settle.End, moisture, weight, units, toOwner, payable string) {
	t.Helper()
	paid := "later"
	if got.Change.Payable != nil {
		paid = got.Change.Payable.String()
	}
	shown := []string{got.Moisture.String(), got.Change.Weight.String(), got.Change.Quantity.String(), got.Change.ToOwner.String(), paid}
	want := []string{moisture, weight, units, toOwner, payable}
	if strings.Join(shown, "; ") != strings.Join(want, "; ") {
		t.Errorf("%s: %q, want %q", name, shown, want)
	}
}

// Water is 28,000 x points / 85: 955.29, 988.24 and 1,021.18 lb at 17.9, 18.0
// and 18.1 %, so 482.95, 482.36 and 481.77 bu are paid for.
func TestWorthOfATenthByHand(t *testing.T) {
	w := worth(t, corn("28000", "18.0", at("4.20 $/bu")))
	expectChange(t, "drier", w.Drier, "17.9 %", "33 lb", "0.59 bu", "$0.00", "$2.48")
	expectChange(t, "wetter", w.Wetter, "18.1 %", "-33 lb", "-0.59 bu", "$0.00", "-$2.48")
	later := worth(t, corn("28000", "18.0"))
	expectChange(t, "price later", later.Wetter, "18.1 %", "-33 lb", "-0.59 bu", "$0.00", "later")
}

// Drying is charged above 16.0 and counted down to 15.0: a tenth more costs
// 1.1 points at once, 500 bu x 1.1 x $0.04, a tenth less nothing. Water is
// 296.47, 329.41 and 362.35 lb: 494.71, 494.13 and 493.54 bu.
func TestWorthShowsTheJumpAtATrigger(t *testing.T) {
	w := worth(t, corn("28000", "16.0"), `
[drying]
method = "per-point"
basis = "net"
trigger = "16.0 %"
to = "15.0 %"
rate = "0.04 $/bu/pt"
step = "continuous"`)
	expectChange(t, "drier", w.Drier, "15.9 %", "33 lb", "0.58 bu", "$0.00", "later")
	expectChange(t, "wetter", w.Wetter, "16.1 %", "-33 lb", "-0.59 bu", "-$22.00", "later")
}

// The ends lie about the moisture as recorded, not as measured.
func TestWorthIsAboutTheRecordedMoisture(t *testing.T) {
	w := worth(t, corn("28000", "17.96"))
	if w.Drier.Moisture.String() != "17.9 %" || w.Wetter.Moisture.String() != "18.1 %" {
		t.Errorf("from %s to %s", w.Drier.Moisture, w.Wetter.Moisture)
	}
}

func TestWorthWhereNoLoadIsSettled(t *testing.T) {
	w := worth(t, corn("28000", "3.0"))
	if w.Drier.Settlement != nil || len(w.Drier.Problems) != 1 || w.Drier.Problems[0].Field != "moisture" {
		t.Errorf("grain as dry as dust is settled: %+v", w.Drier)
	}
	if w.Wetter.Settlement == nil {
		t.Errorf("the other end is not settled: %v", w.Wetter.Problems)
	}
	for name, try := range map[string]func() (settle.Worth, error){
		"no weights": func() (settle.Worth, error) { return settle.Current.WorthOf(settle.Facts{}, scene(t), tenth) },
		"no step": func() (settle.Worth, error) {
			return settle.Current.WorthOf(corn("28000", "18"), scene(t), quantity.Zero(quantity.Point))
		},
		"step in %": func() (settle.Worth, error) {
			return settle.Current.WorthOf(corn("28000", "18"), scene(t), quantity.Int(1, quantity.Percent))
		},
		"below zero": func() (settle.Worth, error) {
			return settle.Current.WorthOf(corn("28000", "18"), scene(t), tenth.Neg())
		},
	} {
		var problems settle.Problems
		if _, err := try(); !errors.As(err, &problems) || len(problems) == 0 {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// The ends are the load settled at that moisture, to the last figure, and a
// wetter load never brings more.
func TestWorthIsSettlingAtBothEnds(t *testing.T) {
	e := scene(t)
	rapid.Check(t, func(rt *rapid.T) {
		tenths := func(name string, low, high int64) quantity.Amount {
			return quantity.Int(rapid.Int64Range(low, high).Draw(rt, name), quantity.Percent).Div(quantity.Int(10, quantity.Plain))
		}
		moisture := tenths("moisture", 80, 400)
		f := corn("28000", "18.0", at("4.20 $/bu"))
		f.Drafts[0].Gross = f.Drafts[0].Gross.Add(quantity.Int(20*rapid.Int64Range(0, 2000).Draw(rt, "more"), quantity.Lb))
		f.Moisture = settle.Reading{Percent: moisture}
		step := tenths("step", 1, 50).In(quantity.Point)
		w, err := settle.Current.WorthOf(f, e, step)
		if err != nil {
			rt.Fatal(err)
		}
		for _, end := range []settle.End{w.Drier, w.Wetter} {
			f.Moisture = settle.Reading{Percent: end.Moisture}
			s, err := settle.Settle(f, e)
			if err != nil {
				rt.Fatal(err)
			}
			if s.Sheet.Digest() != end.Settlement.Sheet.Digest() {
				rt.Fatalf("at %s the end is not the load settled there", end.Moisture)
			}
			if got := w.Here.Payable.Value().Add(*end.Change.Payable); !got.Equal(s.Payable.Value()) {
				rt.Fatalf("at %s payable is %s, with the change it is %s", end.Moisture, s.Payable.Value(), got)
			}
		}
		if w.Wetter.Change.Payable.Sign() > 0 || w.Drier.Change.Payable.Sign() < 0 {
			rt.Fatalf("wetter brings %s, drier %s", w.Wetter.Change.Payable, w.Drier.Change.Payable)
		}
	})
}
