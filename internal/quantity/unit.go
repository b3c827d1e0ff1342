package quantity

import (
	"slices"
	"strings"

	"tenthpoint/internal/message"
)

// base numbers the units that every other unit is made of.
type base int

const (
	lb base = iota
	kg
	cwt
	tonne
	gram
	bushel
	hectolitre
	percent
	point
	dollar
	fahrenheit
	celsius
	dial
	count
	partsPerMillion
	partsPerBillion
	second
	hour
	day
	gallon
	litre
	kilowattHour
	cubicFeetPerMinute
	foot
	metre
	bases
)

var symbols = [bases]string{
	lb: "lb", kg: "kg", cwt: "cwt", tonne: "t", gram: "g",
	bushel: "bu", hectolitre: "hL", percent: "%", point: "pt", dollar: "$",
	fahrenheit: "°F", celsius: "°C", dial: "dial", count: "ct",
	partsPerMillion: "ppm", partsPerBillion: "ppb", second: "s",
	hour: "h", day: "d", gallon: "gal", litre: "L", kilowattHour: "kWh", cubicFeetPerMinute: "cfm",
	foot: "ft", metre: "m",
}

// Unit is the unit of an [Amount]. It is a product of base units, so the unit of a product or
// quotient follows from its parts. The zero Unit is a plain number. Units are comparable with ==.
type Unit struct {
	exp [bases]int8
}

// The units of the trade. Percent is wet-basis moisture or a share of a weight; Point is one
// percentage point of moisture; Cwt is 100 lb; Tonne is 1000 kg; Dial is one division of a moisture
// meter's dial; Count is a plain tally, such as smut balls in a sample. PPM and PPB are milligrams
// and micrograms of a toxin in a kilogram of grain; Second measures the time the rod of a falling
// number test falls. Hour, Day, the US Gallon and the Litre of fuel, KilowattHour and CFM, a fan's
// cubic feet of air a minute, are what drying and aeration are reckoned in. Foot and Metre measure a
// bin; a product of three of them is its room.
var (
	Plain      = Unit{}
	Lb         = one(lb)
	Kg         = one(kg)
	Cwt        = one(cwt)
	Tonne      = one(tonne)
	Gram       = one(gram)
	Bushel     = one(bushel)
	Hectolitre = one(hectolitre)
	Percent    = one(percent)
	Point      = one(point)
	Dollar     = one(dollar)
	Fahrenheit = one(fahrenheit)
	Celsius    = one(celsius)
	Dial       = one(dial)
	Count      = one(count)
	PPM        = one(partsPerMillion)
	PPB        = one(partsPerBillion)
	Second     = one(second)
	Hour       = one(hour)
	Day        = one(day)
	Gallon     = one(gallon)
	Litre      = one(litre)
	KWh        = one(kilowattHour)
	CFM        = one(cubicFeetPerMinute)
	Foot       = one(foot)
	Metre      = one(metre)

	LbPerBushel   = Lb.Per(Bushel)
	KgPerHL       = Kg.Per(Hectolitre)
	DollarsPerBu  = Dollar.Per(Bushel)
	DollarsPerCwt = Dollar.Per(Cwt)
	DollarsPerT   = Dollar.Per(Tonne)
)

func one(b base) Unit {
	var u Unit
	u.exp[b] = 1
	return u
}

// Times is the unit of a product.
func (u Unit) Times(v Unit) Unit {
	for i := range u.exp {
		u.exp[i] += v.exp[i]
	}
	return u
}

// Per is the unit of a quotient: Dollar.Per(Bushel) is "$/bu".
func (u Unit) Per(v Unit) Unit {
	for i := range u.exp {
		u.exp[i] -= v.exp[i]
	}
	return u
}

// IsMass reports whether u measures the weight of grain on its own: lb, kg,
// cwt, t or g.
func (u Unit) IsMass() bool {
	switch u {
	case Lb, Kg, Cwt, Tonne, Gram:
		return true
	}
	return false
}

// IsMoney reports whether u is money, or money for something: $, $/bu.
func (u Unit) IsMoney() bool { return u.exp[dollar] != 0 }

// usual are the units that nearly every figure is in, with their texts: books hold
// them by the million.
var usual = usualUnits(Lb, Kg, Cwt, Tonne, Bushel, Percent, Point, Dollar, Count, LbPerBushel, KgPerHL, DollarsPerBu, DollarsPerCwt, DollarsPerT)

// unitTexts leads from units to their texts, and back.
type unitTexts struct {
	text map[Unit]string
	unit map[string]Unit
}

func usualUnits(units ...Unit) unitTexts {
	out := unitTexts{map[Unit]string{}, map[string]Unit{}}
	for _, u := range units {
		text := u.spelled()
		out.text[u], out.unit[text] = text, u
	}
	return out
}

// String is the unit as printed: "lb", "$/bu/pt", "%". A plain number has the
// empty string.
func (u Unit) String() string {
	if text, ok := usual.text[u]; ok {
		return text
	}
	return u.spelled()
}

func (u Unit) spelled() string {
	var over, under []string
	for _, b := range printOrder {
		for n := u.exp[b]; n > 0; n-- {
			over = append(over, symbols[b])
		}
		for n := u.exp[b]; n < 0; n++ {
			under = append(under, symbols[b])
		}
	}
	if len(under) == 0 {
		return strings.Join(over, "·")
	}
	top := strings.Join(over, "·")
	if top == "" {
		top = "1"
	}
	return top + "/" + strings.Join(under, "/")
}

// printOrder puts money first and points last, as in dollars per bushel per point.
var printOrder = []base{dollar, lb, kg, cwt, tonne, gram, percent, fahrenheit,
	celsius, dial, count, partsPerMillion, partsPerBillion, second, gallon, litre, kilowattHour, cubicFeetPerMinute, foot, metre, hour, day, bushel, hectolitre, point}

// maxUnitParts is far more than any rate of the trade has.
const maxUnitParts = 12

// ParseUnit reads a unit as String writes it. It answers with the list of
// known units when a part is not one of them.
func ParseUnit(text string) (Unit, error) {
	if !hasUnitParts(text) {
		return Unit{}, message.Invalid.Errorf("%.20q… has more parts than any unit; known units are %s", text, knownUnits())
	}
	u, unknown, ok := readUnit(text)
	if !ok {
		return Unit{}, message.Invalid.Errorf("%q is not a unit; known units are %s", unknown, knownUnits())
	}
	return u, nil
}

// IsUnit reports whether [ParseUnit] can read a text. It builds no error, because texts are asked
// about word by word where lines are broken.
func IsUnit(text string) bool {
	if !hasUnitParts(text) {
		return false
	}
	_, _, ok := readUnit(text)
	return ok
}

// hasUnitParts reports whether a text has no more parts than a unit may have.
func hasUnitParts(text string) bool {
	return strings.Count(text, "/")+strings.Count(text, "·") < maxUnitParts
}

// readUnit reads a unit, or returns the part of it that is unknown.
func readUnit(text string) (u Unit, unknown string, ok bool) {
	if u, ok := usual.unit[text]; ok {
		return u, "", true
	}
	over, under, isQuotient := strings.Cut(text, "/")
	if strings.TrimSpace(over) != "1" {
		for part := range strings.SplitSeq(over, "·") {
			b, unknown, ok := baseOf(part)
			if !ok {
				return Unit{}, unknown, false
			}
			u = u.Times(one(b))
		}
	}
	if !isQuotient {
		return u, "", true
	}
	for part := range strings.SplitSeq(under, "/") {
		b, unknown, ok := baseOf(part)
		if !ok {
			return Unit{}, unknown, false
		}
		u = u.Per(one(b))
	}
	return u, "", true
}

// baseOf finds a base unit by its symbol, or returns the symbol as it was sought.
func baseOf(symbol string) (b base, unknown string, ok bool) {
	symbol = strings.TrimSpace(symbol)
	i := slices.Index(symbols[:], symbol)
	return base(max(i, 0)), symbol, i >= 0
}

func knownUnits() string {
	return strings.Join(slices.Sorted(slices.Values(symbols[:])), ", ")
}
