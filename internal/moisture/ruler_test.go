package moisture

import (
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

func limit(name, at string) Limit { return Limit{Name: message.Words(name), At: pct(at)} }

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

// at is the place of a moisture in thousandths of the ruler, rounded to the
// nearest.
func at(r Ruler, m quantity.Amount) string {
	return quantity.To("1", quantity.HalfUp).Apply(r.Part(m).Mul(quantity.Int(1000, quantity.Plain))).String()
}

// From 14 to 20, six points: 15.5 is a quarter of the way, 18.2 is 0.7.
func TestRulerByHand(t *testing.T) {
	r := NewRuler(BandOf(pct("18.2"), pt("0.5")), []Limit{limit("drying trigger", "15.5"), limit("shrink-to", "15.0"), limit("shrink trigger", "15.5")})
	if r.Low.String() != "14 %" || r.High.String() != "20 %" {
		t.Fatalf("runs from %s to %s", r.Low, r.High)
	}
	limits := marksOf(r, LimitMark)
	if len(limits) != 2 || limits[0].Label.String() != "shrink-to 15.0 %" || at(r, limits[0].At) != "167" ||
		limits[1].Label.String() != "drying trigger and shrink trigger 15.5 %" || at(r, limits[1].At) != "250" {
		t.Errorf("limits %+v", limits)
	}
	if read := marksOf(r, ReadingMark); len(read) != 1 || at(r, read[0].At) != "700" || read[0].Label.String() != "18.2 %" {
		t.Errorf("reading %+v", read)
	}
	if at(r, r.Band.From) != "617" || at(r, r.Band.To) != "783" || r.Band.Label.String() != "the meter's tolerance" {
		t.Errorf("band %+v", r.Band)
	}
	if points, tenths := marksOf(r, PointMark), marksOf(r, TenthMark); len(points) != 7 || len(tenths) != 54 || points[1].Label.String() != "15" || !points[1].At.Equal(pct("15")) {
		t.Errorf("%d points, %d tenths; the second is %+v", len(points), len(tenths), points[1])
	}
	if r.MarkFree(pct("15.5"), message.Words("nothing taken")); at(r, r.Free.From) != "0" || at(r, r.Free.To) != "250" || r.Free.Label.String() != "nothing taken" {
		t.Errorf("free %+v", r.Free)
	}
}

func TestRulerWithoutReadingOrLimits(t *testing.T) {
	if r := NewRuler(Band{}, nil); len(r.Marks) != 0 {
		t.Errorf("nothing makes %+v", r)
	}
	if r := NewRuler(Band{}, []Limit{limit("shrink-to", "13")}); len(marksOf(r, ReadingMark)) != 0 || r.Points() != shortestRuler {
		t.Errorf("limits alone make %+v", r)
	}
	if r := NewRuler(BandOf(pct("14.2"), quantity.Amount{}), nil); r.Band != nil || len(marksOf(r, ReadingMark)) != 1 {
		t.Errorf("a reading of unknown tolerance makes %+v", r)
	}
}

// A long ruler keeps its figures apart.
func TestLongRulerLeavesTenthsOut(t *testing.T) {
	r := NewRuler(BandOf(pct("33.4"), pt("0.5")), []Limit{limit("shrink-to", "15.0")})
	if tenths := marksOf(r, TenthMark); len(tenths) > r.Points() {
		t.Errorf("%d strokes on %d points", len(tenths), r.Points())
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
			limits = append(limits, Limit{Name: message.Words("limit"), At: percent("limit")})
		}
		reading := percent("reading")
		r := NewRuler(BandOf(reading, hundredths(rapid.Int64Range(1, 150).Draw(t, "tolerance"), quantity.Point)), limits)
		before := quantity.Zero(quantity.Percent)
		for _, m := range r.Marks {
			if part := r.Part(m.At); part.Sign() < 0 || part.More(quantity.Int(1, quantity.Plain)) || m.At.Less(r.Low) || m.At.More(r.High) {
				t.Fatalf("mark %+v is off the ruler", m)
			}
			if m.Kind == LimitMark {
				if m.At.Less(before) {
					t.Fatalf("mark %+v comes after %s", m, before)
				}
				before = m.At
			}
		}
	})
}
