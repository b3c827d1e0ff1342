// Package binlog reads what lies in the bins of a house and whose it is, and makes the papers of
// it: the card of a bin and the daily position record.
package binlog

import (
	"cmp"
	"context"
	"slices"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/bin/shape"
	"tenthpoint/internal/book"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry/moving"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/position"
	"tenthpoint/internal/quantity"
)

// Bin is a bin of the house and what lies in it.
type Bin struct {
	elevator.Bin
	Grain []Held
}

// Held is the grain of one commodity in a bin.
type Held struct {
	Commodity, Name string
	Unit            quantity.Unit
	Heap            bin.Heap
}

// Lies returns the grain in the bin by the book.
func (h Held) Lies() quantity.Amount { return h.Heap.Balance() }

// Moisture is the mean by weight; false where nothing of it was tested.
func (h Held) Moisture() (quantity.Amount, bool) { return h.mean(grain.Moisture) }

// TestWeight is the mean by volume; false where nothing of it was tested.
func (h Held) TestWeight() (quantity.Amount, bool) { return h.mean(grain.TestWeight) }

// toTenths and toHundredths round means for people.
var (
	toTenths     = quantity.To("0.1", quantity.HalfUp)
	toHundredths = quantity.To("0.01", quantity.HalfUp)
)

func (h Held) mean(factor grain.FactorID) (quantity.Amount, bool) {
	m, known := h.Heap.Grain().Mean(factor)
	if !known {
		return m, false
	}
	return toHundredths.Apply(m), true
}

// Oldest is the first day on which any of it was received; none for no grain.
func (h Held) Oldest() quantity.Date { return h.Heap.Grain().Oldest }

// Level is the fill level of the bin, in thousandths of the room to the eave; false where the bin was
// not measured or the grain has no test weight. Grain that stands higher is 1000.
func (b Bin) Level() (int, bool) {
	room, known := b.room()
	if !known {
		return 0, false
	}
	return b.Shape.Filled(room), true
}

// room is the room that all grain in the bin takes.
func (b Bin) room() (total quantity.Amount, known bool) {
	for _, h := range b.Grain {
		weight := h.Heap.Grain().Weight
		if weight.IsZero() {
			continue
		}
		room, err := b.Shape.RoomOf(weight, densityOf(h))
		if err != nil {
			return total, false
		}
		if known {
			room = room.Add(total)
		}
		total, known = room, true
	}
	return total, known && !b.Shape.IsZero()
}

// densityOf is the test weight of grain: as tested, or the weight of a bushel by law.
func densityOf(h Held) quantity.Amount {
	if tested, known := h.Heap.Grain().Mean(grain.TestWeight); known {
		return tested
	}
	if c, err := grain.ByID(h.Commodity); err == nil && !c.Bushel.IsZero() {
		return c.Bushel
	}
	return quantity.Zero(quantity.LbPerBushel)
}

// Holds is the capacity of the bin for a grain, full and heaped, at a test weight; false where nobody
// measured the bin.
func (b Bin) Holds(testWeight quantity.Amount) (quantity.Amount, bool) {
	if b.Shape.IsZero() {
		return quantity.Amount{}, false
	}
	weight, err := shape.Weight(b.Shape.Room(), testWeight)
	return quantity.To("1", quantity.HalfUp).Apply(weight), err == nil
}

// Short is the quantity let out of the bin beyond all that was in it.
func (b Bin) Short() bool {
	return slices.ContainsFunc(b.Grain, func(h Held) bool { return h.Lies().Sign() < 0 })
}

// Bins are all pits and bins with what lay in them in the evening of a day. A bin that is in no
// list any more, or a ticket without one, stands at the end while grain lies there.
func Bins(ctx context.Context, d office.Desk, day quantity.Date) ([]Bin, error) {
	list, err := office.Bins(ctx, d)
	if err != nil {
		return nil, err
	}
	rows, err := d.Reader().BinsBefore(ctx, day.AddDays(1).String())
	if err != nil {
		return nil, err
	}
	out := make([]Bin, 0, len(list))
	place := map[string]int{}
	for _, b := range list {
		place[b.ID] = len(out)
		out = append(out, Bin{Bin: b})
	}
	for _, r := range rows {
		if r.Close.IsEmpty() {
			continue
		}
		at, known := place[r.Bin]
		if !known {
			at = len(out)
			place[r.Bin] = at
			out = append(out, Bin{Bin: elevator.Bin{ID: r.Bin}})
		}
		out[at].Grain = append(out[at].Grain, Held{r.Commodity, grain.NameOf(r.Commodity), r.Unit, r.Close})
	}
	return out, nil
}

// House is the data that the entry of a movement needs: the bins, and their content on a day.
func House(ctx context.Context, d office.Desk, today quantity.Date) (moving.House, error) {
	all, err := Bins(ctx, d, today)
	h := moving.House{Unit: d.Profile().WeightUnit(), Today: today}
	for _, b := range all {
		one := moving.Bin{ID: b.ID, Name: b.Name, Kept: b.Commodity}
		for _, held := range b.Grain {
			one.Grain = append(one.Grain, moving.Held{Commodity: held.Commodity, Lies: held.Lies()})
		}
		h.Bins = append(h.Bins, one)
	}
	return h, err
}

// One is one bin with what lay in it in the evening of a day.
func One(ctx context.Context, d office.Desk, id string, day quantity.Date) (Bin, error) {
	all, err := Bins(ctx, d, day)
	if err != nil {
		return Bin{}, err
	}
	for _, b := range all {
		if b.ID == id {
			return b, nil
		}
	}
	return Bin{}, message.NotFound.Errorf("there is no pit or bin %v at this elevator. Name one that is set up, or add it to the list", id)
}

// Movements are the movements of a bin from one day to another, in order; of all bins without a
// name.
func Movements(ctx context.Context, d office.Desk, id string, from, to quantity.Date) ([]bin.Movement, error) {
	all, err := d.Reader().Movements(ctx, from.String(), to.String())
	return slices.DeleteFunc(all, func(m bin.Movement) bool { return id != "" && !slices.Contains(m.Bins(), id) }), err
}

// Position is the daily position record of every commodity on a day.
func Position(ctx context.Context, d office.Desk, day quantity.Date) ([]position.Record, error) {
	b, today := d.Reader(), day.String()
	rows, err := b.BinDays(ctx, "", today, today)
	if err != nil {
		return nil, err
	}
	before, err := b.BinsBefore(ctx, today)
	if err != nil {
		return nil, err
	}
	moved := map[bin.Place]bool{}
	for _, r := range rows {
		moved[r.Place] = true
	}
	standing := slices.DeleteFunc(before, func(r bin.Row) bool { return moved[r.Place] || r.Close.Balance().IsZero() })
	lines, err := linesOn(ctx, b, day)
	if err != nil {
		return nil, err
	}
	moves, err := b.Movements(ctx, today, today)
	return position.Day(rows, standing, lines, moves), err
}

// linesOn are the lines of owners on a day: those that changed, and those that stand.
func linesOn(ctx context.Context, b office.Book, day quantity.Date) ([]position.LineDay, error) {
	changed, err := b.LineDays(ctx, day.String(), day.String())
	if err != nil {
		return nil, err
	}
	evening, err := b.LinesBefore(ctx, day.AddDays(1).String())
	if err != nil {
		return nil, err
	}
	var out []position.LineDay
	for _, r := range changed {
		out = append(out, position.LineDay{Commodity: r.Commodity, Line: position.Line(r.Bin), Up: r.In, Down: r.Out.Add(r.Back), Balance: r.Weight})
	}
	for _, r := range evening {
		if !slices.ContainsFunc(changed, func(c book.StockRow) bool { return c.SamePlace(r) }) {
			none := quantity.Zero(r.Weight.Unit())
			out = append(out, position.LineDay{Commodity: r.Commodity, Line: position.Line(r.Bin), Up: none, Down: none, Balance: r.Weight})
		}
	}
	slices.SortFunc(out, func(a, b position.LineDay) int { return cmp.Compare(a.Commodity, b.Commodity) })
	return out, nil
}

// CarriedOut is the grain that trucks carried away from a place on a day, by what lay there when they
// came: an estimate, as every drawing from a bin is.
func CarriedOut(ctx context.Context, d office.Desk, of bin.Place, day quantity.Date) (bin.Grain, error) {
	none := bin.None(of.Unit)
	b, today := d.Reader(), day.String()
	rows, err := b.BinDays(ctx, "", today, today)
	if err != nil {
		return none, err
	}
	before, err := b.BinsBefore(ctx, today)
	if err != nil {
		return none, err
	}
	moves, err := b.Movements(ctx, today, today)
	if err != nil {
		return none, err
	}
	open, trucks := bin.House{}, map[bin.Place]bin.Tally{}
	for _, r := range before {
		open[r.Place] = r.Close
	}
	out := quantity.Zero(of.Unit)
	for _, r := range rows {
		if r.Place == of {
			out, r.Out = r.Out, quantity.Zero(of.Unit)
		}
		trucks[r.Place] = r.Tally
	}
	for _, r := range bin.CloseDay(day, open, trucks, moves) {
		if r.Place == of {
			taken, _ := r.Close.Take(out)
			return taken, nil
		}
	}
	return none, nil
}
