package yard

import (
	"slices"
	"strconv"

	"tenthpoint/ui/session"
)

// yardPlaces is the number of trucks on the yard with a key of their own.
const yardPlaces = 8

// firstYardKey is the number of the F-key of the first place.
const firstYardKey = 2

// places are the trucks with a key, by the ids of their loads. A truck keeps its
// place, and with it its key, until it leaves.
type places [yardPlaces]string

// at is the load at a place, counted from 0; empty when the place is free.
func (p *places) at(place int) string {
	if place < 0 || place >= yardPlaces {
		return ""
	}
	return p[place]
}

// has reports whether a load has a place.
func (p *places) has(id string) bool { return slices.Contains(p[:], id) }

// clear frees the places of loads that are not here any more.
func (p *places) clear(isHere func(id string) bool) {
	for i, id := range p {
		if !isHere(id) {
			p[i] = ""
		}
	}
}

// give assigns a load the first free place, unless it has one or none is free.
func (p *places) give(id string) {
	if free := slices.Index(p[:], ""); free >= 0 && !p.has(id) {
		p[free] = id
	}
}

// placeText is the name of a place in a draft, with its number after it.
const placeText = "place."

// texts are the places as texts of a draft.
func (p *places) texts() map[string]string {
	out := map[string]string{}
	for i, id := range p {
		if id != "" {
			out[placeText+strconv.Itoa(i+1)] = id
		}
	}
	return out
}

// restore reads the places of a draft.
func (p *places) restore(texts map[string]string) {
	for place, id := range session.CutAll(texts, placeText) {
		if n, err := strconv.Atoi(place); err == nil && n > 0 && n <= yardPlaces && !p.has(id) {
			p[n-1] = id
		}
	}
}
