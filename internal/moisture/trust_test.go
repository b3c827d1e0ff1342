package moisture

import (
	"strings"
	"testing"

	"tenthpoint/internal/message"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

func TestEachDoubtIsFlagged(t *testing.T) {
	good := atBench(t)
	stood := func(state meter.State) Equipment {
		e := good
		e.Statuses = map[string]meter.Status{"bench-1": {State: state, Sentence: message.Words("So it stands.")}, "bench-2": {State: state, Sentence: message.Words("So it stands.")}}
		return e
	}
	bare := good
	bare.Statuses = nil
	for _, c := range []struct {
		name    string
		e       Equipment
		reading Reading
		change  func(r *Reading)
		m       string
		want    []Code
	}{
		{"nothing, by dial", good, byDial(1, "30"), nil, "14", nil},
		{"nothing, direct", good, direct(1, "14"), nil, "14", nil},
		{"meter due is not a doubt", stood(meter.Due), byDial(1, "30"), nil, "14", nil},

		{"at 40 °F", good, byDial(1, "30"), func(r *Reading) { r.Sample, r.Room = degF("40"), degF("55") }, "14", nil},
		{"below 40 °F", good, byDial(1, "30"), func(r *Reading) { r.Sample, r.Room = degF("39.9"), degF("55") }, "14", []Code{Cold}},
		{"4 °C is below 40 °F", good, direct(1, "14"), func(r *Reading) { r.Sample, r.Room = degC("4"), degC("12") }, "14", []Code{Cold}},
		{"4.5 °C is not", good, direct(1, "14"), func(r *Reading) { r.Sample, r.Room = degC("4.5"), degC("12") }, "14", nil},
		{"hot from a dryer", good, byDial(1, "30"), func(r *Reading) { r.FromDryer = true }, "14", []Code{FromDryer}},
		{"25 %", good, direct(1, "25"), nil, "25.04", nil},
		{"over 25 %", good, direct(1, "25.1"), nil, "25.05", []Code{EstimateOnly}},

		{"chart's mass", good, byDial(1, "30"), func(r *Reading) { r.Mass = gram("250.5") }, "14", nil},
		{"half a gram over is enough", good, byDial(1, "30"), func(r *Reading) { r.Mass = gram("250.6") }, "14", []Code{WrongMass}},
		{"mass of wet corn", good, byDial(1, "30"), func(r *Reading) { r.Mass = gram("175") }, "14", []Code{WrongMass}},
		{"posted mass", good, direct(1, "14"), func(r *Reading) { r.Mass = gram("399") }, "14", []Code{WrongMass}},
		{"mass not recorded, direct", good, direct(1, "14"), func(r *Reading) { r.Mass = quantity.Amount{} }, "14", nil},

		{"20 °F apart", good, byDial(1, "30"), func(r *Reading) { r.Sample, r.Room = degF("70"), degF("90") }, "14", nil},
		{"more than 20 °F apart", good, byDial(1, "30"), func(r *Reading) { r.Sample, r.Room = degF("69.9"), degF("90") }, "14", []Code{MeterToGrain}},
		{"more than 20 °F apart, grain hotter", good, byDial(1, "30"), func(r *Reading) { r.Sample, r.Room = degF("80"), degF("59.9") }, "14", []Code{MeterToGrain}},
		{"10 °C apart on two scales", good, direct(1, "14"), func(r *Reading) { r.Sample, r.Room = degF("68"), degC("30") }, "14", nil},
		{"more on two scales", good, direct(1, "14"), func(r *Reading) { r.Sample, r.Room = degF("67.9"), degC("30") }, "14", []Code{MeterToGrain}},
		{"room by the chart", good, byDial(1, "30"), func(r *Reading) { r.Room = degF("49.9") }, "14", []Code{RoomOutside}},
		{"room by the meter", good, direct(1, "14"), func(r *Reading) { r.Sample, r.Room = degC("25"), degC("30.1") }, "14", []Code{RoomOutside}},
		{"no room temperature", good, byDial(1, "30"), func(r *Reading) { r.Room = quantity.Amount{} }, "14", []Code{NoRoom}},
		{"no sample temperature", good, direct(1, "14"), func(r *Reading) { r.Sample = quantity.Amount{} }, "14", []Code{NoSample}},

		{"posted moisture", good, direct(1, "7.9"), nil, "7.9", []Code{OutsidePosted}},
		{"posted temperature", good, direct(1, "14"), func(r *Reading) { r.Sample, r.Room = degF("31.9"), degC("9") }, "14", []Code{Cold, RoomOutside, OutsidePosted}},
		{"another calibration", good, direct(1, "14"), func(r *Reading) { r.Calibration = "B-6" }, "14", []Code{OtherEdition}},

		{"meter failed", stood(meter.Failed), byDial(1, "30"), nil, "14", []Code{MeterFailed}},
		{"meter overdue", stood(meter.Overdue), byDial(1, "30"), nil, "14", []Code{MeterOverdue}},
		{"never checked", stood(meter.Never), byDial(1, "30"), nil, "14", []Code{NeverChecked}},
		{"nothing known of checks", bare, byDial(1, "30"), nil, "14", []Code{NeverChecked}},

		{"oven in the cold", bare, Reading{Seq: 1, Method: meter.ByOven, Sample: degF("10")}, nil, "30", nil},
		{"typed", bare, Reading{Seq: 1, Method: meter.Typed, Reason: "certificate 118"}, nil, "30", []Code{ByHand}},
	} {
		if c.change != nil {
			c.change(&c.reading)
		}
		expectFlags(t, c.name, DefaultTrust().Flags(c.reading, pct(c.m), c.e), c.want...)
	}
}

func TestExampleChartIsFlagged(t *testing.T) {
	shelf, err := chart.NewSet(smallChartFile(t))
	if err != nil {
		t.Fatal(err)
	}
	e := atBench(t)
	e.Charts = shelf
	flags := DefaultTrust().Flags(byDial(1, "30"), pct("14"), e)
	expectFlags(t, "example", flags, InventedChart)
	if !strings.Contains(flags[0].Sentence(), "example - not for trade") {
		t.Errorf("flag says %q", flags[0].Sentence())
	}
}

func TestFlagSaysWhatWhyAndWhatToDo(t *testing.T) {
	r := byDial(2, "30")
	r.Sample, r.Room = degC("3"), degF("50")
	flags := DefaultTrust().Flags(r, pct("14"), atBench(t))
	const want = "Test 2: The sample was at 3 °C, below 40 °F. Meters are unreliable on cold grain, and moisture gathers on it when it meets warm air. Let it warm in a sealed jar and test again."
	if len(flags) != 1 || flags[0].Sentence() != want {
		t.Errorf("flags %v, want %q", flags, want)
	}
}

func TestHouseSaysWhatStopsATicket(t *testing.T) {
	e := atBench(t)
	e.Statuses = nil
	tests := Tests{Readings: directs("14.2")}
	h := house()
	var first worksheet.Sheet
	r, err := tests.Determine(&first, e, h)
	if err != nil || r.Stopped() {
		t.Errorf("a house that does not block on it was stopped: %v, %v", r.Flags, err)
	}
	h.Trust.Blocks = []Code{NeverChecked}
	var second worksheet.Sheet
	if r, err = tests.Determine(&second, e, h); err != nil || !r.Stopped() {
		t.Errorf("a house that blocks on it was not: %v, %v", r.Flags, err)
	}
	tests.Overrides = []Override{{Code: NeverChecked, By: "M. Ager", Reason: "new meter, check tonight."}}
	var third worksheet.Sheet
	r, err = tests.Determine(&third, e, h)
	if err != nil || r.Stopped() {
		t.Fatalf("the override did not let it through: %v, %v", r.Flags, err)
	}
	if f := r.Flags[0]; !f.Blocking || !strings.HasSuffix(f.Sentence(), "Overridden by M. Ager: new meter, check tonight.") {
		t.Errorf("the flag reads %q", f.Sentence())
	}
}

func TestOverridesThatCannotStand(t *testing.T) {
	flags := []Flag{{Code: WrongMass, Test: 1, What: message.Words("Wrong."), Do: message.Words("Again."), Blocking: true, Final: true}, {Code: Cold, Test: 2, Blocking: true}}
	after, errs := ApplyOverrides(flags, []Override{
		{Code: WrongMass, Test: 1, By: "M", Reason: "hurry"},
		{Code: Cold, Test: 1, By: "M", Reason: "hurry"},
		{Code: Cold, Test: 2, By: "M", Reason: " "},
		{Code: Cold, Test: 2, Reason: "hurry"},
	})
	expectErrors(t, "overrides", errs, errortest.Invalid("wrong-mass", "1"), errortest.Invalid("cold", "1"),
		errortest.Invalid(), errortest.Invalid())
	if !Stopped(after) || after[1].Override != nil {
		t.Errorf("flags %v", after)
	}
	after, errs = ApplyOverrides(flags, []Override{{Code: Cold, Test: 2, By: "M", Reason: "warmed by hand"}})
	if len(errs) != 0 || after[1].Override == nil || flags[1].Override != nil {
		t.Errorf("override %v, %v; the flags given must stay as they were", after, errs)
	}
}

func TestWrongMassStopsWhateverTheHouseSays(t *testing.T) {
	r := byDial(1, "30")
	r.Mass = gram("175")
	h := house()
	h.Trust.Blocks = nil
	var s worksheet.Sheet
	got, err := Tests{Readings: []Reading{r}}.Determine(&s, atBench(t), h)
	if err != nil || !got.Stopped() || !got.Flags[0].Final {
		t.Errorf("flags %v, %v", got.Flags, err)
	}
}

func TestFlagsComeInTheirOrder(t *testing.T) {
	e := atBench(t)
	e.Statuses = nil
	a, b := direct(1, "26"), direct(2, "27")
	a.FromDryer, b.Mass = true, gram("300")
	var s worksheet.Sheet
	r, err := Tests{Readings: []Reading{a, b}}.Determine(&s, e, house())
	if err != nil {
		t.Fatal(err)
	}
	expectFlags(t, "order", r.Flags, WrongMass, NeverChecked, FromDryer, EstimateOnly, EstimateOnly, WideSpread)
	if len(Codes()) != 18 {
		t.Errorf("%d codes are in the order; a new one must be put there", len(Codes()))
	}
}

func TestTrustCheck(t *testing.T) {
	expectErrors(t, "default", DefaultTrust().Check())
	expectErrors(t, "nothing set", Trust{}.Check(), errortest.Invalid("0"), errortest.Invalid("0"), errortest.Invalid("0"))
	bad := Trust{Cold: pct("4"), Estimate: degF("25"), MassWithin: gram("-1"), Blocks: []Code{Cold, "mood"}}
	expectErrors(t, "bad", bad.Check(), errortest.Invalid(), errortest.Invalid(), errortest.Invalid(), errortest.Invalid("mood"))
}
