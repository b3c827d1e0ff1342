package settle_test

import (
	"math/big"
	"slices"
	"strings"
)

// oracle works one load under one edition. Lines holds every figure it came
// to; refused is why there is none.
type oracle struct {
	e       *oracleEdition
	load    oracleLoad
	lines   map[string]*big.Rat
	found   map[string]*big.Rat
	gives   map[string]string
	owned   map[string]bool // parted by each owner's own price
	refused string

	net, clean, wet, dry, left *big.Rat
	docked                     bool     // a discount has taken of the weight
	keep                       *big.Rat // the part of the grain that water and handling leave
	over                       bool     // moisture is above the shrink trigger
}

func rat(n, d int64) *big.Rat          { return big.NewRat(n, d) }
func add(a, b *big.Rat) *big.Rat       { return new(big.Rat).Add(a, b) }
func minus(a, b *big.Rat) *big.Rat     { return new(big.Rat).Sub(a, b) }
func times(a, b *big.Rat) *big.Rat     { return new(big.Rat).Mul(a, b) }
func over(a, b *big.Rat) *big.Rat      { return new(big.Rat).Quo(a, b) }
func percentOf(p, w *big.Rat) *big.Rat { return over(times(p, w), rat(100, 1)) }

func workOracle(e *oracleEdition, l oracleLoad) *oracle {
	o := &oracle{e: e, load: l, lines: map[string]*big.Rat{}, gives: map[string]string{}, owned: map[string]bool{}}
	o.weigh()
	o.record()
	for _, place := range o.places() {
		if o.refused == "" {
			o.take(place)
		}
	}
	if o.refused == "" {
		o.settle()
	}
	return o
}

func (o *oracle) refuse(why string) { o.refused = why }

func (o *oracle) weigh() {
	net := rat(0, 1)
	for _, d := range o.load.drafts {
		net = add(net, minus(figure(d[0]), figure(d[1])))
	}
	// One pound is 0.45359237 kg by definition (1959 agreement).
	kgPerLb := figure("0.45359237")
	switch {
	case o.load.unit == o.e.Units.Weight:
	case o.load.unit == "lb":
		net = roundTo(times(net, kgPerLb), o.e.Rounding["weight"])
	default:
		net = roundTo(over(net, kgPerLb), o.e.Rounding["weight"])
	}
	o.net, o.clean, o.left, o.wet = net, net, net, net
	o.lines["net"] = net
}

// otherwise are the recording rules of what no grade table has: common practice.
var otherwise = map[string]string{"don": "0.1 half-up", "aflatoxin": "1 half-up", "falling-number": "1 half-up"}

// record writes results down as 7 CFR 810.102 and 810.104 say: percents to the
// tenth, 5 going up; test weight to the tenth of a pound for corn, rye,
// sorghum, soybeans, triticale and wheat and in half pounds, the rest dropped,
// for other grains; ergot to the hundredth its limit is written to.
func (o *oracle) record() {
	o.found = map[string]*big.Rat{"moisture": roundTo(figure(o.load.moisture), o.e.Rounding["moisture"])}
	grain, _, _ := strings.Cut(o.e.Edition.Commodity, "-")
	tenths := slices.Contains([]string{"corn", "sorghum", "soybeans", "wheat"}, grain)
	for _, f := range o.load.findings {
		rule := "0.1 half-up"
		switch {
		case f.unit == "lb/bu" && !tenths:
			rule = "0.5 down"
		case f.factor == "ergot":
			rule = "0.01 half-up"
		case f.factor == "dockage":
			rule = dockageRule[grain]
		}
		if other, known := otherwise[f.factor]; known {
			rule = other
		}
		for _, own := range o.e.Factor {
			if own.ID == f.factor {
				rule = own.Record
			}
		}
		o.found[f.factor] = roundTo(figure(f.value), rule)
	}
}

// dockageRule is 7 CFR 810.104(b); those of canola, oats and soybeans are practice.
var dockageRule = map[string]string{
	"wheat": "0.1 half-up", "barley": "0.5 down", "sorghum": "1 down", "canola": "0.1 half-up",
	"oats": "0.1 half-up", "soybeans": "0.1 half-up",
}

// places is the order with "discounts" taken apart.
func (o *oracle) places() []string {
	var out []string
	for _, place := range o.e.Edition.Order {
		if place != "discounts" {
			out = append(out, place)
			continue
		}
		for _, d := range o.e.Discount {
			if !slices.Contains(o.e.Edition.Order, "discount."+d.name()) {
				out = append(out, "discount."+d.name())
			}
		}
	}
	return out
}

func (o *oracle) take(place string) {
	switch place {
	case "dockage":
		o.dockage()
	case "shrink":
		o.shrink()
	case "handling":
		o.handling()
	case "drying":
		o.drying()
	default:
		for _, d := range o.e.Discount {
			if "discount."+d.name() == place {
				o.discount(d)
			}
		}
	}
}

func (o *oracle) off(line string, weight *big.Rat) {
	o.lines[line] = weight
	o.left = minus(o.left, weight)
	if o.left.Sign() <= 0 {
		o.refuse(line + " leaves nothing")
	}
}

func (o *oracle) on(basis string) *big.Rat {
	if basis == "dry" && o.docked && o.e.Edition.AfterWeight == "settled" {
		return o.left
	}
	return map[string]*big.Rat{"net": o.net, "clean": o.clean, "dry": o.dry, "left": o.left}[basis]
}

func (o *oracle) dockage() {
	percent, tested := o.found["dockage"]
	if !tested {
		if o.e.Dockage.Untested == "refuse" {
			o.refuse("dockage not tested")
		}
		percent = rat(0, 1)
	}
	o.off("dockage", roundTo(percentOf(percent, o.net), o.e.placeOf(o.e.Dockage.Round, "weight")))
	o.clean, o.wet = o.left, o.left
}

func (o *oracle) shrink() {
	s, m, before := o.e.Shrink, o.found["moisture"], o.left
	o.keep = rat(1, 1)
	if s.Method == "none" {
		o.off("water", rat(0, 1))
		return
	}
	o.wet = o.on(s.Basis)
	to := figure(s.To)
	o.over = m.Cmp(figure(s.Trigger)) > 0
	water := rat(0, 1)
	switch {
	case !o.over && s.OverDry == "dry-matter" && m.Cmp(to) < 0:
		if floor := figure(s.OverDryFloor); m.Cmp(floor) < 0 {
			m = floor
		}
		water = waterOf(o.wet, m, to)
	case !o.over:
	case s.Method == "water":
		water = waterOf(o.wet, m, to)
	case s.Method == "per-point":
		points := roundTo(minus(m, to), s.Step)
		water = percentOf(roundTo(times(points, figure(s.Rate)), s.RoundPercent), o.wet)
	default:
		row, ok := rowOf(s.Row, m)
		if !ok {
			o.refuse("moisture off the shrink table")
			return
		}
		water = percentOf(figure(row.Shrink), o.wet)
	}
	o.off("water", roundTo(water, o.e.placeOf(s.Round, "weight")))
	o.keep = over(minus(before, o.lines["water"]), before)
}

// waterOf is W x (Mi - Mf) / (100 - Mf).
func waterOf(weight, from, to *big.Rat) *big.Rat {
	return over(times(weight, minus(from, to)), minus(rat(100, 1), to))
}

func (o *oracle) handling() {
	h := o.e.Handling
	loss := rat(0, 1)
	if h.Method != "none" && (o.over || h.Always) {
		on := o.wet
		if h.Method == "dried" {
			on = o.left
		}
		loss = roundTo(percentOf(figure(h.Rate), on), o.e.placeOf(h.Round, "weight"))
	}
	before := o.left
	o.off("handling", loss)
	o.dry = minus(minus(o.clean, o.lines["water"]), loss)
	if o.docked && o.e.Edition.Format == "2" {
		o.dry = roundTo(times(o.clean, times(o.keep, over(minus(before, loss), before))), o.e.Rounding["weight"])
	}
	if o.dry.Sign() <= 0 {
		o.refuse("no dry weight")
	}
	o.lines["dry"] = o.dry
}

// units is a weight in bu, cwt or t, rounded as it is printed.
func (o *oracle) units(weight *big.Rat, unit string) *big.Rat {
	lb := rat(1, 1) // one pound in the edition's weight
	if o.e.Units.Weight == "kg" {
		lb = figure("0.45359237")
	}
	var each *big.Rat
	switch unit {
	case "bu":
		each = figure(o.e.Units.Bushel)
	case "cwt":
		each = times(rat(100, 1), lb)
	case "t":
		each = over(times(rat(1000, 1), lb), figure("0.45359237"))
	}
	return roundTo(over(weight, each), o.e.Rounding["quantity"])
}
