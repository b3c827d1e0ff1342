package shape

import (
	"errors"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

func ft(text string) quantity.Amount { return quantity.Of(text, quantity.Foot) }
func m(text string) quantity.Amount  { return quantity.Of(text, quantity.Metre) }

var cents = quantity.To("0.01", quantity.HalfUp)

// Worked by the bureau's rule: level grain, and the cone on top of it as a third.
func TestOfficialMeasure(t *testing.T) {
	for _, c := range []struct{ diameter, depth, want string }{
		{"30", "20", "11364.19"}, {"36", "24", "19637.32"},
	} {
		s := Shape{Form: Round, Diameter: ft(c.diameter), Wall: ft("40")}
		r, err := s.Work(Measure{Depth: ft(c.depth), TestWeight: quantity.Of("56", quantity.LbPerBushel)}, "corn")
		if err != nil || !cents.Apply(r.Bulk).Equal(quantity.Of(c.want, quantity.Bushel)) {
			t.Errorf("%s ft across, %s ft deep: %s, %v; want %s", c.diameter, c.depth, r.Bulk, err, c.want)
		}
	}
	for _, c := range []struct{ diameter, commodity, want string }{
		{"30", "soybeans", "1420.52"}, {"36", "corn", "1963.73"},
	} {
		s := Shape{Form: Round, Diameter: ft(c.diameter), Wall: ft("40")}
		r, err := s.Work(Measure{PeakGuessed: true, TestWeight: quantity.Of("56", quantity.LbPerBushel)}, c.commodity)
		if err != nil || !cents.Apply(r.Bulk).Equal(quantity.Of(c.want, quantity.Bushel)) {
			t.Errorf("the peak of %s: %s, %v; want %s", c.commodity, r.Bulk, err, c.want)
		}
	}
}

// 11,364.18822 bu of volume at 56 lb are 636,394.54 lb; packed by 5 % they are a twentieth more.
func TestPackAddsWeight(t *testing.T) {
	s := Shape{Form: Round, Diameter: ft("30"), Wall: ft("40")}
	r, err := s.Work(Measure{Depth: ft("20"), TestWeight: quantity.Of("56", quantity.LbPerBushel), Pack: quantity.Int(5, quantity.Percent), PackSource: "table of the bureau"}, "corn")
	if err != nil || cents.Apply(r.Loose).Figure() != "636,394.54" {
		t.Errorf("loose %s, %v", r.Loose, err)
	}
	if !r.Packed.Mul(quantity.Int(100, quantity.Plain)).Equal(r.Loose.Mul(quantity.Int(105, quantity.Plain))) {
		t.Errorf("packed %s of %s", r.Packed, r.Loose)
	}
}

// A metric bin: 100 square metres, 10 m deep, 75 kg/hL are 750 t.
func TestMetricBin(t *testing.T) {
	s := Shape{Form: Flat, Length: m("20"), Width: m("5"), Wall: m("12")}
	r, err := s.Work(Measure{Depth: m("10"), TestWeight: quantity.Of("75", quantity.KgPerHL)}, "wheat-hrw")
	if err != nil || !r.Packed.Equal(quantity.Int(750_000, quantity.Kg)) {
		t.Errorf("%s, %v", r.Packed, err)
	}
}

// A hopper is a cone below a cylinder: 12 ft across, 6 ft of cone and 18 ft of wall are
// 12 x 12 x 0.7854 x (18 + 2) cubic feet.
func TestHopper(t *testing.T) {
	s := Shape{Form: Hopper, Diameter: ft("12"), Wall: ft("18"), Cone: ft("6")}
	if want := quantity.Of("2261.952", quantity.Plain); !s.Room().In(quantity.Plain).Equal(want) {
		t.Errorf("room %s, want %s", s.Room(), want)
	}
	// Half the depth of a cone is an eighth of it.
	whole, half := s.Level(ft("6")), s.Level(ft("3"))
	if !half.Mul(quantity.Int(8, quantity.Plain)).Equal(whole) {
		t.Errorf("half the cone is %s of %s", half, whole)
	}
}

func drawShape(t *rapid.T) Shape {
	length := func(name string) quantity.Amount {
		return quantity.Int(rapid.Int64Range(1, 120).Draw(t, name), quantity.Foot)
	}
	switch form := rapid.SampledFrom(Forms()).Draw(t, "form"); form {
	case Round:
		return Shape{Form: form, Diameter: length("diameter"), Wall: length("wall"), Peak: length("peak")}
	case Hopper:
		return Shape{Form: form, Diameter: length("diameter"), Wall: length("wall"), Cone: length("cone")}
	case Pile:
		return Shape{Form: form, Diameter: length("diameter"), Peak: length("peak")}
	default:
		return Shape{Form: form, Length: length("length"), Width: length("width"), Wall: length("wall")}
	}
}

// The picture's level is the highest whole thousandth whose room the grain fills, and a weight's
// room weighs that weight again.
func TestLevelOfAVolume(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawShape(t)
		if err := s.Check(); err != nil {
			t.Fatal(err)
		}
		at := rapid.IntRange(0, 1000).Draw(t, "level")
		depth := s.Height().Mul(quantity.Int(int64(at), quantity.Plain)).Div(quantity.Int(1000, quantity.Plain))
		if got := s.Filled(s.Level(depth)); got != at {
			t.Fatalf("%+v: the room below %s stands %d of 1000 high, want %d", s, depth, got, at)
		}
		weight, tw := quantity.Int(rapid.Int64Range(1, 5_000_000).Draw(t, "weight"), quantity.Lb), quantity.Of("56.5", quantity.LbPerBushel)
		room, err := s.RoomOf(weight, tw)
		if err != nil {
			t.Fatal(err)
		}
		if again, err := Weight(room, tw); err != nil || !again.Equal(weight) {
			t.Fatalf("%s weighs %s again, %v", weight, again, err)
		}
	})
}

func TestShapesThatCannotBe(t *testing.T) {
	for name, s := range map[string]Shape{
		"no form":         {Diameter: ft("30")},
		"unknown form":    {Form: "square"},
		"no wall":         {Form: Round, Diameter: ft("30")},
		"no cone":         {Form: Hopper, Diameter: ft("30"), Wall: ft("30")},
		"a cone too many": {Form: Round, Diameter: ft("30"), Wall: ft("30"), Cone: ft("3")},
		"two units":       {Form: Round, Diameter: ft("30"), Wall: m("9")},
		"in pounds":       {Form: Round, Diameter: quantity.Int(30, quantity.Lb), Wall: ft("9")},
		"below zero":      {Form: Flat, Length: ft("30"), Width: ft("-3"), Wall: ft("9")},
		"too long":        {Form: Flat, Length: ft("3000"), Width: ft("3"), Wall: ft("9")},
		"a flat pile":     {Form: Pile, Diameter: ft("30")},
	} {
		if err := s.Check(); !errors.Is(err, message.Invalid) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if err := (Shape{}).Check(); err != nil {
		t.Errorf("a bin that nobody measured: %v", err)
	}
}

func TestMeasuresThatCannotBe(t *testing.T) {
	round := Shape{Form: Round, Diameter: ft("30"), Wall: ft("20")}
	pile := Shape{Form: Pile, Diameter: ft("30"), Peak: ft("10")}
	tw := quantity.Of("56", quantity.LbPerBushel)
	for name, c := range map[string]struct {
		shape   Shape
		measure Measure
		grain   string
		kind    message.Kind
	}{
		"never measured":        {Shape{}, Measure{Depth: ft("3"), TestWeight: tw}, "corn", message.Refused},
		"above the eave":        {round, Measure{Depth: ft("20.5"), TestWeight: tw}, "corn", message.Invalid},
		"other unit":            {round, Measure{Depth: m("2"), TestWeight: tw}, "corn", message.Invalid},
		"no test weight":        {round, Measure{Depth: ft("2")}, "corn", message.Invalid},
		"a deep hole":           {round, Measure{Depth: ft("2"), Peak: ft("-9"), TestWeight: tw}, "corn", message.Invalid},
		"pack of no table":      {round, Measure{Depth: ft("2"), TestWeight: tw, Pack: quantity.Int(5, quantity.Percent)}, "corn", message.Invalid},
		"pack of half":          {round, Measure{Depth: ft("2"), TestWeight: tw, Pack: quantity.Int(50, quantity.Percent), PackSource: "x"}, "corn", message.Invalid},
		"peak twice":            {round, Measure{Depth: ft("2"), TestWeight: tw, Peak: ft("1"), PeakGuessed: true}, "corn", message.Invalid},
		"no peak of the grain":  {round, Measure{Depth: ft("2"), TestWeight: tw, PeakGuessed: true}, "oats", message.Refused},
		"a pile with a depth":   {pile, Measure{Depth: ft("2"), Peak: ft("3"), TestWeight: tw}, "corn", message.Invalid},
		"a pile above its size": {pile, Measure{Peak: ft("30"), TestWeight: tw}, "corn", message.Invalid},
	} {
		if _, err := c.shape.Work(c.measure, c.grain); !errors.Is(err, c.kind) {
			t.Errorf("%s: %v", name, err)
		}
	}
}
