package guard

import (
	"slices"
	"strings"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
)

// Held is a bin that grain is moved out of or into, before the movement.
type Held struct {
	elevator.Bin
	Stock []Stock
	// Top is the lot of what was put there last, of the grain that is moved; empty for none.
	Top string
}

// lot is the lot that the bin is for, else what lies on top.
func (h Held) lot() string {
	if h.Bin.Lot != "" {
		return h.Bin.Lot
	}
	return h.Top
}

// matters reports whether a lot is to be told apart there: the bin is for one, or grain lies in it.
func (h Held) matters(commodity string) bool {
	return h.Bin.Lot != "" || slices.ContainsFunc(h.Stock, func(s Stock) bool { return s.Commodity == commodity && s.Weight.Sign() > 0 })
}

// LotOf is the lot of grain taken out of bins; empty where it is of none, or of several.
func LotOf(from []Held) string {
	for _, h := range from {
		if !strings.EqualFold(h.lot(), from[0].lot()) {
			return ""
		}
	}
	if len(from) == 0 {
		return ""
	}
	return from[0].lot()
}

// CheckMove finds what is improbable about a movement of grain, by the guards of bins and lots and as
// the house has set them.
func CheckMove(m bin.Movement, house elevator.Profile, from, into []Held) []Finding {
	var out []Finding
	say := func(id ID, said message.Text) {
		r, _ := ByID(string(id))
		if by := r.At(house, m.Commodity, ""); by.Act != elevator.GuardOff {
			out = append(out, Finding{ID: string(id), Guard: id, Act: by.Act, Said: said})
		}
	}
	for _, h := range into {
		if said := onOtherGrain(m.Commodity, h); !said.IsZero() {
			say(OtherBin, said)
		}
	}
	if said := lotsTogether(m.Commodity, slices.Concat(from, into)); !said.IsZero() {
		say(OtherLot, said)
	}
	return out
}

// onOtherGrain says that grain is put where other grain lies or belongs. A bin for no grain by name
// is for any.
func onOtherGrain(commodity string, into Held) message.Text {
	if into.Commodity == "" {
		return message.Text{}
	}
	name := func(id string) message.Text { return message.Words(grain.NameOf(id)) }
	if into.Commodity != commodity {
		return message.New("%v is for %s, and %s is to be put into it", into.ID, name(into.Commodity), name(commodity))
	}
	for _, s := range into.Stock {
		if s.Commodity != commodity && s.Weight.Sign() > 0 {
			return message.New("%s of %s lie in %v, and %s is to be put on it", s.Weight, name(s.Commodity), into.ID, name(commodity))
		}
	}
	return message.Text{}
}

// lotsTogether says that grain of two lots, or of one and of none, comes together. A bin that grain
// goes back into is the same bin.
func lotsTogether(commodity string, held []Held) message.Text {
	held = slices.DeleteFunc(held, func(h Held) bool { return !h.matters(commodity) })
	for _, h := range held {
		one, other := held[0], h
		switch {
		case strings.EqualFold(one.lot(), other.lot()):
			continue
		case one.lot() == "":
			one, other = other, one
			fallthrough
		case other.lot() == "":
			return message.New("Lot %v of %v comes together with grain of no lot in %v", one.lot(), one.ID, other.ID)
		}
		return message.New("Lot %v of %v comes together with lot %v of %v", one.lot(), one.ID, other.lot(), other.ID)
	}
	return message.Text{}
}
