package grain

import "strings"

// shortNames are what testers write in place of a factor's name, on cards and
// at the keys. Where one short name stands for unlike factors of unlike grains,
// the first that the grain has is meant.
var shortNames = map[string][]FactorID{
	"TW":   {TestWeight},
	"FM":   {ForeignMaterial},
	"DKT":  {Damage},
	"HT":   {HeatDamage},
	"HDK":  {HeatDamage},
	"SBK":  {ShrunkenBroken},
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

// ShortName is what a tester writes for a factor; empty where there is no such
// name. Of several it is the shortest, and of those the first by its letters.
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
