package demo

import (
	"fmt"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
)

// mainSchedule is the schedule of rates taken where a grain has several.
const mainSchedule = "main"

// priced is a crop with its schedule and its price on every day of the season, today the last.
type priced struct {
	crop
	schedule string
	edition  *rates.Edition // in force today
	prices   []quantity.Amount
}

// inForce are the crops there are rates for on a day.
func (s *season) inForce(day quantity.Date) []priced {
	var out []priced
	for _, k := range crops {
		for _, schedule := range preferring(mainSchedule, s.Rates.Schedules(k.commodity)) {
			if e, err := s.Rates.On(schedule, k.commodity, day); err == nil {
				out = append(out, priced{crop: k, schedule: schedule, edition: e})
				break
			}
		}
	}
	return out
}

func preferring(first string, all []string) []string {
	out := []string{first}
	for _, name := range all {
		if name != first {
			out = append(out, name)
		}
	}
	return out
}

// priced are the crops of the season: those with rates from its first day to
// today, so that every load can be settled.
func (s *season) priced() []priced {
	var out []priced
	for _, k := range s.inForce(s.today) {
		if s.covered(k) {
			k.prices = k.walk(newChance(s.Seed, ofPrices+uint64(len(out))<<8), s.days+1)
			out = append(out, k)
		}
	}
	return out
}

func (s *season) covered(k priced) bool {
	for day := s.first; !day.After(s.today); day = day.AddDays(1) {
		if _, err := s.Rates.On(k.schedule, k.commodity, day); err != nil {
			return false
		}
	}
	return true
}

// walk generates a price for each day: up or down by a few quarter cents, never under half of the
// first.
func (k priced) walk(c *chance, days int) []quantity.Amount {
	quarters := k.price * 4
	out := make([]quantity.Amount, days)
	for d := range out {
		quarters = max(quarters+c.between(-22, 24), k.price*2)
		out[d] = k.per(quarters)
	}
	return out
}

// per is a price of so many quarter cents a bushel, in the unit the rates
// settle in.
func (k priced) per(quarterCents int64) quantity.Amount {
	perBushel := quantity.Of(fmt.Sprintf("%d.%04d", quarterCents/400, quarterCents%400*25), quantity.DollarsPerBu)
	unit := k.edition.Units.Settle
	if unit == quantity.Bushel {
		return perBushel
	}
	pounds, err := quantity.MassFactor(unit, quantity.Lb)
	if err != nil || k.edition.Commodity.Bushel.IsZero() {
		return quantity.Int(quarterCents/10, quantity.Dollar.Per(unit))
	}
	exact := perBushel.Div(k.edition.Commodity.Bushel).Mul(pounds)
	return quantity.To("0.01", quantity.HalfUp).Apply(exact)
}

// contracts are agreed on with every third grower, at the price of the first
// day and a little over.
func contracts(c *chance, all []priced, today quantity.Date) []elevator.ContractTerms {
	var out []elevator.ContractTerms
	for i, g := range growers {
		if i%3 != 0 {
			continue
		}
		k := all[i/3%len(all)]
		out = append(out, elevator.ContractTerms{
			Number: fmt.Sprintf("C%d", 2001+i), Grower: g.ID, Commodity: k.commodity,
			Quantity: quantity.Int(c.between(4, 40)*500, k.edition.Units.Settle),
			Price:    k.prices[0], Until: today.AddDays(60),
		})
	}
	return out
}

// delivered is the quantity delivered on each contract, by its number.
type delivered map[string]quantity.Amount

// spareLoads is the number of loads of room a contract keeps: a correction may raise a load, and nobody
// here is asked what becomes of a rest.
const spareLoads = 3

// has reports whether a contract has room for a load, and counts the load on it.
func (d delivered) has(terms elevator.ContractTerms, v *visit) bool {
	load, known := v.crop.amount(v.net)
	if !known {
		return true
	}
	before, delivered := d[terms.Number]
	if !delivered {
		before = quantity.Zero(load.Unit())
	}
	if before.Add(load.Mul(quantity.Int(spareLoads, quantity.Plain))).More(terms.Quantity) {
		return false
	}
	d[terms.Number] = before.Add(load)
	return true
}

// amount is a net weight in the unit that loads are settled in.
func (k priced) amount(pounds int64) (quantity.Amount, bool) {
	unit := k.edition.Units.Settle
	if unit == quantity.Bushel {
		return lb(pounds).Div(k.edition.Commodity.Bushel), true
	}
	factor, err := quantity.MassFactor(quantity.Lb, unit)
	return lb(pounds).Mul(factor), err == nil
}
