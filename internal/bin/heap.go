package bin

import "tenthpoint/internal/quantity"

// Layer is grain that was put on a heap on one day.
type Layer struct {
	Filled quantity.Date `json:"filled"`
	Grain
}

// Heap is the grain of one commodity in one bin: its layers, the lowest first.
type Heap struct {
	Layers []Layer `json:"layers,omitempty"`
	// Short is the weight the book let out of the bin beyond all that was in it; zero in a sound house.
	// What comes in fills it first.
	Short quantity.Amount `json:"short"`
}

// Empty is a heap without grain.
func Empty(unit quantity.Unit) Heap { return Heap{Short: quantity.Zero(unit)} }

// mostLayers is the most layers of a heap; beyond them the two lowest become one.
const mostLayers = 60

// Grain is all of the heap as one lot. What is short has no grain.
func (h Heap) Grain() Grain {
	all := None(h.Short.Unit())
	for _, l := range h.Layers {
		all = all.Mix(l.Grain)
	}
	return all
}

// Balance is the weight in the book: the layers, less what is short.
func (h Heap) Balance() quantity.Amount { return h.weight().Sub(h.Short) }

func (h Heap) weight() quantity.Amount {
	total := quantity.Zero(h.Short.Unit())
	for _, l := range h.Layers {
		total = total.Add(l.Weight)
	}
	return total
}

// Put is the heap with grain put on top of it on a day.
func (h Heap) Put(g Grain, day quantity.Date) Heap {
	if g.Weight.Sign() <= 0 {
		return h
	}
	fills := quantity.Min(h.Short, g.Weight)
	_, g = g.Part(fills)
	out := Heap{Short: h.Short.Sub(fills)}
	if g.Weight.IsZero() {
		return out
	}
	out.Layers = append(out.Layers, h.Layers...)
	if top := len(out.Layers) - 1; top >= 0 && out.Layers[top].Filled == day {
		out.Layers[top].Grain = out.Layers[top].Mix(g)
		return out
	}
	out.Layers = append(out.Layers, Layer{day, g})
	if len(out.Layers) > mostLayers {
		low := Layer{out.Layers[1].Filled, out.Layers[0].Mix(out.Layers[1].Grain)}
		out.Layers = append([]Layer{low}, out.Layers[2:]...)
	}
	return out
}

// Take takes a weight out of the heap, the top layer first. Taken is the grain there was of it;
// what the heap does not have makes it short.
func (h Heap) Take(weight quantity.Amount) (taken Grain, left Heap) {
	taken = None(h.Short.Unit())
	left = Heap{Layers: append([]Layer(nil), h.Layers...), Short: h.Short}
	for weight.Sign() > 0 && len(left.Layers) > 0 {
		top := len(left.Layers) - 1
		lot, rest := left.Layers[top].Part(weight)
		taken, weight = taken.Mix(lot), weight.Sub(lot.Weight)
		left.Layers[top].Grain = rest
		if rest.Weight.IsZero() {
			left.Layers = left.Layers[:top]
		}
	}
	if weight.Sign() > 0 {
		left.Short = left.Short.Add(weight)
	}
	return taken, left
}

// IsEmpty reports whether nothing lies there and nothing is short.
func (h Heap) IsEmpty() bool { return len(h.Layers) == 0 && h.Short.IsZero() }
