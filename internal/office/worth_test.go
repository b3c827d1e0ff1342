package office_test

import (
	"errors"
	"strings"
	"testing"
	"time"

	"tenthpoint/internal/dryness"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/scalehouse/instruments"
	"tenthpoint/internal/settle"
	"tenthpoint/schedules"
)

// Net 28,000 lb at 18.0 %: water is 988 lb, handling 140, dry 26,872 lb or
// 479.86 bu; a tenth more takes 1,021 lb of water, 479.27 bu, and charges 3.1
// points on 500 bu in place of 3.0.
func TestWorthOfATenth(t *testing.T) {
	s := housetest.New(t)
	w, err := office.WorthOf(ctx, s.Desk, s.Load(s.Whole()), office.Tenth)
	must(t, err)
	if got := w.Wetter.Change; got.Weight.String() != "-33 lb" || got.Quantity.String() != "-0.59 bu" || got.ToOwner.String() != "-$2.00" || got.Payable != nil {
		t.Errorf("a tenth more: %+v", got)
	}
	if w.Tolerance != nil || w.Band.Stated() {
		t.Errorf("meter M1 is not entered, yet its tolerance is %v", w.Band)
	}
	if text := marksOf(w.Ruler); !strings.Contains(text, "shrink-to, shrink trigger and drying trigger 15.0 %") || !strings.Contains(text, "reading 18.0 %") {
		t.Errorf("the ruler lacks a mark:\n%s", text)
	}
}

// marksOf is the marks of a ruler, a line each: kind and label.
func marksOf(r moisture.Ruler) string {
	var text strings.Builder
	for _, m := range r.Marks {
		text.WriteString(string(m.Kind) + " " + m.Label.String() + "\n")
	}
	return text.String()
}

// Over the meter's tolerance the load is settled at both ends of the band, also
// after its ticket, under the edition kept with it.
func TestWorthOverTheTolerance(t *testing.T) {
	s := housetest.BenchScene(t)
	id := s.Arrive(52300)
	s.Weigh(id, load.Tare, 24300)
	tested, err := scalehouse.TestSample(ctx, s.Desk, s.Load(id), housetest.DialReading("70", 250))
	must(t, err)
	must(t, scalehouse.RecordTest(ctx, s.Desk, id, load.Sample{}, tested))
	_, err = scalehouse.Issue(ctx, s.Desk, id)
	must(t, err)
	w, err := office.WorthOf(ctx, s.Desk, s.Load(id), office.Tenth)
	must(t, err)
	if w.Tolerance == nil || w.Tolerance.Step.String() != "0.5 pt" {
		t.Fatalf("tolerance %+v", w.Tolerance)
	}
	read := w.Band.Reading
	for _, end := range []struct {
		got  quantity.Amount
		want string
	}{{w.Tolerance.Drier.Moisture, "-0.5"}, {w.Tolerance.Wetter.Moisture, "0.5"}} {
		if want := read.Add(quantity.Of(end.want, quantity.Percent)); !end.got.Equal(want) {
			t.Errorf("the band ends at %s, want %s", end.got, want)
		}
	}
	if w.Ruler.Band == nil {
		t.Error("the ruler shows no band")
	}
}

// rulerNow is the ruler of a load under the rates it would be settled by.
func rulerNow(s *scene, l *load.Load) moisture.Ruler {
	s.T.Helper()
	e, _ := office.EditionFor(s.Desk, l)
	r, err := office.Ruler(ctx, s.Desk, l, e)
	must(s.T, err)
	return r
}

func TestWorthWhereTheLoadIsNotSettled(t *testing.T) {
	s := housetest.New(t)
	id := s.Arrive(52300)
	var problems settle.Problems
	if _, err := office.WorthOf(ctx, s.Desk, s.Load(id), office.Tenth); !errors.As(err, &problems) || len(problems) < 2 {
		t.Errorf("a load without tare and sample: %v", err)
	}
	r := rulerNow(s, s.Load(id))
	if len(r.Marks) == 0 || strings.Contains(marksOf(r), "reading") {
		t.Errorf("before the test the ruler is\n%s", marksOf(r))
	}
}

// canadianScene takes hard red spring wheat, and barley, under Canadian rules.
func canadianScene(t *testing.T) *scene { return canadianSceneAt(t, "2025-10-01 12:00") }

func canadianSceneAt(t *testing.T, clock string) *scene {
	s := housetest.New(t)
	editions, err := schedules.Editions()
	must(t, err)
	s.At(clock)
	s.Desk, err = scalehouse.Open(ctx, s.Store, scalehouse.Options{Name: "scale house", Rates: editions, Place: time.UTC, Who: housetest.Manager, Clock: s.Clock()})
	must(t, err)
	s.Answered()
	p := housetest.Profile()
	p.Rules = "canada"
	p.Scales[0].Division, p.Scales[0].Capacity = quantity.Int(10, quantity.Kg), quantity.Int(60000, quantity.Kg)
	p.Grains = []elevator.GrainRule{{Commodity: "wheat-hrs", Schedule: "prairie"}, {Commodity: "barley", Schedule: "main"}}
	must(t, scalehouse.SetProfile(ctx, s.Desk, p))
	return s
}

func canadian(s *scene, commodity, class, moisture string) *load.Load {
	s.T.Helper()
	d := housetest.Details()
	d.Commodity, d.Class = commodity, class
	id, err := scalehouse.OpenLoad(ctx, s.Desk, d)
	must(s.T, err)
	s.Sample(id, moisture)
	return s.Load(id)
}

// Wheat at 14.2 % is straight in Canada, and dry by common practice.
func TestDryEnoughByClass(t *testing.T) {
	s := canadianScene(t)
	must(t, instruments.SetMeter(ctx, s.Desk, meter.Meter{ID: "M1", Model: "Example meter", Method: meter.Direct, Calibration: "1", Tolerance: quantity.Of("0.2", quantity.Point)}))
	must(t, instruments.CheckMeter(ctx, s.Desk, meter.Check{Meter: "M1", Crop: "wheat-hrs", Reference: quantity.Of("14.0", quantity.Percent), Reading: quantity.Of("14.0", quantity.Percent), Sample: quantity.Int(20, quantity.Celsius)}))
	for _, c := range []struct {
		moisture, short, class string
	}{
		{"14.2", "dry", "straight"}, {"14.5", "dry as read, not certain", "straight"}, {"14.6", "not dry as read, not certain", "tough"}, {"17.5", "not dry", "damp"},
	} {
		advice, found, err := office.DryEnough(ctx, s.Desk, canadian(s, "wheat-hrs", "", c.moisture))
		must(t, err)
		if !found || len(advice.Verdicts) != 2 {
			t.Fatalf("%s %%: %+v", c.moisture, advice)
		}
		if v := advice.Verdicts[0]; v.Short().String() != c.short || v.Class != c.class {
			t.Errorf("%s %%: %s, %s; want %s, %s", c.moisture, v.Short(), v.Class, c.short, c.class)
		}
		// The elevator's own limit to buy is not set: it defaults to the trigger of the rates.
		if v := advice.Verdicts[1]; v.Purpose != dryness.ToBuy || v.Limit.Written() != "14.5 %" {
			t.Errorf("to buy: %+v", v)
		}
	}
}

// The classes of barley differ by its own class, and until that is recorded none is guessed; those
// of wheat are all the same.
func TestClassesFollowTheGrainOfTheOrder(t *testing.T) {
	s := canadianScene(t)
	for _, c := range []struct{ commodity, class, want string }{
		{"wheat-hrs", "", "the end of straight 14.5"},
		{"barley", "", ""},
		{"barley", "Barley - Canada Western Malting", "the end of straight 13.5"},
		{"barley", "Barley - Canada Western General Purpose", "the end of straight 14.8"},
	} {
		r := rulerNow(s, canadian(s, c.commodity, c.class, "14.2"))
		text := marksOf(r)
		if has := strings.Contains(text, "the end of straight"); has != (c.want != "") || !strings.Contains(text, c.want) {
			t.Errorf("%s %q: want %q in\n%s", c.commodity, c.class, c.want, text)
		}
	}
}

// The elevator's own limits come before what follows without them.
func TestDryEnoughByHouse(t *testing.T) {
	s := housetest.New(t).As(housetest.Manager)
	id := s.Whole()
	advice, found, err := office.DryEnough(ctx, s.Desk, s.Load(id))
	must(t, err)
	if !found || len(advice.Verdicts) != 1 || advice.Verdicts[0].Limit.Written() != "15.0 %" || advice.Verdicts[0].Dry {
		t.Errorf("without house limits: %+v", advice)
	}
	setup, err := office.BenchSetup(ctx, s.Desk)
	must(t, err)
	setup.Dry = []dryness.Rules{{Crop: "corn", Buy: quantity.Of("18.5", quantity.Percent), StoreLong: quantity.Of("14.0", quantity.Percent), Dries: true, WetPit: "Pit 2"}}
	must(t, scalehouse.SetBench(ctx, s.Desk, setup))
	advice, _, err = office.DryEnough(ctx, s.Desk, s.Load(id))
	must(t, err)
	if len(advice.Verdicts) != 2 || !advice.Verdicts[0].Dry || advice.Verdicts[1].Dry {
		t.Errorf("with house limits: %+v", advice.Verdicts)
	}
	var names []string
	for _, o := range advice.Options {
		names = append(names, o.Name)
	}
	if strings.Join(names, ", ") != "test again, dry, another pit" {
		t.Errorf("options %v", names)
	}
	if _, _, err := office.DryEnough(ctx, s.Desk, s.Load(s.Arrive(40000))); err == nil {
		t.Error("a load without a test was judged")
	}
}
