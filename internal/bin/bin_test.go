package bin

import (
	"errors"
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/bin/shape"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

func lb(n int64) quantity.Amount      { return quantity.Int(n, quantity.Lb) }
func pct(text string) quantity.Amount { return quantity.Of(text, quantity.Percent) }
func tw(text string) quantity.Amount  { return quantity.Of(text, quantity.LbPerBushel) }
func day(text string) quantity.Date   { return quantity.MustDate(text) }
func corn(bin string) Place           { return Place{bin, "corn", quantity.Lb} }

func received(weight int64, moisture string, on string) Grain {
	return Of(lb(weight), day(on)).With(grain.Moisture, pct(moisture)).With(grain.TestWeight, tw("56"))
}

func act(what Kind, from, into []Weighed) Movement {
	return Movement{Number: 1, What: what, Day: day("2026-10-02"), Commodity: "corn", By: "Noor Castellan", From: from, Into: into}
}

func houseOf(heaps map[string]Heap) House {
	out := House{}
	for name, h := range heaps {
		out[corn(name)] = h
	}
	return out
}

func closed(t *testing.T, open House, moves ...Movement) map[string]Row {
	t.Helper()
	out := map[string]Row{}
	for _, r := range CloseDay(day("2026-10-02"), open, nil, moves) {
		out[r.Bin] = r
	}
	return out
}

// 10,000 lb at 17 % on 20,000 lb at 14 %: the upper layer leaves first, and 15,000 lb taken are
// (10,000 x 17 + 5,000 x 14) / 15,000 = 16 %.
func TestTransferTakesFromTheTop(t *testing.T) {
	b3 := Empty(quantity.Lb).Put(received(20_000, "14", "2026-09-20"), day("2026-09-20")).Put(received(10_000, "17", "2026-09-28"), day("2026-09-28"))
	rows := closed(t, houseOf(map[string]Heap{"B3": b3}), act(Transfer, []Weighed{{"B3", lb(15_000)}}, []Weighed{{"B1", lb(15_000)}}))
	to := rows["B1"].Close.Grain()
	if mean, known := to.Mean(grain.Moisture); !known || !mean.Equal(pct("16")) {
		t.Errorf("moved at %s, want 16 %%", mean)
	}
	if to.Oldest != day("2026-09-20") || rows["B1"].Close.Layers[0].Filled != day("2026-10-02") {
		t.Errorf("moved: %+v", rows["B1"].Close)
	}
	left := rows["B3"].Close
	if !left.Balance().Equal(lb(15_000)) || len(left.Layers) != 1 {
		t.Errorf("left: %+v", left)
	}
	if mean, _ := left.Grain().Mean(grain.Moisture); !mean.Equal(pct("14")) {
		t.Errorf("left at %s", mean)
	}
	if !rows["B3"].Before().Equal(lb(30_000)) || !rows["B1"].Before().IsZero() {
		t.Errorf("before: %s and %s", rows["B3"].Before(), rows["B1"].Before())
	}
}

// Drying 50,000 lb from 20 % to 15 % leaves 40,000 / 0.85 = 47,058.8 lb of the same dry matter; the
// scale said 47,000 lb, so 50 lb of dry matter are dust: 50,000 - 47,000 - 50 = 2,950 lb are water.
func TestDryingRun(t *testing.T) {
	m := act(Dry, []Weighed{{"B3", lb(50_000)}}, []Weighed{{"B1", lb(47_000)}})
	m.Drying = &Run{MoistureIn: pct("20"), MoistureOut: pct("15"), Fuel: quantity.Int(90, quantity.Gallon), Hours: quantity.Int(4, quantity.Hour)}
	if err := m.Check(); err != nil {
		t.Fatal(err)
	}
	loss := m.Loss()
	if !loss.Handling.Equal(lb(50)) || !loss.Water.Equal(lb(2_950)) || !loss.Screenings.IsZero() {
		t.Errorf("lost %+v", loss)
	}
	y := m.Yields()
	if !y.Points.Equal(quantity.Int(5, quantity.Point)) || !y.PerHour.Equal(quantity.Int(11_750, quantity.Lb.Per(quantity.Hour))) {
		t.Errorf("%+v", y)
	}
	wet := Empty(quantity.Lb).Put(received(50_000, "20", "2026-10-01"), day("2026-10-01"))
	rows := closed(t, houseOf(map[string]Heap{"B3": wet}), m)
	dry := rows["B1"].Close.Grain()
	matter, known := dry.DryMatter()
	if !known || !matter.Equal(lb(39_950)) {
		t.Errorf("%s of dry matter, %v", matter, known)
	}
	if _, tested := dry.Mean(grain.TestWeight); tested {
		t.Error("dried grain has the test weight it had wet")
	}
	if !rows["B3"].Close.IsEmpty() {
		t.Errorf("left: %+v", rows["B3"].Close)
	}
}

// Undoing a run puts the wet grain back, water and all.
func TestUndoneRun(t *testing.T) {
	wet := Empty(quantity.Lb).Put(received(50_000, "20", "2026-10-01"), day("2026-10-01"))
	m := act(Dry, []Weighed{{"B3", lb(50_000)}}, []Weighed{{"B1", lb(47_000)}})
	m.Drying = &Run{MoistureIn: pct("20"), MoistureOut: pct("15")}
	undo := m.Reversed(2, day("2026-10-02"), "Harriet Blume", "wrong bin")
	if err := undo.Check(); err != nil {
		t.Fatal(err)
	}
	rows := closed(t, houseOf(map[string]Heap{"B3": wet}), m, undo)
	back := rows["B3"].Close.Grain()
	if water, known := back.Water(); !known || !water.Equal(lb(10_000)) || !back.Weight.Equal(lb(50_000)) {
		t.Errorf("back: %+v", back)
	}
	if !rows["B1"].Close.IsEmpty() || !m.Loss().Total().Add(undo.Loss().Total()).IsZero() {
		t.Errorf("left in B1: %+v; lost %s", rows["B1"].Close, undo.Loss().Total())
	}
}

func TestMovementsThatCannotBe(t *testing.T) {
	run := func(in, out int64, before, after string) Movement {
		m := act(Dry, []Weighed{{"B3", lb(in)}}, []Weighed{{"B1", lb(out)}})
		m.Drying = &Run{MoistureIn: pct(before), MoistureOut: pct(after)}
		return m
	}
	cleaned := act(Clean, []Weighed{{"B3", lb(1_000)}}, []Weighed{{"B1", lb(900)}})
	cleaned.Screenings = lb(50)
	count := act(WeighOver, nil, nil).Counting(Count{Bin: "B1", Book: lb(100), Counted: lb(90), Posted: true})
	hot := act(Temperatures, []Weighed{{"B1", lb(0)}}, nil)
	hot.Readings = []quantity.Amount{quantity.Int(900, quantity.Fahrenheit)}
	elsewhen := act(Transfer, []Weighed{{"B1", lb(1)}}, []Weighed{{"B2", lb(1)}})
	elsewhen.Day = quantity.Date{}
	for name, c := range map[string]struct {
		m    Movement
		kind message.Kind
	}{
		"adds moisture":        {run(10_000, 9_000, "14", "15"), message.Refused},
		"adds water":           {run(10_000, 15_000, "16", "15"), message.Refused},
		"makes grain":          {run(10_000, 9_700, "17", "13"), message.Refused},
		"no moisture":          {run(10_000, 9_700, "0", "13"), message.Invalid},
		"onto itself":          {act(Transfer, []Weighed{{"B1", lb(5)}}, []Weighed{{"B1", lb(5)}}), message.Invalid},
		"grows on the way":     {act(Transfer, []Weighed{{"B1", lb(5)}}, []Weighed{{"B2", lb(6)}}), message.Invalid},
		"loses on the way":     {act(Transfer, []Weighed{{"B1", lb(5)}}, []Weighed{{"B2", lb(4)}}), message.Invalid},
		"grows by turning":     {act(Turn, []Weighed{{"B1", lb(5)}}, []Weighed{{"B1", lb(6)}}), message.Invalid},
		"turned elsewhere":     {act(Turn, []Weighed{{"B1", lb(5)}}, []Weighed{{"B2", lb(5)}}), message.Invalid},
		"blend of one":         {act(Blend, []Weighed{{"B1", lb(5)}}, []Weighed{{"B2", lb(5)}}), message.Invalid},
		"a bin twice":          {act(Blend, []Weighed{{"B1", lb(5)}, {"B1", lb(5)}}, []Weighed{{"B2", lb(10)}}), message.Invalid},
		"into nowhere":         {act(Transfer, []Weighed{{"B1", lb(5)}}, nil), message.Invalid},
		"out of nowhere":       {act(Transfer, nil, []Weighed{{"B1", lb(5)}}), message.Invalid},
		"no weight":            {act(Transfer, []Weighed{{"B1", lb(0)}}, []Weighed{{"B2", lb(0)}}), message.Invalid},
		"two units":            {act(Transfer, []Weighed{{"B1", lb(5)}}, []Weighed{{"B2", quantity.Int(5, quantity.Kg)}}), message.Invalid},
		"screenings missing":   {cleaned, message.Invalid},
		"aired for no time":    {act(Aerate, []Weighed{{"B1", lb(5)}}, nil), message.Invalid},
		"count with no reason": {count, message.Invalid},
		"write-off untold why": {act(WriteOff, []Weighed{{"B1", lb(5)}}, nil), message.Invalid},
		"on fire":              {hot, message.Invalid},
		"on no day":            {elsewhen, message.Invalid},
		"unknown":              {act("teleport", []Weighed{{"B1", lb(5)}}, []Weighed{{"B2", lb(5)}}), message.Invalid},
	} {
		if err := c.m.Check(); !errors.Is(err, c.kind) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestMoreThanThereIs(t *testing.T) {
	house := houseOf(map[string]Heap{"B1": Empty(quantity.Lb).Put(received(1_000, "15", "2026-10-01"), day("2026-10-01"))})
	for weight, fits := range map[int64]bool{999: true, 1_000: true, 1_001: false} {
		err := act(Transfer, []Weighed{{"B1", lb(weight)}}, []Weighed{{"B2", lb(weight)}}).Fits(house)
		if fits != (err == nil) || !fits && !errors.Is(err, message.Refused) {
			t.Errorf("%d lb out of 1,000 lb: %v", weight, err)
		}
	}
	if err := act(Transfer, []Weighed{{"B7", lb(1)}}, []Weighed{{"B2", lb(1)}}).Fits(house); !errors.Is(err, message.Refused) {
		t.Errorf("out of an empty bin: %v", err)
	}
}

// A count that is posted makes the book say what was counted; one that is explained does not.
func TestCounts(t *testing.T) {
	open := houseOf(map[string]Heap{"B1": Empty(quantity.Lb).Put(received(1_000, "15", "2026-10-01"), day("2026-10-01"))})
	for _, c := range []struct {
		counted int64
		posted  bool
		want    int64
	}{{900, true, 900}, {1_100, true, 1_100}, {900, false, 1_000}, {1_000, true, 1_000}} {
		m := act(WeighOver, nil, nil).Counting(Count{Bin: "B1", Book: lb(1_000), Counted: lb(c.counted), Posted: c.posted}).Adjusted("")
		m.Reason = "weighed out and in again"
		if err := m.Check(); err != nil {
			t.Errorf("%+v: %v", c, err)
		}
		rows := closed(t, open, m)
		got := lb(1_000)
		if r, moved := rows["B1"]; moved {
			got = r.Close.Balance()
		}
		if !got.Equal(lb(c.want)) || !m.Loss().House.Equal(lb(1_000-c.want)) {
			t.Errorf("counted %d: the book says %s, lost %+v", c.counted, got, m.Loss())
		}
		if posts := c.want != 1_000; posts != (m.Adjusts == WeighedInventory) {
			t.Errorf("counted %d: adjusts %q", c.counted, m.Adjusts)
		}
	}
	if m := act(MeasureUp, nil, nil).Counting(Count{Bin: "B1", Book: lb(5), Counted: lb(4), Posted: true, Measure: &shape.Measure{}, Shape: &shape.Shape{}}); !m.NeedsManager() {
		t.Error("a clerk may post a measure-up")
	}
}

// What trucks bring fills first what was let out beyond the grain there was.
func TestShortBinIsFilledFirst(t *testing.T) {
	_, h := Empty(quantity.Lb).Put(received(100, "15", "2026-10-01"), day("2026-10-01")).Take(lb(130))
	if !h.Balance().Equal(lb(-30)) {
		t.Fatalf("%s after 130 lb out of 100 lb", h.Balance())
	}
	h = h.Put(received(50, "16", "2026-10-02"), day("2026-10-02"))
	if !h.Balance().Equal(lb(20)) || !h.Short.IsZero() || !h.Grain().Weight.Equal(lb(20)) {
		t.Errorf("%+v", h)
	}
}

// Beyond so many layers the lowest two are told as one, and nothing is lost.
func TestLowestLayersAreToldAsOne(t *testing.T) {
	h, first := Empty(quantity.Lb), day("2026-01-01")
	for n := range mostLayers + 20 {
		h = h.Put(Of(lb(10), first.AddDays(n)), first.AddDays(n))
	}
	if len(h.Layers) != mostLayers || !h.Balance().Equal(lb(10*(mostLayers+20))) || h.Layers[0].Oldest != first {
		t.Errorf("%d layers, %s, oldest %s", len(h.Layers), h.Balance(), h.Layers[0].Oldest)
	}
}

// drawDay draws what trucks and people do to a small house on one day, and never takes out of a bin
// more than there is.
func drawMove(t *rapid.T, house House, n int) (Movement, bool) {
	names := []string{"P1", "B1", "B2", "B3"}
	from := rapid.SampledFrom(names).Draw(t, "from")
	there := house.At(corn(from)).Balance()
	whole, _ := there.Decimal()
	if whole.IntPart() < 2 {
		return Movement{}, false
	}
	in := rapid.Int64Range(1, whole.IntPart()).Draw(t, "in")
	to := rapid.SampledFrom(names).Draw(t, "to")
	kind := rapid.SampledFrom([]Kind{Transfer, Turn, Clean, Dry, WriteOff, WeighOver}).Draw(t, "kind")
	m := act(kind, []Weighed{{from, lb(in)}}, []Weighed{{to, lb(in)}})
	m.Number, m.Reason = int64(n), "drawn"
	switch kind {
	case Turn:
		m.Into = []Weighed{{from, lb(rapid.Int64Range(1, in).Draw(t, "out"))}}
	case Clean:
		out := rapid.Int64Range(1, in).Draw(t, "out")
		m.Screenings, m.Into = lb(in-out), []Weighed{{to, lb(out)}}
	case WriteOff:
		m.Into = nil
	case WeighOver:
		m = m.Counting(Count{Bin: from, Book: there, Counted: lb(in), Posted: true})
	case Dry:
		mean, known := house.At(corn(from)).Put(None(quantity.Lb), m.Day).takes(lb(in)).Mean(grain.Moisture)
		if !known {
			return m, false
		}
		m.Drying = &Run{MoistureIn: mean, MoistureOut: mean.Mul(quantity.Of("0.9", quantity.Plain))}
		m.Into[0].Weight = lb(rapid.Int64Range(max(1, in*8/10), max(1, in*9/10)).Draw(t, "out"))
	}
	return m, m.Check() == nil
}

func (h Heap) takes(weight quantity.Amount) Grain {
	g, _ := h.Take(weight)
	return g
}

// Whatever is done, what all bins hold is what they held, less what the movement lost: weight by
// weight and, where moistures are known, pound of dry matter by pound of dry matter. Layers sum to
// their bin, and a movement's own loss is the difference of its weights.
func TestMovementsKeepMassAndDryMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		house := House{}
		for _, name := range []string{"P1", "B1", "B2"} {
			for n := range rapid.IntRange(0, 4).Draw(t, "layers of "+name) {
				moisture := fmt.Sprintf("%d.%d", rapid.IntRange(11, 28).Draw(t, "moisture"), rapid.IntRange(0, 9).Draw(t, "tenth"))
				on := day("2026-09-01").AddDays(n)
				house[corn(name)] = house.At(corn(name)).Put(received(rapid.Int64Range(1, 60_000).Draw(t, "weight"), moisture, on.String()), on)
			}
		}
		for n := range rapid.IntRange(1, 12).Draw(t, "movements") {
			m, can := drawMove(t, house, n+1)
			if !can || m.Fits(house) != nil {
				continue
			}
			weight, matter := total(t, house)
			after := House{}
			for p, h := range house {
				after[p] = h
			}
			for _, r := range CloseDay(m.Day, house, nil, []Movement{m}) {
				after[r.Place] = r.Close
				if sum := r.Close.Grain().Weight.Sub(r.Close.Short); !sum.Equal(r.Close.Balance()) {
					t.Fatalf("layers of %s sum to %s, the bin has %s", r.Bin, sum, r.Close.Balance())
				}
			}
			newWeight, newMatter := total(t, after)
			loss := m.Loss()
			if !weight.Sub(newWeight).Equal(loss.Total()) || !loss.Total().Equal(m.In().Sub(m.Out())) {
				t.Fatalf("%s: %s before, %s after, lost %+v", m.What, weight, newWeight, loss)
			}
			if m.What == Dry {
				// Masses are kept to a ten-thousandth of a pound of water x percent.
				if d := matter.Sub(newMatter).Sub(loss.Handling); d.More(slack) || d.Neg().More(slack) {
					t.Fatalf("drying lost %s of dry matter, and says %s", matter.Sub(newMatter), loss.Handling)
				}
			}
			if m.What == Transfer && !matter.Equal(newMatter) {
				t.Fatalf("a transfer changed dry matter from %s to %s", matter, newMatter)
			}
			house = after
		}
	})
}

var slack = quantity.Of("0.01", quantity.Lb)

// total is the weight of a house, and its dry matter where moistures are known; grain found on a
// count has none.
func total(t *rapid.T, house House) (weight, matter quantity.Amount) {
	weight, matter = lb(0), lb(0)
	for _, h := range house {
		weight = weight.Add(h.Balance())
		for _, l := range h.Layers {
			m := l.Measured[grain.Moisture]
			if m.Of.Unit() == quantity.Lb {
				matter = matter.Add(m.Of.Sub(m.Sum.Div(quantity.Int(100, quantity.Percent))))
			}
		}
	}
	return weight, matter
}

// What a season of dryer runs loses is added up and kept run by run: the sum stays as short as a figure.
func TestLossesAddUpToAShortFigure(t *testing.T) {
	sum := lb(0)
	for n := range int64(5_000) {
		m := Movement{
			What: Dry, From: []Weighed{{"B1", lb(50_000 + n)}}, Into: []Weighed{{"B2", lb(47_500)}},
			Drying: &Run{MoistureIn: quantity.Of("18.25", quantity.Percent), MoistureOut: quantity.Of("14.5", quantity.Percent)},
		}
		sum = sum.Add(m.Loss().Handling)
	}
	if text := sum.StoredFigure(); len(text) > 20 {
		t.Errorf("after 5,000 runs the loss is kept as %d characters", len(text))
	}
}
