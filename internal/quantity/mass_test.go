package quantity

import (
	"tenthpoint/internal/message/errortest"
	"testing"

	"pgregory.net/rapid"
)

// converted is a weight in another unit of weight.
func converted(a Amount, to Unit) (Amount, error) {
	factor, err := MassFactor(a.Unit(), to)
	return a.Mul(factor), err
}

// TestMassFactor: the pound is 0.45359237 kg by definition.
func TestMassFactor(t *testing.T) {
	for _, c := range []struct {
		from Amount
		want Amount
	}{
		{Int(1, Lb), Of("0.45359237", Kg)},
		{Of("0.45359237", Kg), Int(1, Lb)},
		{Int(52300, Lb), Int(523, Cwt)},
		{Int(523, Cwt), Int(52300, Lb)},
		{Int(1, Tonne), Int(1000, Kg)},
		{Int(250, Gram), Of("0.25", Kg)},
		{Int(1, Lb), Of("453.59237", Gram)},
		{Of("45359.237", Tonne), Int(1000000, Cwt)},
		{Int(7, Lb), Int(7, Lb)},
	} {
		got, err := converted(c.from, c.want.Unit())
		if err != nil || !got.Equal(c.want) {
			t.Errorf("%s is %s, %v; want %s", c.from, got, err, c.want)
		}
	}
	factor, err := MassFactor(Lb, Cwt)
	if err != nil || !factor.Equal(Of("0.01", Cwt.Per(Lb))) {
		t.Error(factor, err)
	}
}

func TestMassFactorRefusesWhatIsNoWeight(t *testing.T) {
	_, err := MassFactor(Bushel, Lb)
	if !errortest.Invalid("bu", "lb").Met(err) {
		t.Error(err)
	}
	if _, err := MassFactor(Lb, Bushel); err == nil {
		t.Error("pounds turned into bushels without a bushel weight")
	}
}

func TestMassFactorThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		masses := rapid.SampledFrom([]Unit{Lb, Kg, Cwt, Tonne, Gram})
		from, via, to := masses.Draw(t, "from"), masses.Draw(t, "via"), masses.Draw(t, "to")
		a := drawFraction(t, "weight", from)
		direct, _ := converted(a, to)
		first, _ := converted(a, via)
		second, _ := converted(first, to)
		if !direct.Equal(second) {
			t.Fatalf("%s is %s, and by way of %s %s", a, direct, via, second)
		}
		if back, _ := converted(direct, from); !back.Equal(a) {
			t.Fatalf("%s came back as %s", a, back)
		}
	})
}

// TestTestWeightConverts: by definition of pound, inch and Winchester bushel,
// 60 lb/bu is 77.231... kg/hL.
func TestTestWeightConverts(t *testing.T) {
	bushelLitres := Of("2150.42", Plain).Mul(Of("0.016387064", Plain)) // cubic inches, litres in one
	got, err := TestWeight(Int(60, LbPerBushel), KgPerHL)
	want := Int(60, KgPerHL).Mul(Of("45.359237", Plain)).Div(bushelLitres)
	if err != nil || !got.Equal(want) || To("0.001", HalfUp).Apply(got).String() != "77.231 kg/hL" {
		t.Errorf("60 lb/bu is %s, %v; want %s", got, err, want)
	}
	for _, u := range []Unit{LbPerBushel, KgPerHL} {
		if same, err := TestWeight(Int(50, u), u); err != nil || !same.Equal(Int(50, u)) {
			t.Error(same, err)
		}
	}
	if _, err := TestWeight(Int(50, Lb), KgPerHL); !errortest.Invalid("lb", "kg/hL", "lb/bu").Met(err) {
		t.Error(err)
	}
	if _, err := TestWeight(Int(50, Lb), Lb); err == nil {
		t.Error("pounds are no test weight")
	}
	rapid.Check(t, func(t *rapid.T) {
		a := drawFraction(t, "test weight", LbPerBushel)
		metric, _ := TestWeight(a, KgPerHL)
		if back, _ := TestWeight(metric, LbPerBushel); !back.Equal(a) {
			t.Fatalf("%s came back as %s", a, back)
		}
	})
}
