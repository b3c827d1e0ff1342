package book

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/quantity"

	"pgregory.net/rapid"
)

var shelled = bin.Place{Bin: "B1", Commodity: "corn", Unit: quantity.Lb}

// drawnRow is a row with any layers: fractions, factors that only some of the grain was measured for, and
// one factor in two units among them.
func drawnRow(t *rapid.T) bin.Row {
	weight := func(label string) quantity.Amount {
		n := quantity.Int(rapid.Int64Range(0, 1_000_000).Draw(t, label), quantity.Lb)
		return n.Div(quantity.Int(rapid.Int64Range(1, 3).Draw(t, label+" of"), quantity.Plain))
	}
	day := func(label string) quantity.Date {
		return quantity.MustDate("2026-08-01").AddDays(rapid.IntRange(0, 90).Draw(t, label))
	}
	lot := func(label string) bin.Grain {
		g := bin.Of(weight(label), day(label+" oldest"))
		for _, id := range []grain.FactorID{grain.Moisture, grain.TestWeight, "own-factor"} {
			unit := rapid.SampledFrom([]quantity.Unit{quantity.Percent, quantity.Plain}).Draw(t, string(id)+" unit")
			if rapid.Bool().Draw(t, string(id)) {
				g = g.With(id, quantity.Int(rapid.Int64Range(0, 60).Draw(t, string(id)+" result"), unit))
			}
		}
		return g.Mix(bin.Of(weight(label+" untested"), day(label+" untested day")))
	}
	r := bin.NoRow(shelled, day("day"))
	r.In, r.Out, r.MovedIn, r.Close.Short = lot("in"), weight("out"), weight("moved in"), weight("short")
	for i := range rapid.IntRange(0, 5).Draw(t, "layers") {
		r.Close.Layers = append(r.Close.Layers, bin.Layer{Filled: day("filled"), Grain: lot(fmt.Sprint("layer ", i))})
	}
	return r
}

func equalBinRows(a, b bin.Row) bool {
	same := a.Place == b.Place && a.Day == b.Day && a.Tally.Equal(b.Tally) && a.MovedIn.Equal(b.MovedIn) && a.MovedOut.Equal(b.MovedOut) &&
		a.Close.Short.Equal(b.Close.Short) && len(a.Close.Layers) == len(b.Close.Layers)
	for i := 0; same && i < len(a.Close.Layers); i++ {
		same = a.Close.Layers[i].Filled == b.Close.Layers[i].Filled && a.Close.Layers[i].Equal(b.Close.Layers[i].Grain)
	}
	return same
}

func TestBinRowComesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawnRow(t)
		text := EncodeBinRow(r)
		back, err := DecodeBinRow(r.Place, r.Day.String(), text)
		if err != nil || !equalBinRows(r, back) || EncodeBinRow(back) != text {
			t.Fatalf("%v\n%s\n%v\n%s", err, text, back, EncodeBinRow(back))
		}
	})
}

// Books until migration 12 have the same row as an object.
func TestOlderBinRow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawnRow(t)
		object, err := json.Marshal(struct {
			bin.Tally
			MovedIn  quantity.Amount `json:"moved_in"`
			MovedOut quantity.Amount `json:"moved_out"`
			Close    bin.Heap        `json:"close"`
		}{r.Tally, r.MovedIn, r.MovedOut, r.Close})
		if err != nil {
			t.Fatal(err)
		}
		back, err := DecodeBinRow(r.Place, r.Day.String(), string(object))
		if err != nil || !equalBinRows(r, back) {
			t.Fatalf("%v\n%s\n%v", err, object, back)
		}
	})
}

// What does not fit together is refused, whatever it is: a lost line, word or column, another unit.
func TestBinRowRefused(t *testing.T) {
	const whole = "moisture lb·%\n0 0 0 0 0 0\n2026-10-29 100 =1500\n2026-10-29 = 100 =1500"
	if _, err := DecodeBinRow(shelled, "2026-10-29", whole); err != nil {
		t.Fatal(err)
	}
	for _, text := range []string{
		"", "moisture lb·%\n0 0 0 0 0 0", "{", "moisture\n0 0 0 0 0 0\n2026-10-29 100 =1500",
		"\n0 0 0 0 0 0\n2026-10-29 100 =1500", "moisture lb·%\n0 0 0 0 0\n2026-10-29 100 =1500",
		"moisture lb·%\n0 0 0 0 0 x\n2026-10-29 100 =1500", "moisture lb·%\n0 0 0 0 0 0\n2026-10-32 100 =1500",
		"moisture lb·%\n0 0 0 0 0 0\n2026-10-29 =100 =1500", "moisture lb·%\n0 0 0 0 0 0\n2026-10-29 100 1500",
		"moisture lb·%\n0 0 0 0 0 0\n2026-10-29 100 50:", "moisture lb·%\n0 0 0 0 0 0\n2026-10-29 100 x:1",
		whole + "\n", whole + "\n2026-10-29", whole + "\nx = 100 =1500",
	} {
		if r, err := DecodeBinRow(shelled, "2026-10-29", text); err == nil {
			t.Errorf("%q is read as %v", text, r)
		}
	}
	if _, err := DecodeBinRow(shelled, "soon", whole); err == nil {
		t.Error("a day that is none is read")
	}
}

func FuzzDecodeBinRow(f *testing.F) {
	f.Add("moisture lb·%\n0 0 0 0 0 0\n2026-10-29 100 =1500\n2026-10-29 = 100 -")
	f.Add("\n0 1/3 0 0 0 0\n- 0\n2026-10-29 2026-09-01 5")
	f.Fuzz(func(t *testing.T, text string) {
		r, err := DecodeBinRow(shelled, "2026-10-29", text)
		if err != nil || strings.HasPrefix(text, "{") { // an object may have no units
			return
		}
		again, err := DecodeBinRow(shelled, "2026-10-29", EncodeBinRow(r))
		if err != nil || !equalBinRows(r, again) {
			t.Errorf("%q\n%v\n%v, %v", text, r, again, err)
		}
	})
}

func BenchmarkBinRow(b *testing.B) {
	r := rapid.Custom(drawnRow).Example(3)
	for len(r.Close.Layers) < 60 {
		r.Close.Layers = append(r.Close.Layers, bin.Layer{Filled: r.Day, Grain: r.In})
	}
	for b.Loop() {
		if _, err := DecodeBinRow(r.Place, r.Day.String(), EncodeBinRow(r)); err != nil {
			b.Fatal(err)
		}
	}
}
