package grain

import "strings"

// shortNames are the abbreviations of factor names, as testers use them on cards and when typing.
// Where one is used for different factors of different grains, the first that the grain has is
// meant.
var shortNames = map[string][]FactorID{
	"TW":   {TestWeight},
	"FM":   {ForeignMaterial, BrokenCorn},
	"DKT":  {Damage},
	"HT":   {HeatDamage},
	"HDK":  {HeatDamage},
	"SBK":  {ShrunkenBroken},
	"SHBN": {ShrunkenBroken},
	"DKG":  {Dockage},
	"BCFM": {BrokenCorn, BrokenSorghum},
	"BNFM": {BrokenSorghum},
	"SPL":  {Splits},
	"DEF":  {Defects},
	"CCL":  {ContrastingClasses},
	"WOCL": {OtherClasses},
	"IDK":  {InsectDamaged},
	"PRO":  {Protein},
	"SKB":  {SkinnedBroken},
}

// FactorCalled finds one of the commodity's factors by its id, its name or a short
// name, in letters of either case.
func (c Commodity) FactorCalled(text string) (Factor, bool) {
	text = strings.TrimSpace(text)
	if f, ok := c.Factor(FactorID(text)); ok {
		return f, true
	}
	for _, f := range c.Factors {
		if strings.EqualFold(string(f.ID), text) || strings.EqualFold(f.Name, text) || f.Short != "" && strings.EqualFold(f.Short, text) {
			return f, true
		}
	}
	for _, id := range shortNames[strings.ToUpper(text)] {
		if f, ok := c.Factor(id); ok {
			return f, true
		}
	}
	return Factor{}, false
}

// ShortName returns the abbreviation of a factor, empty where there is none. Of several it is the
// shortest, then the first alphabetically.
func ShortName(id FactorID) string {
	short := ""
	for name, ids := range shortNames {
		better := short == "" || len(name) < len(short) || len(name) == len(short) && name < short
		if ids[0] == id && better {
			short = name
		}
	}
	return short
}
