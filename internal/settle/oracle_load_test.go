package settle_test

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
)

// oracleLoad is a random load, its figures as text so that both sides read the
// same digits.
type oracleLoad struct {
	unit        string // of the scale
	drafts      [][2]string
	moisture    string
	findings    []oracleFinding
	price       string // empty: none
	owners      [][2]int64
	drying      [][2]int64 // an owner's part of the drying, 0 of 1 for none; nil as the grain
	deals       []string   // an owner's own price, "none" for no price, or empty for the load's
	acceptedAll bool
}

type oracleFinding struct{ factor, value, unit string }

// scales are the ranges of the random results of a factor, in hundredths of its unit; the default
// is 0 to 12 %.
var scales = map[string][2]int{
	"lb/bu test-weight": {2000, 6500}, "kg/hL test-weight": {4500, 8500},
	"protein": {800, 1700}, "plump": {6000, 10000}, "heat-damage": {0, 250},
	"ergot": {0, 20}, "splits": {0, 4000}, "distinctly-green": {0, 2200}, "thin": {0, 4000},
	"damage": {0, 2200}, "dockage": {0, 900},
	"don": {0, 700}, "aflatoxin": {0, 40000}, "falling-number": {10000, 45000}, "vitreous": {4000, 9900}, "own-zearalenone": {0, 60000},
}

// unitsOf are the units of what is measured in no percent.
var unitsOf = map[string]string{"don": "ppm", "aflatoxin": "ppb", "falling-number": "s", "own-zearalenone": "ppb"}

func (e *oracleEdition) randomLoad(r *rand.Rand) oracleLoad {
	l := oracleLoad{unit: e.Units.Weight, acceptedAll: r.IntN(2) == 0}
	if r.IntN(8) == 0 {
		l.unit = map[string]string{"lb": "kg", "kg": "lb"}[l.unit]
	}
	for range 1 + r.IntN(8)/7 {
		tare := 5000 + 20*r.IntN(1000)
		l.drafts = append(l.drafts, [2]string{fmt.Sprint(tare + 20*(1+r.IntN(2800))), fmt.Sprint(tare)})
	}
	l.moisture = hundredths(r, e.moistureSpan())
	for _, f := range e.factors() {
		if r.IntN(7) > 0 {
			l.findings = append(l.findings, e.randomFinding(r, f))
		}
	}
	if r.IntN(5) > 0 {
		l.price = e.randomPrice(r)
	}
	l.owners = randomOwners(r)
	if len(l.owners) > 0 && r.IntN(3) == 0 {
		l.drying = randomDrying(r, len(l.owners))
	}
	if len(l.owners) > 0 && r.IntN(2) == 0 {
		l.deals = e.randomDeals(r, len(l.owners))
	}
	return l
}

// randomDeals are what owners have agreed on for themselves.
func (e *oracleEdition) randomDeals(r *rand.Rand, owners int) []string {
	deals := make([]string, owners)
	for i := range deals {
		switch r.IntN(3) {
		case 0:
			deals[i] = "none"
		case 1:
			deals[i] = e.randomPrice(r)
		}
	}
	return deals
}

// randomDrying parts the drying charge apart from the grain: at least one owner pays for it.
func randomDrying(r *rand.Rand, owners int) [][2]int64 {
	parts, all := make([][2]int64, owners), int64(0)
	for i := range parts {
		parts[i] = [2]int64{int64(r.IntN(4)), 1}
		all += parts[i][0]
	}
	if all == 0 {
		parts[r.IntN(owners)][0], all = 1, 1
	}
	for i := range parts {
		parts[i][1] = all
	}
	return parts
}

// apart reports whether owners have a deal of their own.
func (l oracleLoad) apart() bool { return strings.Join(l.deals, "") != "" }

// priceOf is an owner's price; empty for none.
func (l oracleLoad) priceOf(owner int) string {
	switch {
	case owner >= len(l.deals) || l.deals[owner] == "":
		return l.price
	case l.deals[owner] == "none":
		return ""
	}
	return l.deals[owner]
}

func (e *oracleEdition) moistureSpan() [2]int {
	base := figure("15")
	if e.Shrink.To != "" {
		base = figure(e.Shrink.To)
	}
	at, _ := new(big.Rat).Mul(base, big.NewRat(100, 1)).Float64()
	return [2]int{int(at) - 500, int(at) + 1600}
}

// factors are those the edition speaks of, each once, and dockage where it is
// taken.
func (e *oracleEdition) factors() []string {
	var out []string
	if e.Edition.Order[0] == "dockage" {
		out = append(out, "dockage")
	}
	for _, d := range e.Discount {
		if d.Factor != "moisture" {
			out = append(out, d.Factor)
		}
	}
	return out
}

func (e *oracleEdition) randomFinding(r *rand.Rand, factor string) oracleFinding {
	if isYesNo(factor) {
		return oracleFinding{factor, fmt.Sprint(r.IntN(6) / 5), ""}
	}
	f := oracleFinding{factor: factor, unit: "%"}
	span, known := scales[factor]
	if factor == "test-weight" {
		f.unit = e.testWeightUnit()
		span, known = scales[f.unit+" test-weight"], true
	}
	if unit, measured := unitsOf[factor]; measured {
		f.unit = unit
	}
	if !known {
		span = [2]int{0, 1200}
	}
	f.value = hundredths(r, span)
	return f
}

func (e *oracleEdition) testWeightUnit() string {
	for _, d := range e.Discount {
		if d.Factor == "test-weight" {
			text := d.Base
			if len(d.Row) > 0 {
				text = d.Row[0].Under
			}
			return unitIn(text)
		}
	}
	return "lb/bu"
}

func isYesNo(factor string) bool {
	return strings.Contains("musty sour off-odor heating infested smut-odor", factor)
}

func hundredths(r *rand.Rand, span [2]int) string {
	n := span[0] + r.IntN(span[1]-span[0])
	if r.IntN(2) == 0 {
		n -= n % 10 // on the tenth, where the breakpoints lie
	}
	return fmt.Sprintf("%d.%02d", n/100, n%100)
}

func (e *oracleEdition) randomPrice(r *rand.Rand) string {
	least, span := 250, 900
	switch e.Units.Settle {
	case "t":
		least, span = 12000, 50000
	case "cwt":
		least, span = 500, 2500
	}
	n := least + r.IntN(span)
	return fmt.Sprintf("%d.%02d%d", n/100, n%100, 5*r.IntN(2))
}

func randomOwners(r *rand.Rand) [][2]int64 {
	switch r.IntN(6) {
	case 0:
		return [][2]int64{{1, 3}, {2, 3}}
	case 1:
		return [][2]int64{{335, 1000}, {665, 1000}}
	case 2:
		return [][2]int64{{1, 7}, {2, 7}, {4, 7}}
	case 3:
		n := 1 + r.Int64N(99)
		return [][2]int64{{n, 100}, {100 - n, 100}}
	}
	return nil
}

// facts is the load as the engine reads it.
func (l oracleLoad) facts(e *oracleEdition) settle.Facts {
	mass := map[string]quantity.Unit{"lb": quantity.Lb, "kg": quantity.Kg}[l.unit]
	f := settle.Facts{Moisture: settle.Reading{Percent: quantity.Of(l.moisture, quantity.Percent), Source: message.Words("test")}}
	for _, d := range l.drafts {
		f.Drafts = append(f.Drafts, settle.Draft{Gross: quantity.Of(d[0], mass), Tare: quantity.Of(d[1], mass)})
	}
	for _, found := range l.findings {
		f.Findings = append(f.Findings, found.finding())
	}
	settled := map[string]quantity.Unit{"bu": quantity.Bushel, "cwt": quantity.Cwt, "t": quantity.Tonne}[e.Units.Settle]
	priced := func(text string) settle.Deal {
		if text == "" || text == "none" {
			return settle.Deal{Unpriced: message.Words("no price: stored")}
		}
		return settle.Deal{Price: &settle.Price{Amount: quantity.Of(text, quantity.Dollar.Per(settled))}}
	}
	f.Deal = priced(l.price)
	for i, o := range l.owners {
		f.Shares = append(f.Shares, settle.Share{Owner: string(rune('A' + i)), Parts: quantity.Int(o[0], quantity.Plain), Of: quantity.Int(o[1], quantity.Plain)})
	}
	for i, part := range l.drying {
		if part[0] > 0 {
			f.Shares[i].Drying = &quantity.Portion{Parts: quantity.Int(part[0], quantity.Plain), Of: quantity.Int(part[1], quantity.Plain)}
		}
	}
	for i, deal := range l.deals {
		if deal != "" {
			own := priced(deal)
			f.Shares[i].Own = &own
		}
	}
	if l.acceptedAll {
		for _, d := range e.Discount {
			f.Accepted = append(f.Accepted, d.name())
		}
	}
	return f
}

func (found oracleFinding) finding() settle.Finding {
	out := settle.Finding{Factor: grain.FactorID(found.factor)}
	if found.unit == "" {
		out.Present = found.value == "1"
		return out
	}
	out.Amount = quantity.Of(found.value, map[string]quantity.Unit{
		"%": quantity.Percent, "lb/bu": quantity.LbPerBushel, "kg/hL": quantity.KgPerHL, "ppm": quantity.PPM, "ppb": quantity.PPB, "s": quantity.Second,
	}[found.unit])
	return out
}
