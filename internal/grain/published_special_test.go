package grain

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/quantity"
)

// specialRowFactors maps a printed line of a special grade to its factor.
var specialRowFactors = map[string]FactorID{
	"ergot": Ergot, "smut balls": Smut,
	"smut balls (or unmistakable smut odor)":                 Smut,
	"smut balls (or smutty appearance in mass)":              Smut,
	"green garlic bulblets":                                  Garlic,
	"green garlic bulblets or equivalent":                    Garlic,
	"through 0.064 x 3/8 oblong sieve":                       Thin,
	"fungus- and/or mold-damaged kernels":                    Blight,
	"test weight":                                            TestWeight,
	"flint corn":                                             Flint,
	"waxy corn":                                              Waxy,
	"live weevils":                                           Weevils,
	"other live injurious insects":                           Insects,
	"1 live weevil plus other live injurious insects":        Insects,
	"through 0.064 x 3/8 oblong sieve, over 5/64 triangular": Thin,
}

var (
	relations = map[string]Relation{"exceeds": Over, "min": AtLeast, "max": AtMost}
	upTo      = regexp.MustCompile(`\(up to (?:and including )?(\d+)\)`)
	below     = regexp.MustCompile(`\(below (\d+)\)`)
)

// printedConditions returns the conditions of one printed line, and the yes or no that may replace
// them.
func printedConditions(row map[string]string, unit quantity.Unit) (all []Condition, instead FactorID) {
	id := specialRowFactors[row["factor"]]
	if strings.HasPrefix(row["factor"], "1 live weevil plus") {
		all = append(all, Condition{Weevils, AtLeast, Yes})
	}
	all = append(all, Condition{id, relations[row["limit_kind"]], quantity.Of(row["value"], unit)})
	if m := upTo.FindStringSubmatch(row["unit"]); m != nil {
		all = append(all, Condition{id, AtMost, quantity.Of(m[1], unit)})
	}
	if m := below.FindStringSubmatch(row["unit"]); m != nil {
		all = append(all, Condition{id, Under, quantity.Of(m[1], unit)})
	}
	switch {
	case strings.Contains(row["factor"], "smut odor"):
		instead = SmutOdor
	case strings.Contains(row["factor"], "smutty appearance"):
		instead = SmuttyAppearance
	}
	return all, instead
}

// TestEverySpecialGradeCell walks every printed special grade, 7 CFR 810, and
// finds the way to earn it in the program; ways without a row have no source.
func TestEverySpecialGradeCell(t *testing.T) {
	type way struct {
		commodity, special string
		index              int
	}
	printed := map[way]bool{}
	for _, row := range published(t, published810, "grades.csv") {
		name, isSpecial := strings.CutPrefix(row["grade"], "special: ")
		if !isSpecial {
			continue
		}
		for _, id := range specialRowGrains(row["grain"]) {
			c := mustCommodity(t, id)
			i := slices.IndexFunc(c.Special, func(s SpecialGrade) bool { return s.Name == name })
			if i < 0 {
				t.Errorf("%s has no special grade %q", id, name)
				continue
			}
			s := c.Special[i]
			if s.Source != row["source"] {
				t.Errorf("%s %s names %q, printed %q", id, name, s.Source, row["source"])
			}
			f, _ := c.Factor(specialRowFactors[row["factor"]])
			all, instead := printedConditions(row, f.Unit)
			n := slices.IndexFunc(s.Any, func(have []Condition) bool { return sameConditions(have, all) })
			if n < 0 {
				t.Errorf("%s %s: no way to earn it matches the printed line %v", id, name, row)
			}
			printed[way{id, name, n}] = true
			if instead != "" {
				n := slices.IndexFunc(s.Any, func(have []Condition) bool { return have[0].Factor == instead })
				printed[way{id, name, n}] = true
			}
		}
	}
	for _, c := range All() {
		for _, s := range c.Special {
			for i := range s.Any {
				if !printed[way{c.ID, s.Name, i}] {
					t.Errorf("%s %s: way %d %v stands in no published line", c.ID, s.Name, i, s.Any[i])
				}
			}
		}
	}
}

// specialRowGrains: barley's special grades hold for malting barley too.
func specialRowGrains(heading string) []string {
	if heading == "barley" {
		return []string{"barley", "barley-malting-six", "barley-malting-two"}
	}
	return gradeRowGrains[heading]
}

func sameConditions(a, b []Condition) bool {
	return slices.EqualFunc(a, b, func(x, y Condition) bool {
		return x.Factor == y.Factor && x.Relation == y.Relation && x.Figure.Equal(y.Figure)
	})
}
