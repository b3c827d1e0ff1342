package bench

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/quantity"
)

func limit(name, at string) Limit { return Limit{Name: name, At: pct(at)} }

func hundredths(n int64, unit quantity.Unit) quantity.Amount {
	return quantity.Int(n, unit).Div(quantity.Int(100, quantity.Plain))
}

func marksOf(r Ruler, kind RulerMarkKind) []RulerMark {
	var out []RulerMark
	for _, m := range r.Marks {
		if m.Kind == kind {
			out = append(out, m)
		}
	}
	return out
}

// From 14 to 20, six points: 15.5 is a quarter of the way, 18.2 is 0.7.
func TestRulerByHand(t *testing.T) {
	r := NewRuler(BandOf(pct("18.2"), pt("0.5")), []Limit{limit("drying trigger", "15.5"), limit("shrink-to", "15.0"), limit("shrink trigger", "15.5")})
	if r.Low.String() != "14 %" || r.High.String() != "20 %" {
		t.Fatalf("runs from %s to %s", r.Low, r.High)
	}
	limits := marksOf(r, LimitMark)
	if len(limits) != 2 || limits[0].Label != "shrink-to 15.0 %" || limits[0].At != 167 ||
		limits[1].Label != "drying trigger and shrink trigger 15.5 %" || limits[1].At != 250 {
		t.Errorf("limits %+v", limits)
	}
	if read := marksOf(r, ReadingMark); len(read) != 1 || read[0].At != 700 || read[0].Label != "18.2 %" {
		t.Errorf("reading %+v", read)
	}
	if *r.Band != (RulerStretch{617, 783, "the meter's tolerance"}) {
		t.Errorf("band %+v", r.Band)
	}
	if points, tenths := marksOf(r, PointMark), marksOf(r, TenthMark); len(points) != 7 || len(tenths) != 54 || points[1].Label != "15" || points[1].At != 166 {
		t.Errorf("%d points, %d tenths; the second is %+v", len(points), len(tenths), points[1])
	}
	if r.Leave(pct("15.5"), "nothing taken"); *r.Free != (RulerStretch{0, 250, "nothing taken"}) {
		t.Errorf("free %+v", r.Free)
	}
}

func TestRulerWithoutReadingOrLimits(t *testing.T) {
	if r := NewRuler(Band{}, nil); len(r.Marks) != 0 || r.Text(60) != "" {
		t.Errorf("nothing makes %+v", r)
	}
	if r := NewRuler(Band{}, []Limit{limit("shrink-to", "13")}); len(marksOf(r, ReadingMark)) != 0 || r.points() != shortestRuler {
		t.Errorf("limits alone make %+v", r)
	}
	if r := NewRuler(BandOf(pct("14.2"), quantity.Amount{}), nil); r.Band != nil || len(marksOf(r, ReadingMark)) != 1 {
		t.Errorf("a reading of unknown tolerance makes %+v", r)
	}
}

// A long ruler keeps its figures apart.
func TestLongRulerLeavesTenthsOut(t *testing.T) {
	r := NewRuler(BandOf(pct("33.4"), pt("0.5")), []Limit{limit("shrink-to", "15.0")})
	if tenths := marksOf(r, TenthMark); len(tenths) > r.points() {
		t.Errorf("%d strokes on %d points", len(tenths), r.points())
	}
	if points := marksOf(r, PointMark); len(points) > tenthsUpTo {
		t.Errorf("%d figures", len(points))
	}
}

// Whatever is laid on a ruler lies on it, in the order of the moistures.
func TestRulerHoldsEverything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		percent := func(name string) quantity.Amount {
			return hundredths(rapid.Int64Range(1, 9999).Draw(t, name), quantity.Percent)
		}
		var limits []Limit
		for range rapid.IntRange(0, 5).Draw(t, "limits") {
			limits = append(limits, Limit{Name: "limit", At: percent("limit")})
		}
		reading := percent("reading")
		r := NewRuler(BandOf(reading, hundredths(rapid.Int64Range(1, 150).Draw(t, "tolerance"), quantity.Point)), limits)
		before := -1
		for _, m := range r.Marks {
			if m.At < 0 || m.At > 1000 {
				t.Fatalf("mark %+v is off the ruler", m)
			}
			if m.Kind == LimitMark {
				if m.At < before {
					t.Fatalf("mark %+v comes after %d", m, before)
				}
				before = m.At
			}
		}
		if r.Text(72) == "" {
			t.Fatal("nothing drawn")
		}
	})
}

func TestRulerText(t *testing.T) {
	r := NewRuler(BandOf(pct("18.2"), pt("0.5")), []Limit{limit("shrink-to", "15.0"), limit("drying trigger", "19.0")})
	want := strings.TrimPrefix(`
14        15        16        17        18        19        20
|.........|.........|.........|......[====*====]..|.........|
          ^ shrink-to 15.0 %
                            drying trigger 19.0 % ^
                              read 18.2 % ^
`, "\n")
	for _, width := range []int{61, 79} { // six points of ten letters either way
		if got := r.Text(width); got != want {
			t.Errorf("drawn\n%s\nwant\n%s", got, want)
		}
	}
}
