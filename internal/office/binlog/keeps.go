package binlog

import (
	"context"
	"slices"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/keeping"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
)

// LayerKeeps is how much of the time that a layer keeps is used, by the days it has lain and the
// temperatures that were read in its bin. Why says why it is not known.
type LayerKeeps struct {
	Held
	bin.Layer
	Moisture quantity.Amount
	Table    string
	keeping.Life
	Why message.Text
}

// Keeps is what the tables say of a bin, and what calls for turning or cooling it.
type Keeps struct {
	Bin    Bin
	Layers []LayerKeeps
	Looks  []message.Text
}

// The signs at which grain is looked at (common practice): half of its time used, and a reading that is
// warmer than the one before by so much.
var (
	halfUsed = quantity.Int(50, quantity.Percent)
	warmer   = quantity.Int(5, quantity.Fahrenheit)
)

// KeepsIn are the layers of a bin on a day. Days before the first reading count at its temperature,
// days after a reading at that of the warmest place read. The oldest day of a layer is its first.
func KeepsIn(ctx context.Context, d office.Desk, id string, day quantity.Date) (Keeps, error) {
	one, err := One(ctx, d, id, day)
	if err != nil {
		return Keeps{}, err
	}
	moves, err := Movements(ctx, d, id, one.since(day), day)
	return keepsBy(one, moves, day), err
}

// since is the first day of anything in the bin, or the day given.
func (b Bin) since(day quantity.Date) quantity.Date {
	for _, h := range b.Grain {
		for _, l := range h.Heap.Layers {
			if l.Grain.Oldest.Before(day) {
				day = l.Grain.Oldest
			}
		}
	}
	return day
}

// keepsBy is the same by movements that were read.
func keepsBy(one Bin, moves []bin.Movement, day quantity.Date) Keeps {
	out, readings := Keeps{Bin: one}, readingsOf(moves)
	for _, h := range one.Grain {
		for _, l := range h.Heap.Layers {
			out.Layers = append(out.Layers, layerKeeps(h, l, readings, day))
		}
	}
	out.Looks = out.looks(readings)
	return out
}

// reading is the warmest temperature read in a bin on a day.
type reading struct {
	day  quantity.Date
	warm quantity.Amount
}

func readingsOf(moves []bin.Movement) []reading {
	var out []reading
	for _, m := range moves {
		if m.What != bin.Temperatures || m.UndoneBy != 0 || len(m.Readings) == 0 {
			continue
		}
		warm := slices.MaxFunc(fahrenheit(m.Readings), quantity.Amount.Cmp)
		if last := len(out) - 1; last >= 0 && out[last].day == m.Day {
			out[last].warm = quantity.Max(out[last].warm, warm)
			continue
		}
		out = append(out, reading{m.Day, warm})
	}
	return out
}

func fahrenheit(all []quantity.Amount) []quantity.Amount {
	out := make([]quantity.Amount, len(all))
	for i, a := range all {
		out[i] = quantity.TemperatureIn(a, quantity.Fahrenheit)
	}
	return out
}

func layerKeeps(h Held, l bin.Layer, readings []reading, day quantity.Date) LayerKeeps {
	k := LayerKeeps{Held: h, Layer: l}
	moisture, known := l.Grain.Mean(grain.Moisture)
	switch {
	case !known:
		k.Why = message.New("no moisture is known of it")
		return k
	case len(readings) == 0:
		k.Why = message.New("no temperature was read in this bin since it came")
		return k
	}
	k.Moisture = quantity.To("0.01", quantity.HalfUp).Apply(moisture)
	tables, err := keeping.Tables(h.Commodity)
	if err == nil {
		k.Table = tables[0].ID
		k.Life, err = tables[0].Use(k.Moisture, stretches(l.Grain.Oldest, day, readings), readings[len(readings)-1].warm)
	}
	if err != nil {
		k.Why = message.Of(err)
	}
	return k
}

// stretches are the days from one to another at the temperatures that were read.
func stretches(from, to quantity.Date, readings []reading) []keeping.Stretch {
	var out []keeping.Stretch
	for i, r := range readings {
		begin, end := from, to
		if i > 0 && r.day.After(begin) {
			begin = r.day
		}
		if i+1 < len(readings) && readings[i+1].day.Before(end) {
			end = readings[i+1].day
		}
		if days := begin.DaysUntil(end); days > 0 {
			out = append(out, keeping.Stretch{Days: quantity.Int(int64(days), quantity.Day), Temperature: r.warm})
		}
	}
	return out
}

// looks are the signs that call for looking at the bin: turn it, or cool it.
func (k Keeps) looks(readings []reading) []message.Text {
	var out []message.Text
	for _, l := range k.Layers {
		switch {
		case !l.Why.IsZero():
		case l.Spent:
			out = append(out, message.New("The layer of %s at %s has used up its time: look at it now, and move or dry it.", l.Filled, l.Moisture))
		case !l.Used.Less(halfUsed):
			out = append(out, message.New("The layer of %s at %s has used %s of its time: turn it, or cool it.", l.Filled, l.Moisture, l.Used))
		}
	}
	if n := len(readings); n > 1 {
		if rise := readings[n-1].warm.Sub(readings[n-2].warm); !rise.Less(warmer) {
			out = append(out, message.New("It read %s on %s and %s on %s: grain that warms is turned or cooled at once.", readings[n-2].warm, readings[n-2].day, readings[n-1].warm, readings[n-1].day))
		}
	}
	return out
}
