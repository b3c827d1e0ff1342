package grain

import (
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// FactorID names a factor in editions, in the book and on the slip. It never
// changes once used.
type FactorID string

// The factors a tester can record. Where two grains use one word for different things (foreign
// material in corn goes with broken corn, in sorghum it is counted on its own as well) each has its
// own name here.
const (
	Moisture   FactorID = "moisture"
	TestWeight FactorID = "test-weight"
	Dockage    FactorID = "dockage"
	Protein    FactorID = "protein"

	Damage          FactorID = "damage"
	HeatDamage      FactorID = "heat-damage"
	ForeignMaterial FactorID = "foreign-material"
	BrokenCorn      FactorID = "bcfm"
	BrokenSorghum   FactorID = "bkfm"
	Broken          FactorID = "broken"
	ShrunkenBroken  FactorID = "shrunken-broken"
	SkinnedBroken   FactorID = "skinned-broken"
	Splits          FactorID = "splits"
	Thin            FactorID = "thin"
	Plump           FactorID = "plump"
	Sound           FactorID = "sound"
	Defects         FactorID = "defects"

	ContrastingClasses FactorID = "contrasting-classes"
	OtherClasses       FactorID = "wheat-of-other-classes"
	OtherGrains        FactorID = "other-grains"
	OtherColors        FactorID = "other-colors"
	WildOats           FactorID = "wild-oats"
	MaltingType        FactorID = "suitable-malting-type"
	NotWheat           FactorID = "foreign-other-than-wheat"
	NotWheatOrRye      FactorID = "foreign-other-than-wheat-or-rye"
	Dehulled           FactorID = "dehulled"
	Green              FactorID = "distinctly-green"
	Conspicuous        FactorID = "conspicuous-admixture"
	Inconspicuous      FactorID = "inconspicuous-admixture"
	Sclerotinia        FactorID = "sclerotinia"
	Blight             FactorID = "fungus-mold-damage"
	Flint              FactorID = "flint"
	Waxy               FactorID = "waxy"

	Ergot             FactorID = "ergot"
	Smut              FactorID = "smut"
	SmutOdor          FactorID = "smut-odor"
	SmuttyAppearance  FactorID = "smutty-appearance"
	Garlic            FactorID = "garlic"
	Stones            FactorID = "stones"
	StoneCount        FactorID = "stone-count"
	AnimalFilth       FactorID = "animal-filth"
	CastorBeans       FactorID = "castor-beans"
	Crotalaria        FactorID = "crotalaria"
	Glass             FactorID = "glass"
	UnknownSubstances FactorID = "unknown-substances"
	Cockleburs        FactorID = "cockleburs"
	OtherMaterial     FactorID = "other-material"
	InsectDamaged     FactorID = "insect-damaged"
	Weevils           FactorID = "weevils"
	Insects           FactorID = "insects"

	Filth       FactorID = "animal-filth-weight"
	LowQuality  FactorID = "low-quality"
	Weathered   FactorID = "badly-weathered"
	PurpleStain FactorID = "purple-stained"

	Infested FactorID = "infested"
	Musty    FactorID = "musty"
	Sour     FactorID = "sour"
	OffOdor  FactorID = "off-odor"
	Heating  FactorID = "heating"
)

// Factor is one thing measured, counted or noticed on a sample of a commodity.
type Factor struct {
	ID   FactorID
	Name string
	// Short is the abbreviation testers use where room is short, such as "TW"; empty where they use
	// the name.
	Short string
	Unit  quantity.Unit
	// YesNo marks a factor that is present or not, such as an odor. Its value is one or zero of
	// quantity.Count.
	YesNo bool
	// Record is the recording rule, applied once to the figure as measured.
	Record quantity.Rounding
	// Min and Max are the limits a figure may be typed within, both
	// inclusive. They catch slips of the finger; they are no standard.
	Min, Max quantity.Amount
	// Source is the reference of the recording rule.
	Source string
	// Basis is the moisture that a percent is stated at, 0 % for a dry basis; not
	// in percent where the rule names none.
	Basis quantity.Amount
	// NamesBushel says of a test weight that its pounds are told with the bushel they fill:
	// where the law is Canada's that may be a Winchester bushel or Avery's.
	NamesBushel bool
	// HalfLitre is the chart of a test weight.
	HalfLitre HalfLitre
}

// HasBasis reports whether a moisture basis is named.
func (f Factor) HasBasis() bool { return f.Basis.Unit() == quantity.Percent }

// BasisText is the moisture basis as printed after a figure.
func (f Factor) BasisText() message.Text {
	if f.Basis.IsZero() {
		return message.New("dry basis")
	}
	return message.New("%s m.b.", f.Basis)
}

// Remark is printed after a result, since the figure alone would not say it: the
// moisture a percent is stated at, or the bushel that is weighed. It is empty for most.
func (f Factor) Remark(a quantity.Amount) (remark message.Text, has bool) {
	switch {
	case f.HasBasis():
		return f.BasisText(), true
	case f.NamesBushel && a.Unit() == quantity.LbPerBushel:
		return message.New("Winchester bushel"), true
	}
	return message.Text{}, false
}

// Field returns the input field for the factor. It accepts one decimal more than is recorded, and
// at least two, so that the figure on the instrument is typed unchanged and rounded once, by
// Record.
func (f Factor) Field() quantity.Field {
	places := int32(0)
	if f.Unit != quantity.Count {
		places = max(2, f.Record.Places()+1)
	}
	return quantity.Field{Name: f.Name, Unit: f.Unit, Places: places, Min: f.Min, Max: f.Max}
}

// Yes and No are the values of a factor that is present or not.
var (
	Yes = quantity.Int(1, quantity.Count)
	No  = quantity.Zero(quantity.Count)
)

// In returns the factor in another unit: a test weight in kg/hL instead of lb/bu, recorded to the
// tenth. No other factor has a second unit; they are returned unchanged.
func (f Factor) In(unit quantity.Unit) Factor {
	least, err := quantity.TestWeight(f.Min, unit)
	if err != nil || unit == f.Unit {
		return f
	}
	most, _ := quantity.TestWeight(f.Max, unit) // from the same unit
	f.Unit, f.Record = unit, quantity.To("0.1", quantity.HalfUp)
	f.Min, f.Max = quantity.To("1", quantity.Down).Apply(least), quantity.To("1", quantity.Up).Apply(most)
	return f
}

// Parse reads what a tester typed: a figure, or yes or no for a factor that is
// present or not. A test weight may say that it is in the other unit. The figure
// is not yet recorded; see [Factor.Recorded].
func (f Factor) Parse(text string) (quantity.Amount, error) {
	if !f.YesNo {
		return f.parseFigure(text)
	}
	switch strings.ToLower(strings.TrimSpace(text)) {
	case "yes", "y":
		return Yes, nil
	case "no", "n":
		return No, nil
	}
	return quantity.Amount{}, message.Invalid.Errorf("%s is yes or no; %q is neither. Type yes or no", f.Name, strings.TrimSpace(text))
}

// parseFigure reads a figure; a test weight also in grams of half a litre and in
// pounds of a bushel that is named.
func (f Factor) parseFigure(text string) (quantity.Amount, error) {
	if a, asked, err := f.parseHalfLitre(text); asked {
		return a, err
	}
	if a, asked, err := f.parseAvery(text); asked {
		return a, err
	}
	text, _ = cutWord(text, "Winchester")
	return f.saying(text).Field().Parse(text)
}

// saying is the factor in the unit that the text ends with.
func (f Factor) saying(text string) Factor {
	for _, unit := range []quantity.Unit{quantity.LbPerBushel, quantity.KgPerHL} {
		if strings.HasSuffix(strings.TrimSpace(text), unit.String()) {
			return f.In(unit)
		}
	}
	return f
}

// Recorded rounds a measurement as it is recorded.
func (f Factor) Recorded(measured quantity.Amount) quantity.Amount {
	return f.Record.Apply(measured)
}
