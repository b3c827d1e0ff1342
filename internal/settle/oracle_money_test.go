package settle_test

import (
	"fmt"
	"math/big"
	"slices"
	"strings"
)

// rateUnit is bu, cwt or t out of "$/bu/pt".
func rateUnit(rate string) string { return strings.Split(unitIn(rate), "/")[1] }

func (o *oracle) drying() {
	d, m := o.e.Drying, o.found["moisture"]
	o.lines["drying"] = rat(0, 1)
	if d.Method == "none" || m.Cmp(figure(d.Trigger)) <= 0 {
		return
	}
	to, points := figure(d.To), roundTo(minus(m, figure(d.To)), d.Step)
	charge := rat(0, 1)
	switch d.Method {
	case "per-point":
		charge = o.perPoint(d.Rate, points)
	case "bands-whole":
		row, ok := rowOf(d.Band, m)
		if !ok {
			o.refuse("moisture off the drying bands")
			return
		}
		if strings.HasSuffix(row.Rate, "/pt") {
			charge = o.perPoint(row.Rate, points)
		} else {
			charge = o.perPoint(row.Rate, rat(1, 1))
		}
	case "bands-each":
		if _, ok := rowOf(d.Band, m); !ok {
			o.refuse("moisture off the drying bands")
			return
		}
		charge = o.throughBands(to, add(to, points))
	}
	if d.Minimum != "" && charge.Sign() > 0 && charge.Cmp(figure(d.Minimum)) < 0 {
		charge = figure(d.Minimum)
	}
	o.lines["drying"] = roundTo(charge, o.e.placeOf(d.Round, "money"))
}

func (o *oracle) perPoint(rate string, points *big.Rat) *big.Rat {
	return times(times(figure(rate), points), o.units(o.on(o.e.Drying.Basis), rateUnit(rate)))
}

// throughBands climbs from the dry end to the wet, band by band; the last band
// has no top.
func (o *oracle) throughBands(at, top *big.Rat) *big.Rat {
	sum := rat(0, 1)
	bands := o.e.Drying.Band
	for i, b := range bands {
		end := top
		if high := b.Upto + b.Under; high != "" && i < len(bands)-1 && figure(high).Cmp(top) < 0 {
			end = figure(high)
		}
		if end.Cmp(at) > 0 {
			sum = add(sum, o.perPoint(b.Rate, minus(end, at)))
			at = end
		}
	}
	return sum
}

// discount works one factor's rule.
func (o *oracle) discount(d oracleDiscount) {
	line := "discount." + d.name()
	o.lines[line] = rat(0, 1)
	x, tested := o.found[d.Factor]
	if !tested {
		if d.Untested == "refuse" {
			o.refuse(d.Factor + " not tested")
		}
		return
	}
	if o.beyondLimit(d, x) && !o.load.acceptedAll {
		o.refuse(d.Factor + " beyond the limit")
		return
	}
	docks, pays, ok := o.figureOf(d, x)
	if !ok || docks == "" && pays == "" {
		return
	}
	text := docks
	if pays != "" {
		text, o.gives[line] = pays, "premium"
	}
	o.lines[line] = o.deduct(d, text)
}

func (o *oracle) beyondLimit(d oracleDiscount, x *big.Rat) bool {
	row, _ := rowOf(d.Row, x)
	return d.RefuseOver != "" && x.Cmp(figure(d.RefuseOver)) > 0 ||
		d.RefuseUnder != "" && x.Cmp(figure(d.RefuseUnder)) < 0 ||
		d.Form == "table" && row.Refuse ||
		d.Form == "yes-no" && d.Refuse && x.Sign() > 0
}

// figureOf is the figure, with its unit, that a value brings.
func (o *oracle) figureOf(d oracleDiscount, x *big.Rat) (docks, pays string, ok bool) {
	switch d.Form {
	case "yes-no":
		return d.Discount, d.Premium, x.Sign() > 0
	case "table":
		row, found := rowOf(d.Row, x)
		if !found {
			o.refuse(d.Factor + " off the table")
		}
		if row.Refuse && row.Discount+row.Premium == "" && o.e.Edition.Format == "2" && o.e.Edition.AcceptedRefusal != "nothing" {
			row = besides(d.Row, row)
		}
		return row.Discount, row.Premium, found
	}
	beyond := minus(x, figure(d.Base))
	if d.Side == "below" {
		beyond.Neg(beyond)
	}
	if beyond.Sign() <= 0 {
		return "", "", false
	}
	part := map[string]string{"exact": "exact", "up": "1 up", "down": "1 down", "nearest": "1 half-up"}[d.Part]
	count := roundTo(over(beyond, figure(d.Per)), part)
	each := d.Discount + d.Premium
	sum := times(figure(each), count)
	if d.Cap != "" && sum.Cmp(figure(d.Cap)) > 0 {
		sum = figure(d.Cap)
	}
	text := sum.RatString() + " " + unitIn(each)
	if d.Premium != "" {
		return "", text, true
	}
	return text, "", true
}

// besides is the nearest row that is not turned away: below, or above where that one takes more.
func besides(rows []oracleRow, refused oracleRow) oracleRow {
	at := slices.Index(rows, refused)
	below, above := at-1, at+1
	for below >= 0 && rows[below].Refuse {
		below--
	}
	for above < len(rows) && rows[above].Refuse {
		above++
	}
	switch {
	case below < 0 && above == len(rows):
		return refused
	case below < 0 || above < len(rows) && rows[above].taken().Cmp(rows[below].taken()) > 0:
		return rows[above]
	}
	return rows[below]
}

func (r oracleRow) taken() *big.Rat {
	switch {
	case r.Premium != "":
		return new(big.Rat).Neg(figure(r.Premium))
	case r.Discount != "":
		return figure(r.Discount)
	}
	return new(big.Rat)
}

// deduct is the figure of a whole load, rounded, and for a percent of weight
// taken off it or put on.
func (o *oracle) deduct(d oracleDiscount, text string) *big.Rat {
	line := "discount." + d.name()
	on, each := o.on(d.Basis), roundTo(figure(text), d.RoundUnit)
	switch d.Of {
	case "weight":
		weight := roundTo(percentOf(each, on), o.e.placeOf(d.Round, "weight"))
		o.docked = o.docked || weight.Sign() != 0
		if o.gives[line] == "premium" {
			o.left = add(o.left, weight)
		} else {
			o.off(line, weight)
		}
		return weight
	case "price":
		if o.load.apart() {
			return o.ofOwnPrices(d, text, on)
		}
		if o.load.price == "" {
			delete(o.gives, line)
			return rat(0, 1)
		}
		each = roundTo(percentOf(figure(text), figure(o.load.price)), d.RoundUnit)
		return roundTo(times(each, o.units(on, o.e.Units.Settle)), o.e.placeOf(d.Round, "money"))
	}
	return roundTo(times(each, o.units(on, rateUnit(text))), o.e.placeOf(d.Round, "money"))
}

// ofOwnPrices is a percent of each owner's own price on that owner's part.
func (o *oracle) ofOwnPrices(d oracleDiscount, text string, on *big.Rat) *big.Rat {
	line, sum := "discount."+d.name(), rat(0, 1)
	o.owned[line] = true
	for i, owner := range o.load.owners {
		if price := o.load.priceOf(i); price != "" {
			each := roundTo(percentOf(figure(text), figure(price)), d.RoundUnit)
			own := roundTo(times(times(each, o.units(on, o.e.Units.Settle)), rat(owner[0], owner[1])), o.e.placeOf(d.Round, "money"))
			o.lines[fmt.Sprintf("%d %s", i, line)] = own
			sum = add(sum, own)
		}
	}
	for i := range o.load.owners {
		if sum.Sign() == 0 {
			delete(o.lines, fmt.Sprintf("%d %s", i, line))
		}
	}
	return sum
}

func (o *oracle) settle() {
	o.lines["settled"] = o.left
	o.lines["quantity"] = o.units(o.left, o.e.Units.Settle)
	if o.e.Units.Bushel != "" {
		o.lines["bushels"] = o.units(o.dry, "bu")
	}
	o.add("")
	o.lines["services"] = o.lines["drying"]
	o.share()
	o.pay()
}

// add adds up what is taken and paid for quality, of the load or of one owner,
// whose lines begin with that owner's number.
func (o *oracle) add(owner string) {
	discounts, premiums := rat(0, 1), rat(0, 1)
	for _, d := range o.e.Discount {
		line := "discount." + d.name()
		part, there := o.lines[owner+line]
		switch {
		case d.Of == "weight" || !there:
		case o.gives[line] == "premium":
			premiums = add(premiums, part)
		default:
			discounts = add(discounts, part)
		}
	}
	o.lines[owner+"adjustments"] = minus(minus(premiums, discounts), o.lines[owner+"drying"])
	if owner == "" {
		o.lines["discounts"], o.lines["premiums"] = discounts, premiums
	}
}

// pay is what is payable: of a load with one price its value less charges, of one
// whose owners have their own the sum of theirs.
func (o *oracle) pay() {
	if o.load.apart() {
		o.payOwners()
	} else if o.load.price != "" {
		o.lines["value"] = roundTo(times(figure(o.load.price), o.lines["quantity"]), o.e.Rounding["money"])
		o.part("value", o.e.Rounding["money"])
	}
	for i := range o.load.owners {
		owner := fmt.Sprintf("%d ", i)
		o.add(owner)
		if value, priced := o.lines[owner+"value"]; priced {
			o.lines[owner+"payable"] = add(value, o.lines[owner+"adjustments"])
		}
	}
	value, priced := o.lines["value"]
	if !priced {
		return
	}
	o.lines["payable"] = add(value, o.lines["adjustments"])
	o.lines["net value"] = add(o.lines["payable"], o.lines["services"])
	if o.load.apart() {
		o.sumOwners()
	}
	if o.lines["payable"].Sign() < 0 {
		o.refuse("charges above the worth")
	}
}

// payOwners is each owner's value at that owner's price.
func (o *oracle) payOwners() {
	for i := range o.load.owners {
		if price := o.load.priceOf(i); price != "" {
			own := roundTo(times(figure(price), o.lines[fmt.Sprintf("%d quantity", i)]), o.e.Rounding["money"])
			o.lines[fmt.Sprintf("%d value", i)] = own
			if o.lines["value"] == nil {
				o.lines["value"] = rat(0, 1)
			}
			o.lines["value"] = add(o.lines["value"], own)
		}
	}
}

// sumOwners adds the priced owners up.
func (o *oracle) sumOwners() {
	payable, services := rat(0, 1), rat(0, 1)
	for i := range o.load.owners {
		if own, priced := o.lines[fmt.Sprintf("%d payable", i)]; priced {
			payable, services = add(payable, own), add(services, o.lines[fmt.Sprintf("%d drying", i)])
		}
	}
	o.lines["payable"], o.lines["net value"] = payable, add(payable, services)
}

// share parts everything but the value.
func (o *oracle) share() {
	for line, place := range map[string]string{
		"net": o.e.Rounding["weight"], "settled": o.e.Rounding["weight"], "quantity": o.e.Rounding["quantity"],
		"bushels": o.e.Rounding["quantity"],
	} {
		o.part(line, place)
	}
	o.partDrying()
	for _, d := range o.e.Discount {
		line, place := "discount."+d.name(), o.e.placeOf(d.Round, "money")
		if d.Of == "weight" {
			place = o.e.placeOf(d.Round, "weight")
		}
		if whole, there := o.lines[line]; there && whole.Sign() != 0 && !o.owned[line] {
			o.part(line, place)
		}
	}
}

// partDrying parts the drying as the grain, or as the owners have agreed: then whoever has no part of
// it pays nothing, and what is left over goes to the first who has, unless the owner named has one.
func (o *oracle) partDrying() {
	place := o.e.placeOf(o.e.Drying.Round, "money")
	if o.load.drying == nil {
		o.part("drying", place)
		return
	}
	rest := o.restOwner()
	for i := 0; o.load.drying[rest][0] == 0; i++ {
		rest = i
	}
	o.partBy(o.load.drying, rest, "drying", place)
}

// part gives each owner of a line the whole units of its place that the share
// holds; the owner the edition names takes the rest.
func (o *oracle) part(line, place string) {
	o.partBy(o.load.owners, o.restOwner(), line, place)
}

func (o *oracle) partBy(owners [][2]int64, rest int, line, place string) {
	whole, there := o.lines[line]
	if !there || len(owners) == 0 {
		return
	}
	left := whole
	for i, owner := range owners {
		if i != rest {
			step, _, _ := strings.Cut(place, " ")
			part := roundTo(times(whole, rat(owner[0], owner[1])), step+" down")
			o.lines[fmt.Sprintf("%d %s", i, line)] = part
			left = minus(left, part)
		}
	}
	o.lines[fmt.Sprintf("%d %s", rest, line)] = left
}

func (o *oracle) restOwner() int {
	owners := o.load.owners
	switch o.e.Shares.Remainder {
	case "last":
		return len(owners) - 1
	case "largest":
		best := 0
		for i, one := range owners {
			if rat(one[0], one[1]).Cmp(rat(owners[best][0], owners[best][1])) > 0 {
				best = i
			}
		}
		return best
	}
	return 0
}
