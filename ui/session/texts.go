package session

import (
	"strings"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

func OrElse(text, otherwise string) string {
	if text == "" {
		return otherwise
	}
	return text
}

// Bare is a figure as it was written, without its unit.
func Bare(a quantity.Amount) string { return a.In(quantity.Plain).Written() }

func ShortName(f grain.Factor) string {
	if name, short := shortNames[f.ID]; short {
		return name
	}
	if f.Short != "" {
		return f.Short
	}
	return f.Name
}

// shortNames are abbreviations of factors for where room is short; the slip has the full name.
var shortNames = map[grain.FactorID]string{
	grain.Damage:         "Damage",
	grain.HeatDamage:     "Heat damage",
	grain.BrokenCorn:     "BCFM",
	grain.BrokenSorghum:  "Broken, foreign",
	grain.ShrunkenBroken: "Shrunken, broken",
	grain.SkinnedBroken:  "Skinned, broken",
}

// NotYet is the placeholder of a figure that is not known yet.
const NotYet = "–"

// PrintedLike prints an amount with the decimals that a step is printed with.
func PrintedLike(s *worksheet.Step, a quantity.Amount) string {
	_, decimals, _ := strings.Cut(FigureOf(s), ".")
	places := strings.IndexFunc(decimals, func(r rune) bool { return r < '0' || r > '9' })
	if places < 0 {
		places = len(decimals)
	}
	return a.FixedString(int32(places))
}

// ToOwner is an amount of money with its sign: + is to the owner, - from the owner.
func ToOwner(a quantity.Amount) string {
	if a.Sign() > 0 {
		return "+" + a.FixedString(cents)
	}
	return a.FixedString(cents)
}

// cents are the decimals of money.
const cents = 2

// FigureOf is a step's figure as printed, without its unit.
func FigureOf(s *worksheet.Step) string {
	return strings.TrimSuffix(s.Printed(), " "+s.Value().Unit().String())
}

func TruckText(t load.Truck) string {
	if t.ID != "" {
		return t.ID
	}
	return t.Plate
}

// PartyText is a grower as the field holds it: by code, or by name alone.
func PartyText(p load.Party) string {
	if p.ID != "" {
		return p.ID
	}
	return p.Name
}

// SharesText describes the owners of a load in one line.
func SharesText(in Language, l *load.Load) string {
	text := ""
	for _, o := range l.Details.Shares {
		text = Join(", ", text, in.Say("%s %s/%s", o.Name, o.Parts.Figure(), o.Of.Figure()))
	}
	return text
}

// InPlaceText says which ticket a load's ticket replaces, and why; empty when it replaces none.
func InPlaceText(in Language, l *load.Load) string {
	switch {
	case l.Corrects != 0:
		return in.Say("Corrects ticket %d: %s", l.Corrects, l.Why)
	case l.Reissues != 0:
		return in.Say("In place of ticket %d, void: %s", l.Reissues, l.Why)
	}
	return ""
}

// Signed is a difference with its sign; where it cannot be taken, the word for
// that.
func Signed(in Language, change *worksheet.Step) string {
	if change == nil {
		return in.Say("another unit")
	}
	text := change.Printed()
	if change.Value().Sign() > 0 {
		text = "+" + text
	}
	return strings.Replace(text, "-", "–", 1)
}

// OneLine sets several lines side by side, for the status line.
func OneLine(text string) string { return strings.Join(strings.Split(text, "\n"), " ") }

// FigureOrNone reads a moisture that may be left empty.
func FigureOrNone(in Language, text string) (*quantity.Amount, error) {
	if strings.TrimSpace(text) == "" {
		return nil, nil
	}
	field := moisture.MoistureField
	field.Name = in.Say("Moisture")
	a, err := in.ParseFigure(field, text)
	if err != nil {
		return nil, err
	}
	return &a, nil
}
