package moisture

import (
	"encoding/json"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

func TestEachMethodGivesItsMoisture(t *testing.T) {
	e := atBench(t)
	oven := Reading{Seq: 1, Method: meter.ByOven, Crop: "corn", Day: day, Tester: "A. Tester",
		Dish: Dish{Wet: gram("45.5"), Dry: gram("42.5"), Tare: gram("25.5")}}
	typed := Reading{Seq: 1, Method: meter.Typed, Crop: "corn", Day: day, Tester: "A. Tester", Percent: pct("15.3"), Reason: "certificate 118"}
	for _, c := range []struct {
		name    string
		reading Reading
		want    string
		source  string
	}{
		{"dial", byDial(1, "25"), "12.5 %", "chart small"},
		{"direct", direct(1, "15.3"), "15.3 %", "A. Tester, meter bench-2 (Example digital meter B), calibration B-7"},
		// 3 g of water in 20 g of wet grain
		{"oven", oven, "15 %", "moisture, wet basis: water lost over wet grain"},
		{"typed", typed, "15.3 %", "A. Tester, typed by hand"},
	} {
		var s worksheet.Sheet
		step, err := c.reading.Work(&s, e)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if step.Value().String() != c.want || step.Source().String() != c.source || step.ID() != "moisture.test1" {
			t.Errorf("%s: %s is %s [%s], want %s [%s]", c.name, step.ID(), step.Value(), step.Source(), c.want, c.source)
		}
	}
}

// Oven tests by hand: moisture wet basis, water lost over wet grain.
func TestOvenByHand(t *testing.T) {
	for _, c := range []struct{ wet, dry, tare, want string }{
		{"115", "100", "15", "15 %"},             // 15 of 100 g
		{"30.5", "28.1", "10.5", "12 %"},         // 2.4 of 20 g
		{"25", "25", "10", "0 %"},                // nothing lost
		{"13", "12", "10", "33.333333… %"},       // 1 of 3 g, not 50 % as on the dry basis
		{"15.5", "14.725", "0", "5 %"},           // no dish
		{"17.2345", "16.2345", "7.2345", "10 %"}, // 1 of 10 g
	} {
		var s worksheet.Sheet
		r := Reading{Seq: 1, Method: meter.ByOven, Crop: "corn", Day: day, Tester: "A. Tester", Dish: Dish{gram(c.wet), gram(c.dry), gram(c.tare)}}
		step, err := r.Work(&s, Equipment{})
		if err != nil || step.Value().String() != c.want {
			t.Errorf("wet %s dry %s tare %s: %v, %v; want %s", c.wet, c.dry, c.tare, step, err, c.want)
		}
	}
}

// Moisture by oven and dry matter make the whole of the wet grain.
func TestOvenAndDryMatterMakeTheWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mg := func(name string, low, high int64) quantity.Amount {
			return quantity.Of("0.001", quantity.Gram).Mul(quantity.Int(rapid.Int64Range(low, high).Draw(t, name), quantity.Plain))
		}
		tare, solids, water := mg("tare", 0, 50000), mg("solids", 1, 50000), mg("water", 0, 50000)
		r := Reading{Seq: 1, Method: meter.ByOven, Crop: "corn", Day: day, Tester: "A", Dish: Dish{Wet: tare.Add(solids).Add(water), Dry: tare.Add(solids), Tare: tare}}
		var s worksheet.Sheet
		step, err := r.Work(&s, Equipment{})
		if err != nil {
			t.Fatal(err)
		}
		share := solids.Div(solids.Add(water)).Mul(pct("100"))
		if !step.Value().Add(share).Equal(pct("100")) {
			t.Fatalf("moisture %s and dry matter %s", step.Value(), share)
		}
	})
}

func TestReadingCheckNamesEveryFault(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(r *Reading)
		want   []errortest.Want
	}{
		{"nothing", func(*Reading) {}, nil},
		{"everything", func(r *Reading) { *r = Reading{Method: meter.ByDial} }, []errortest.Want{
			errortest.Invalid(), errortest.Invalid(), errortest.Invalid(), errortest.Invalid(), errortest.Invalid(),
			errortest.Invalid(), errortest.Invalid(), errortest.Invalid(), errortest.Invalid()}},
		{"no method", func(r *Reading) { r.Method = "nose" }, []errortest.Want{errortest.Invalid("nose")}},
		{"mass in lb", func(r *Reading) { r.Mass = quantity.Int(1, quantity.Lb) }, []errortest.Want{errortest.Invalid("1", "1 lb")}},
		{"temperature in %", func(r *Reading) { r.Room = pct("20") }, []errortest.Want{errortest.Invalid("room", "20 %")}},
		{"direct without moisture", func(r *Reading) { *r = direct(1, "15"); r.Percent = quantity.Amount{} }, []errortest.Want{errortest.Invalid()}},
		{"direct of 100 %", func(r *Reading) { *r = direct(1, "100") }, []errortest.Want{errortest.Invalid("100 %")}},
		{"direct of 0 %", func(r *Reading) { *r = direct(1, "0") }, []errortest.Want{errortest.Invalid("0 %")}},
		{"direct with a chart", func(r *Reading) { *r = direct(1, "15"); r.Chart = "small" }, []errortest.Want{errortest.Invalid()}},
		{"typed without reason", func(r *Reading) { r.Method, r.Percent, r.Reason = meter.Typed, pct("15"), "  " }, []errortest.Want{errortest.Invalid()}},
		{"oven without dish", func(r *Reading) { r.Method = meter.ByOven }, []errortest.Want{errortest.Invalid()}},
		{"oven, nothing in it", func(r *Reading) {
			r.Method, r.Dish = meter.ByOven, Dish{gram("10"), gram("10"), gram("10")}
		}, []errortest.Want{errortest.Invalid(), errortest.Invalid()}},
		{"oven gains", func(r *Reading) {
			r.Method, r.Dish = meter.ByOven, Dish{gram("20"), gram("21"), gram("10")}
		}, []errortest.Want{errortest.Invalid("20 g", "21 g")}},
	} {
		r := byDial(1, "30")
		c.change(&r)
		expectErrors(t, c.name, r.Check(), c.want...)
	}
}

func TestDialRefusesTheWrongChart(t *testing.T) {
	e := atBench(t)
	for _, c := range []struct {
		name   string
		change func(r *Reading)
		want   errortest.Want
	}{
		{"crop", func(r *Reading) { r.Crop = "soybeans" }, errortest.Invalid("small", "corn", "soybeans")},
		{"meter", func(r *Reading) { r.Meter = "bench-2" }, errortest.Invalid("small", "Example dial meter A", "bench-2", "Example digital meter B")},
		{"unknown meter", func(r *Reading) { r.Meter = "bench-9" }, errortest.NotFound("bench-9", "bench-1, bench-2")},
		{"unknown chart", func(r *Reading) { r.Chart = "large" }, errortest.NotFound("large", "small")},
		{"calibration", func(r *Reading) { r.Calibration = "A-2020" }, errortest.Invalid("A-2025", "A-2020")},
		{"too early", func(r *Reading) { r.Day = quantity.MustDate("2024-12-31") }, errortest.Invalid("2025-01-01", "2025-12-31", "2024-12-31")},
		{"too late", func(r *Reading) { r.Day = quantity.MustDate("2026-01-01") }, errortest.Invalid()},
		{"outside", func(r *Reading) { r.Dial = dial("41") }, errortest.Invalid("1", "41 dial", "small")},
	} {
		r := byDial(1, "30")
		c.change(&r)
		var s worksheet.Sheet
		if step, err := r.Work(&s, e); !c.want.Met(err) {
			t.Errorf("%s: %v, %v; want %q", c.name, step, err, c.want)
		}
	}
	onDial := direct(1, "15")
	onDial.Meter = "bench-1"
	var s worksheet.Sheet
	if _, err := onDial.Work(&s, e); !errortest.Invalid().Met(err) {
		t.Errorf("a dial meter was read direct: %v", err)
	}
}

// A reading goes into the book as text and comes back the same; frost at 0 °F
// is a temperature, not a missing one.
func TestReadingThroughJSON(t *testing.T) {
	r := byDial(2, "27.5")
	r.Sample, r.FromDryer = degF("0"), true
	text, err := json.Marshal(r)
	if err != nil {
		t.Fatal(err)
	}
	var back Reading
	if err := json.Unmarshal(text, &back); err != nil {
		t.Fatal(err)
	}
	if !quantity.Recorded(back.Sample) || quantity.Recorded(back.TestWeight) || !back.Sample.Equal(r.Sample) || !back.Dial.Equal(r.Dial) || back.Day != r.Day || !back.FromDryer {
		t.Errorf("came back as %+v from %s", back, text)
	}
	if strings.Contains(string(text), ":27.5") || !strings.Contains(string(text), `"dial":"27.5 dial"`) {
		t.Errorf("a figure is a bare number in %s", text)
	}
}

func TestEquipmentCheck(t *testing.T) {
	expectErrors(t, "good", atBench(t).Check())
	bad := Equipment{Meters: []meter.Meter{
		{ID: "a", Model: "M", Method: meter.ByOven, Calibration: "1", Tolerance: pct("0.5"), MaxDifference: pct("3"), Ambient: quantity.Span{Low: pct("1"), High: pct("2")}},
		{ID: "a"},
	}}
	expectErrors(t, "bad", bad.Check(), errortest.Invalid(), errortest.Invalid("0.5 %"), errortest.Invalid("3 %"), errortest.Invalid("1 % to 2 %"),
		errortest.Invalid(), errortest.Invalid(), errortest.Invalid(), errortest.Invalid("a"))
	posted := Equipment{Meters: []meter.Meter{{ID: "b", Model: "M", Method: meter.Direct, Calibration: "1", Crops: []meter.CropLimits{
		{Crop: "corn", Mass: gram("250"), Moisture: quantity.Span{Low: pct("8"), High: pct("25")}, Sample: quantity.Span{Low: degF("40"), High: degF("100")}},
		{Mass: pct("1"), Moisture: quantity.Span{Low: gram("1"), High: pct("2")}, Sample: quantity.Span{Low: degF("40"), High: degC("30")}},
	}}}}
	expectErrors(t, "posted", posted.Check(), errortest.Invalid(), errortest.Invalid("1 %"), errortest.Invalid("1 g to 2 %"), errortest.Invalid("40 °F to 30 °C"))
	if _, err := (Equipment{}).Meter("a"); !errortest.NotFound().Met(err) {
		t.Errorf("no meters: %v", err)
	}
	if _, err := (Equipment{}).Charts.ByID("a"); !errortest.NotFound().Met(err) {
		t.Errorf("no charts: %v", err)
	}
}
