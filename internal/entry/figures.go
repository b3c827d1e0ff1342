package entry

import (
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/i18n"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/textsearch"
)

// Figures as people type them. Each limit is defined here once; the limits catch typing errors and
// are no standard.

const (
	// weightPlaces is the number of decimals of a weight that comes from no known scale.
	weightPlaces = 2
	// shownPlaces is the number of decimals of a weight in the log of a scale.
	shownPlaces = 1
	// pricePlaces is the largest number of decimals of a price.
	pricePlaces = 4
)

// Weight is a weight that comes from no scale of this elevator, in a unit.
func Weight(name string, unit quantity.Unit) quantity.Field {
	return quantity.Field{
		Name: name, Unit: unit, Places: weightPlaces,
		Min: quantity.Zero(unit), Max: quantity.Int(elevator.LargestWeight, unit),
	}
}

// ParseWeight reads a weight in lb or kg; without a unit it is in the usual one.
func ParseWeight(name, text string, usual quantity.Unit) (quantity.Amount, error) {
	return Weight(name, SaidUnit(text, usual, quantity.Lb, quantity.Kg)).Parse(text)
}

// LargestHeld is more than lies in any bin, in lb as in kg: a limit against typing errors.
const LargestHeld = 999_999_999

// ParseHeld reads a weight of grain in bins, in lb or kg; without a unit it is in the usual one.
func ParseHeld(name, text string, usual quantity.Unit) (quantity.Amount, error) {
	f := Weight(name, SaidUnit(text, usual, quantity.Lb, quantity.Kg))
	f.Max = quantity.Int(LargestHeld, f.Unit)
	return f.Parse(text)
}

// Plate is a weight on the plate of a scale: its division or its capacity.
func Plate(name string, unit quantity.Unit) quantity.Field {
	f := Weight(name, unit)
	f.Min = quantity.Of("0.01", unit)
	return f
}

// ParsePlate reads a weight of a plate in lb or kg; without a unit it is in the usual one.
func ParsePlate(name, text string, usual quantity.Unit) (quantity.Amount, error) {
	return Plate(name, SaidUnit(text, usual, quantity.Lb, quantity.Kg)).Parse(text)
}

// Shown is a weight in the log of a scale: what it showed, or what stood on it. It is no weight of
// a load, so that it may lie between divisions; an empty deck may show less than 0.
func Shown(name string, s elevator.Scale, least int64) quantity.Field {
	f := Weight(name, s.Division.Unit())
	f.Places, f.Min = shownPlaces, quantity.Int(least, f.Unit)
	return f
}

// SaidUnit is the unit that a text ends with, of those it may be in; the usual one
// where it ends with none of them.
func SaidUnit(text string, usual quantity.Unit, others ...quantity.Unit) quantity.Unit {
	for _, unit := range others {
		if strings.HasSuffix(strings.TrimSpace(text), unit.String()) {
			return unit
		}
	}
	return usual
}

// longest is more than any length of a bin, in either unit: it keeps out what was typed by accident.
const longest = 2000

// ParseLength reads a length of a bin, in feet unless it says metres, below zero for a hole in the
// grain; none where nothing is typed.
func ParseLength(name, text string) (quantity.Amount, error) {
	text = strings.TrimSpace(text)
	if text == "" {
		return quantity.Amount{}, nil
	}
	unit := SaidUnit(text, quantity.Foot, quantity.Metre)
	return quantity.Field{Name: name, Unit: unit, Places: 3, Min: quantity.Int(-longest, unit), Max: quantity.Int(longest, unit)}.Parse(text)
}

// ScaleWeight is a weight as a scale shows it: in its unit, with as many decimals
// as its division.
func ScaleWeight(name string, s elevator.Scale) quantity.Field {
	f := Weight(name, s.Division.Unit())
	f.Places = 0
	if step, whole := s.Division.Decimal(); whole {
		f.Places = quantity.Rounding{Step: step, Rule: quantity.Down}.Places()
	}
	return f
}

// ParseScaleWeight reads a weight and checks it against the scale: an impossible weight was not
// weighed on it.
func ParseScaleWeight(name, text string, s elevator.Scale) (quantity.Amount, error) {
	a, err := ScaleWeight(name, s).Parse(text)
	if err != nil {
		return a, err
	}
	if err := s.CheckWeight(a); err != nil {
		return a, message.Errorf("%s: %w", name, err)
	}
	return a, nil
}

// Price is money per the unit that rates settle in.
func Price(settle quantity.Unit) quantity.Field {
	per := quantity.Dollar.Per(settle)
	return quantity.Field{Name: "Price", Unit: per, Places: pricePlaces, Min: quantity.Of("0.0001", per), Max: quantity.Int(10_000, per)}
}

// ParsePrice reads a price; the sign that people put before money may stay.
func ParsePrice(text string, settle quantity.Unit) (quantity.Amount, error) {
	if !strings.Contains(text, "/") {
		text = strings.TrimPrefix(strings.TrimSpace(text), "$")
	}
	return Price(settle).Parse(text)
}

// Percent is a percent from 0 to 100.
func Percent(name string) quantity.Field {
	return quantity.Field{Name: name, Unit: quantity.Percent, Places: 4, Min: quantity.Zero(quantity.Percent), Max: quantity.Int(100, quantity.Percent)}
}

// Moisture is a moisture of any grain.
func Moisture() quantity.Field { return grain.CommonFactor(grain.Moisture).Field() }

// Share is one owner's part as typed, not yet looked up.
type Share struct {
	Owner     string
	Parts, Of quantity.Amount
	Drying    *quantity.Portion // of the drying charge, where that was typed apart
}

// ParseShare reads a part: "2/3", "33.5%", or "33.5" in percent.
func ParseShare(name, text string) (parts, of quantity.Amount, err error) {
	p, err := quantity.ParsePortion(name, text)
	return p.Parts, p.Of, err
}

// dryingWord stands between the part of the grain and that of the drying charge.
const dryingWord = " drying "

// ParsePart reads a part, and after "drying" the part of the drying charge where that is another:
// "1/3 drying 1/2", "1/3 drying none".
func ParsePart(name, text string) (parts, of quantity.Amount, drying *quantity.Portion, err error) {
	grain, water, apart := strings.Cut(text, dryingWord)
	if parts, of, err = ParseShare(name, strings.TrimSpace(grain)); err != nil || !apart {
		return parts, of, nil, err
	}
	if water = strings.TrimSpace(water); strings.EqualFold(water, noShares) {
		return parts, of, &quantity.Portion{Parts: quantity.Zero(quantity.Plain), Of: quantity.Int(1, quantity.Plain)}, nil
	}
	drying = &quantity.Portion{}
	drying.Parts, drying.Of, err = ParseShare(name, water)
	return parts, of, drying, err
}

// PartText is a part as [ParsePart] takes it back.
func PartText(parts, of quantity.Amount, drying *quantity.Portion) string {
	text := quantity.Portion{Parts: parts, Of: of}.Text()
	switch {
	case drying == nil:
		return text
	case drying.Parts.IsZero():
		return text + dryingWord + noShares
	}
	return text + dryingWord + drying.Text()
}

// ParseOwnerShare reads an owner with a part: "102=2/3", "901=33.5%", "901=1/3 drying 1/2".
func ParseOwnerShare(text string) (Share, error) {
	owner, value, ok := strings.Cut(text, "=")
	owner, value = strings.TrimSpace(owner), strings.TrimSpace(value)
	grain, _, _ := strings.Cut(value, dryingWord)
	if isPart := strings.Contains(grain, "/") || strings.HasSuffix(grain, "%"); !ok || owner == "" || !isPart {
		return Share{}, NotShare{strings.TrimSpace(text)}
	}
	parts, of, drying, err := ParsePart("The share of "+owner, value)
	return Share{owner, parts, of, drying}, err
}

// ParseShares reads owners with their parts, with semicolons between them. They
// must add to the whole.
func ParseShares(text string) ([]Share, error) {
	var out []Share
	total := quantity.Zero(quantity.Plain)
	for _, one := range strings.Split(text, ";") {
		s, err := ParseOwnerShare(one)
		if err != nil {
			return nil, err
		}
		out = append(out, s)
		total = total.Add(s.Parts.Div(s.Of))
	}
	if !total.Equal(quantity.Int(1, quantity.Plain)) {
		return nil, message.Invalid.Errorf("the shares add to %s %%, not to 100 %%; mend them", total.Mul(quantity.Int(100, quantity.Plain)).Figure())
	}
	return out, nil
}

// NotShare is a text that is no share of an owner.
type NotShare struct{ Text string }

// Error says how to write one.
func (e NotShare) Error() string { return e.Message().String() }

// Message says how to write one.
func (e NotShare) Message() message.Text {
	return message.New("%q is no share. Write an owner and the part, like 102=2/3 or 901=33.5%%", e.Text)
}

// ParseDay reads a date, or a relative day such as yesterday; the error names the field.
func ParseDay(name, text string, today quantity.Date) (quantity.Date, error) {
	text = strings.TrimSpace(text)
	if text == "" {
		return quantity.Date{}, nil
	}
	d, err := quantity.ParseDate(text)
	if err == nil {
		return d, nil
	}
	if days, known := dayByName(text); known {
		return today.AddDays(days), nil
	}
	return d, message.Errorf("%s: %w", name, err)
}

// daysByName are days as people call them, so many days from today.
var daysByName = []struct {
	name message.Text
	days int
}{{message.Words("today"), 0}, {message.Words("yesterday"), -1}}

// dayByName finds a day called by its name in any language of the program.
func dayByName(text string) (days int, known bool) {
	for _, code := range i18n.Codes() {
		for _, day := range daysByName {
			if textsearch.Equal(text, i18n.In(code).Text(day.name)) {
				return day.days, true
			}
		}
	}
	return 0, false
}

// Temperature reads a temperature in the unit whose letter follows it, or in the usual one. With a
// usual unit of [quantity.Plain] the letter is required. An empty text is no temperature.
func Temperature(name, text string, usual quantity.Unit) (quantity.Amount, error) {
	figure, unit := strings.TrimSpace(text), usual
	if figure == "" {
		return quantity.Amount{}, nil
	}
	if rest, found := strings.CutSuffix(strings.ToUpper(figure), "F"); found {
		figure, unit = strings.TrimRight(rest, " °"), quantity.Fahrenheit
	} else if rest, found := strings.CutSuffix(strings.ToUpper(figure), "C"); found {
		figure, unit = strings.TrimRight(rest, " °"), quantity.Celsius
	}
	field := moisture.FahrenheitField
	switch unit {
	case quantity.Celsius:
		field = moisture.CelsiusField
	case quantity.Plain:
		return quantity.Amount{}, NoScaleLetter{name, text}
	}
	field.Name = name
	return field.Parse(figure)
}

// NoScaleLetter is a temperature without its unit.
type NoScaleLetter struct{ Name, Text string }

// Error says how to write it.
func (e NoScaleLetter) Error() string { return e.Message().String() }

// Message says how to write it.
func (e NoScaleLetter) Message() message.Text {
	return message.New("%s %q does not say whether it is °F or °C. Write it like 65F or 18C", e.Name, e.Text)
}
