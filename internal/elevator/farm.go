package elevator

import (
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/textsearch"
)

// Farm is one farm or field of a grower, and who shares in what grows there: a tenant has one
// landlord on the home place and another across the road.
type Farm struct {
	Name   string `json:"name"`
	Number string `json:"number,omitempty"` // by which public offices know it
	Field  string `json:"field,omitempty"`
	Place  string `json:"place,omitempty"` // county and state
	// Commodity and CropYear narrow the split; empty is any.
	Commodity string  `json:"commodity,omitempty"`
	CropYear  string  `json:"crop_year,omitempty"`
	Shares    []Share `json:"shares,omitempty"`
}

func (f Farm) check() error {
	if strings.TrimSpace(f.Name) == "" {
		return message.Invalid.Errorf("a farm has a name; it is empty")
	}
	return checkShares(f.Name, f.Shares)
}

// isSame reports whether two splits are for the same grain of the same ground.
func (f Farm) isSame(o Farm) bool {
	return textsearch.Equal(f.Name, o.Name) && textsearch.Equal(f.Field, o.Field) && f.Commodity == o.Commodity && f.CropYear == o.CropYear
}

// FarmFor is the farm that a text names by name or number, as it is split for a field, a grain and a
// year: the split that says the most about them.
func (g Grower) FarmFor(text, field, commodity, cropYear string) (best Farm, known bool) {
	most := -1
	for _, f := range g.Farms {
		named := textsearch.Equal(f.Name, text) || f.Number != "" && textsearch.Equal(f.Number, text)
		says, fits := 0, named
		for _, one := range [][2]string{{f.Field, field}, {f.Commodity, commodity}, {f.CropYear, cropYear}} {
			switch {
			case one[0] == "":
			case textsearch.Equal(one[0], one[1]):
				says++
			default:
				fits = false
			}
		}
		if fits && says > most {
			best, known, most = f, true, says
		}
	}
	return best, known
}

// WithFarm is the grower with a farm, in the place of its split for the same grain and year.
func (g Grower) WithFarm(f Farm) Grower {
	out := []Farm{}
	for _, o := range g.Farms {
		if !o.isSame(f) {
			out = append(out, o)
		}
	}
	g.Farms = append(out, f)
	return g
}

// Takeover is the end of a grower's card: another has taken its place, because both were one grower
// or because an estate or heir goes on.
type Takeover struct {
	Grower string        `json:"grower"` // code of the other card
	Kind   TakeoverKind  `json:"kind"`
	Day    quantity.Date `json:"day"`
	Reason string        `json:"reason"`
}

// TakeoverKind is why a card has ended.
type TakeoverKind string

// Two cards of one grower are merged; an estate takes over from who has died.
const (
	Merged TakeoverKind = "merged"
	Estate TakeoverKind = "estate"
)

// Card is a grower in the list, with the codes and names that lead to it.
type Card struct {
	Grower
	Codes []string // its own, then those of the cards it has taken over
	Names []string // all names but its own
}

// Cards are the growers who are still on the list, each with those it has taken over.
func Cards(all []Grower) []Card {
	byID := map[string]Grower{}
	for _, g := range all {
		byID[g.ID] = g
	}
	at := map[string]int{}
	var out []Card
	for _, g := range all {
		if g.Into == nil {
			at[g.ID] = len(out)
			out = append(out, Card{Grower: g, Codes: []string{g.ID}, Names: append([]string{}, g.Former...)})
		}
	}
	for _, g := range all {
		if g.Into == nil {
			continue
		}
		if i, there := at[successor(byID, g)]; there {
			out[i].Codes = append(out[i].Codes, g.ID)
			out[i].Names = append(append(out[i].Names, g.Name), g.Former...)
		}
	}
	return out
}

// successor is the code of the card that has taken a grower's place in the end.
func successor(byID map[string]Grower, g Grower) string {
	for range byID { // no chain is longer
		if g.Into == nil {
			break
		}
		g = byID[g.Into.Grower]
	}
	return g.ID
}

// CardOf is the card that a code leads to.
func CardOf(all []Grower, code string) (Card, bool) {
	c, known := CardsByCode(all)[code]
	return c, known
}

// ByCode are the cards that go on, by every code that leads to them.
type ByCode map[string]Card

// CardsByCode finds the card of each code.
func CardsByCode(all []Grower) ByCode {
	out := ByCode{}
	for _, c := range Cards(all) {
		for _, code := range c.Codes {
			out[code] = c
		}
	}
	return out
}

// Now is the code that goes on in place of a code; itself if it is on no card.
func (b ByCode) Now(code string) string {
	if c, known := b[code]; known {
		return c.ID
	}
	return code
}

// Codes are all codes of the card that a code leads to; itself if it is on no card.
func (b ByCode) Codes(code string) []string {
	if c, known := b[code]; known {
		return c.Codes
	}
	return []string{code}
}
