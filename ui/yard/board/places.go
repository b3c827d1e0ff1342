package board

import (
	"slices"
	"strconv"

	"tenthpoint/ui/session"
)

// PlaceCount is the number of trucks on the yard with a key of their own: F2 to F9, then the same keys
// with Ctrl.
const PlaceCount = 16

// firstKey is the number of the F-key of the first place, and keys how many there are.
const firstKey, keys = 2, 8

// KeyOf names the key of a place, counted from 0.
func KeyOf(place int) string {
	key := "F" + strconv.Itoa(place%keys+firstKey)
	if place >= keys {
		return "Ctrl+" + key
	}
	return key
}

// Places are the trucks with a key, by the ids of their loads. A truck keeps its
// place, and with it its key, until it leaves.
type Places [PlaceCount]string

// At is the load at a place, counted from 0; empty when the place is free.
func (p *Places) At(place int) string {
	if place < 0 || place >= PlaceCount {
		return ""
	}
	return p[place]
}

// Has reports whether a load has a place.
func (p *Places) Has(id string) bool { return slices.Contains(p[:], id) }

// Clear frees the places of loads that are not here any more.
func (p *Places) Clear(isHere func(id string) bool) {
	for i, id := range p {
		if !isHere(id) {
			p[i] = ""
		}
	}
}

// Give assigns a load the first free place, unless it has one or none is free.
func (p *Places) Give(id string) {
	if free := slices.Index(p[:], ""); free >= 0 && !p.Has(id) {
		p[free] = id
	}
}

// Move brings a load so many places on, past the loads there, and reports whether it moved. The one
// whose place it takes gets its own.
func (p *Places) Move(id string, by int) bool {
	at := slices.Index(p[:], id)
	for to := at + by; at >= 0 && to >= 0 && to < PlaceCount; to += by {
		if p[to] != "" {
			p[at], p[to] = p[to], p[at]
			return true
		}
	}
	return false
}

// Order gives the first places to loads in their order, so that no key between them is free.
func (p *Places) Order(ids []string) {
	*p = Places{}
	copy(p[:], ids)
}

// placeText is the name of a place in a draft, with its number after it.
const placeText = "place."

// Texts are the places as texts of a draft.
func (p *Places) Texts() map[string]string {
	out := map[string]string{}
	for i, id := range p {
		if id != "" {
			out[placeText+strconv.Itoa(i+1)] = id
		}
	}
	return out
}

// Restore reads the places of a draft.
func (p *Places) Restore(texts map[string]string) {
	for place, id := range session.CutAll(texts, placeText) {
		if n, err := strconv.Atoi(place); err == nil && n > 0 && n <= PlaceCount && !p.Has(id) {
			p[n-1] = id
		}
	}
}
