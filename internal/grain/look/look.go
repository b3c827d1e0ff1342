// Package look says how each grain is drawn, wherever it is drawn: in bins, on tags, in charts, on
// paper. A grain has a colour and a hatching, so that no picture is told by colour alone, neither by
// somebody who cannot tell red from green nor on a printer without colours.
package look

import "slices"

// Look is the drawing style of one kind of thing.
type Look struct {
	// Light is its colour on a light ground and on paper, Dark on a dark one.
	Light, Dark Colour
	Hatch       Hatch
}

// Colour is red, green and blue, 0 to 255.
type Colour struct{ Red, Green, Blue uint8 }

// Toward is the colour mixed with another, of which it takes so many parts in a hundred.
func (c Colour) Toward(other Colour, parts int) Colour {
	mix := func(a, b uint8) uint8 { return uint8((int(a)*(100-parts) + int(b)*parts) / 100) }
	return Colour{mix(c.Red, other.Red), mix(c.Green, other.Green), mix(c.Blue, other.Blue)}
}

// Washed is the share to which the ground between the lines of a hatching is mixed toward the ground around
// it, in parts of a hundred.
const Washed = 62

// The colours of ground and grain, each with its lighter one for the night.
var (
	gold   = [2]Colour{{0x9A, 0x6A, 0x00}, {0xE0, 0xB0, 0x40}}
	green  = [2]Colour{{0x2F, 0x6B, 0x35}, {0x7F, 0xC1, 0x86}}
	rust   = [2]Colour{{0xA4, 0x49, 0x1D}, {0xE8, 0x92, 0x6A}}
	brown  = [2]Colour{{0x6B, 0x4A, 0x1E}, {0xC9, 0xA3, 0x6B}}
	plum   = [2]Colour{{0x7A, 0x3B, 0x6B}, {0xCF, 0x95, 0xC2}}
	berry  = [2]Colour{{0x8A, 0x2E, 0x3F}, {0xE5, 0x8A, 0x9A}}
	blue   = [2]Colour{{0x1F, 0x5F, 0x8B}, {0x7F, 0xB8, 0xE6}}
	violet = [2]Colour{{0x4B, 0x4F, 0x9A}, {0xA9, 0xAD, 0xEE}}
	sea    = [2]Colour{{0x0E, 0x6E, 0x6E}, {0x6C, 0xC8, 0xC8}}
	olive  = [2]Colour{{0x6A, 0x6A, 0x1E}, {0xC4, 0xC4, 0x6A}}
	grey   = [2]Colour{{0x5C, 0x5C, 0x5C}, {0xB8, 0xB8, 0xB8}}
)

// of is the look of every grain by its id. Those that stand in one house side by side differ in
// colour and hatching both.
var of = map[string]Look{
	"corn":               with(gold, Full),
	"soybeans":           with(green, Rising),
	"wheat-hrw":          with(rust, Falling),
	"wheat-hrs":          with(berry, Dots),
	"wheat-srw":          with(plum, Level),
	"wheat-white":        with(brown, Upright),
	"wheat-white-club":   with(brown, Wide(Dots)),
	"wheat-durum":        with(olive, Grid),
	"sorghum":            with(violet, Cross),
	"barley":             with(sea, Upright),
	"barley-malting-six": with(sea, Wide(Cross)),
	"barley-malting-two": with(sea, Wide(Grid)),
	"oats":               with(blue, Level),
	"rye":                with(olive, Wide(Rising)),
	"triticale":          with(brown, Wide(Falling)),
	"flaxseed":           with(blue, Wide(Dots)),
	"canola":             with(olive, Dots),
	"sunflower":          with(gold, Wide(Upright)),
	"peas":               with(green, Wide(Level)),
	"lentils":            with(rust, Wide(Level)),
	"beans":              with(berry, Wide(Upright)),
	"faba-beans":         with(plum, Wide(Rising)),
	"chickpeas":          with(rust, Wide(Grid)),
	"mustard":            with(gold, Grid),
	"rapeseed":           with(olive, Wide(Cross)),
	"buckwheat":          with(plum, Wide(Dots)),
	"safflower":          with(berry, Wide(Falling)),
	"canary-seed":        with(violet, Wide(Level)),
	"mixed-grain":        with(grey, Wide(Cross)),
}

func with(colours [2]Colour, hatch Hatch) Look {
	return Look{Light: colours[0], Dark: colours[1], Hatch: hatch}
}

// Of is the look of a grain; of one that is not known, plain grey.
func Of(commodity string) Look {
	if l, known := of[commodity]; known {
		return l
	}
	return Other
}

// Other is the look of what is no grain of the list.
var Other = with(grey, Full)

// Kinds are looks for things that are no grain, such as kinds of income: as many as there are, each
// unlike the one before.
var kinds = []Look{
	with(blue, Full), with(rust, Rising), with(green, Dots), with(plum, Falling), with(olive, Level), with(berry, Cross), with(sea, Upright), with(violet, Grid),
}

// Kind is the look of the nth kind of things that are no grain, counted from zero.
func Kind(n int) Look { return kinds[n%len(kinds)] }

// Grains are the ids that have a look of their own.
func Grains() []string {
	var out []string
	for id := range of {
		out = append(out, id)
	}
	slices.Sort(out)
	return out
}
