package main

import (
	"fmt"
	"strconv"
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
)

// Figures as people type them on a command line, each read by the bounded
// parser with a sentence when it cannot be.

// weightIn reads a weight in lb or kg; without a unit it is in the usual one.
func weightIn(name, text string, usual quantity.Unit) (quantity.Amount, error) {
	unit := usual
	for _, u := range []quantity.Unit{quantity.Lb, quantity.Kg} {
		if strings.HasSuffix(strings.TrimSpace(text), u.String()) {
			unit = u
		}
	}
	return quantity.Field{Name: name, Unit: unit, Places: 2, Min: quantity.Zero(unit), Max: quantity.Int(9_999_999, unit)}.Parse(text)
}

// percentIn reads a percent from 0 to 100.
func percentIn(name, text string) (quantity.Amount, error) {
	return quantity.Field{Name: name, Unit: quantity.Percent, Places: 4, Min: quantity.Zero(quantity.Percent), Max: quantity.Int(100, quantity.Percent)}.Parse(text)
}

// moistureIn reads a moisture; the limits are those of every grain.
func moistureIn(text string) (quantity.Amount, error) {
	corn, err := grain.ByID("corn")
	if err != nil {
		return quantity.Amount{}, err
	}
	factor, _ := corn.Factor(grain.Moisture)
	return factor.Field().Parse(text)
}

// priceIn reads a price per unit.
func priceIn(text string, per quantity.Unit) (quantity.Amount, error) {
	unit := quantity.Dollar.Per(per)
	return quantity.Field{Name: "Price", Unit: unit, Places: 4, Min: quantity.Zero(unit), Max: quantity.Int(9999, unit)}.Parse(text)
}

// measured tells how a factor is measured: a grain tells it, and so does an
// edition of rates, which may take a test weight in kg/hL.
type measured interface {
	Factor(grain.FactorID) (grain.Factor, bool)
}

// finding reads "test-weight=54.2" or "musty=yes".
func finding(c grain.Commodity, by measured, text string) (load.Finding, error) {
	name, value, ok := strings.Cut(text, "=")
	if !ok {
		return load.Finding{}, refusal("Write it like test-weight=54.2 or musty=yes", "%q is no factor and its result", text)
	}
	id := grain.FactorID(strings.TrimSpace(name))
	factor, ok := by.Factor(id)
	if !ok || id == grain.Moisture {
		return load.Finding{}, refusal("Factors of "+c.Name+": "+factorIDs(c), "%s is not tested for %q", c.Name, id)
	}
	a, err := factor.Parse(value)
	if err != nil {
		return load.Finding{}, err
	}
	if factor.YesNo {
		return load.Finding{Factor: id, Present: a.Sign() > 0}, nil
	}
	return load.Finding{Factor: id, Amount: &a}, nil
}

func factorIDs(c grain.Commodity) string {
	var ids []string
	for _, f := range c.Factors {
		if f.ID != grain.Moisture {
			ids = append(ids, string(f.ID))
		}
	}
	return strings.Join(ids, ", ")
}

// commodityIn finds a commodity by its id or its name.
func commodityIn(text string) (grain.Commodity, error) {
	text = strings.TrimSpace(text)
	for _, c := range grain.All() {
		if strings.EqualFold(c.ID, text) || strings.EqualFold(c.Name, text) {
			return c, nil
		}
	}
	return grain.ByID(text)
}

// part is an owner's share as typed: "102=2/3", "901=33.5%".
type part struct {
	owner     string
	parts, of quantity.Amount
}

func partIn(text string) (part, error) {
	owner, value, ok := strings.Cut(text, "=")
	owner, value = strings.TrimSpace(owner), strings.TrimSpace(value)
	if !ok || owner == "" {
		return part{}, shareForm(text)
	}
	if percent, isPercent := strings.CutSuffix(value, "%"); isPercent {
		a, err := percentIn("The share of "+owner, percent)
		return part{owner, a.In(quantity.Plain), quantity.Int(100, quantity.Plain)}, err
	}
	top, bottom, isFraction := strings.Cut(value, "/")
	if !isFraction {
		return part{}, shareForm(text)
	}
	count := quantity.Field{Name: "The share of " + owner, Max: quantity.Int(1_000_000, quantity.Plain)}
	parts, err := count.Parse(top)
	if err != nil {
		return part{}, err
	}
	of, err := count.Parse(bottom)
	return part{owner, parts, of}, err
}

func shareForm(text string) error {
	return refusal("Write an owner and the part, like 102=2/3 or 901=33.5%", "%q is no share", text)
}

// dateIn reads a date, or nothing as no date.
func dateIn(name, text string) (quantity.Date, error) {
	if text == "" {
		return quantity.Date{}, nil
	}
	d, err := quantity.ParseDate(text)
	if err != nil {
		return d, fmt.Errorf("%s: %w", name, err)
	}
	return d, nil
}

// ticketNumber is a ticket as its number is typed.
type ticketNumber int64

// UnmarshalText reads a number above nought, with or without commas.
func (n *ticketNumber) UnmarshalText(text []byte) error {
	plain := strings.ReplaceAll(strings.TrimSpace(string(text)), ",", "")
	number, err := strconv.ParseInt(plain, 10, 64)
	if err != nil || number < 1 {
		return fmt.Errorf("%q is no number of a ticket", text)
	}
	*n = ticketNumber(number)
	return nil
}
