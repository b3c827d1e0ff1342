// Package moving reads what is typed of a movement of grain between bins: the fields of each kind of
// movement as data, and the movement they make. Window and terminal ask it, so both take the same
// texts and say the same of them.
package moving

import (
	"cmp"
	"slices"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/entry/typed"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Held is the grain of one commodity in a bin.
type Held struct {
	Commodity string
	Lies      quantity.Amount
}

// Bin is a bin with what lies in it.
type Bin struct {
	ID, Name, Kept string // Kept is the commodity it is for; empty for any
	Grain          []Held
}

// House is the part of the book around a movement: its bins, the unit of its scales, and today.
type House struct {
	Unit  quantity.Unit
	Today quantity.Date
	Bins  []Bin
}

func (h House) bin(id string) (Bin, bool) {
	at := slices.IndexFunc(h.Bins, func(b Bin) bool { return b.ID == id })
	if at < 0 {
		return Bin{}, false
	}
	return h.Bins[at], true
}

// lies is the content of a bin of a commodity.
func (h House) lies(id, commodity string) (quantity.Amount, bool) {
	b, _ := h.bin(id)
	for _, held := range b.Grain {
		if held.Commodity == commodity {
			return held.Lies, true
		}
	}
	return quantity.Amount{}, false
}

// Read makes a movement of what is typed in the fields of its kind, by their ids. Whatever is wrong
// is told by its field, all of it at once. That the movement may be is decided where it is entered.
func Read(kind bin.Kind, texts map[string]string, house House) (bin.Movement, typed.Problems) {
	r := &reading{house: house, m: bin.Movement{What: kind}}
	problems := typed.Read(r, table(kind), texts)
	if len(problems) > 0 {
		return bin.Movement{}, problems
	}
	if id, err := r.compose(); err != nil {
		return bin.Movement{}, typed.Problems{id: err}
	}
	return r.m, nil
}

// reading is a movement while its fields are read.
type reading struct {
	house House
	m     bin.Movement

	from, into                 string
	weight, out, lost, counted quantity.Amount
	parts                      []bin.Weighed
}

// first is the bin that the grain is taken from, or that the movement is about.
func (r *reading) first() string {
	if len(r.parts) > 0 {
		return r.parts[0].Bin
	}
	return r.from
}

// readGrain finds the grain that is moved: the one named, else the only one in the bin.
func readGrain(r *reading, text string) error {
	if text != "" {
		c, err := entry.Commodity(text)
		r.m.Commodity = c.ID
		return err
	}
	b, known := r.house.bin(r.first())
	switch {
	case r.first() == "" || !known: // told at that field
		return nil
	case len(b.Grain) == 1:
		r.m.Commodity = b.Grain[0].Commodity
	case len(b.Grain) == 0 && b.Kept != "":
		r.m.Commodity = b.Kept
	case len(b.Grain) == 0:
		return message.Invalid.Errorf("nothing lies in %v: name the grain", b.ID)
	default:
		return message.Invalid.Errorf("%d grains lie in %v: name the one that is meant", len(b.Grain), b.ID)
	}
	return nil
}

// all is the weight typed, or all of the grain that lies in the bin it is taken from.
func (r *reading) all() (quantity.Amount, error) {
	if quantity.Recorded(r.weight) {
		return r.weight, nil
	}
	lies, there := r.house.lies(r.from, r.m.Commodity)
	if !there {
		return lies, message.Refused.Errorf("none of this grain lies in %v", r.from)
	}
	return lies, nil
}

func one(name string, w quantity.Amount) []bin.Weighed { return []bin.Weighed{{Bin: name, Weight: w}} }

// compose sets what was read into the movement; an error is about the field it names.
func (r *reading) compose() (field string, err error) {
	switch r.m.What {
	case bin.Transfer, bin.Turn, bin.Clean:
		return r.composeAll()
	case bin.Blend:
		r.m.From = r.parts
		r.m.Into = one(r.into, r.m.In())
	case bin.Dry:
		r.m.From, r.m.Into = one(r.from, r.weight), one(r.into, r.out)
	case bin.WriteOff:
		r.m.From = one(r.from, r.weight)
	case bin.WeighOver:
		r.m.Count = &bin.Count{Bin: r.from, Counted: r.counted, Posted: true}
	case bin.MeasureUp:
		r.m.Count.Bin = r.from
	default: // nothing is weighed
		r.m.From = one(r.from, quantity.Zero(r.house.Unit))
	}
	return "", nil
}

// composeAll is a movement of a weight, or of all that lies in a bin, less what was lost or taken
// out on the way.
func (r *reading) composeAll() (field string, err error) {
	w, err := r.all()
	if err != nil {
		return fromID, err
	}
	less, field := r.lost, lostID
	if r.m.What == bin.Clean {
		less, field = r.m.Screenings, screeningsID
	}
	if quantity.Recorded(less) && less.Unit() != w.Unit() {
		return field, message.Invalid.Errorf("%s went in and %s is told in another unit: weigh both in one", w, less)
	}
	r.m.From = one(r.from, w)
	if quantity.Recorded(less) {
		w = w.Sub(less)
	}
	r.m.Into = one(cmp.Or(r.into, r.from), w)
	return "", nil
}
