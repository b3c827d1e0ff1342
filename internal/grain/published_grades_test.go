package grain

import (
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/quantity"
)

const published810 = "ams-grain-standards"

// gradeRowGrains says which commodities a printed heading speaks of.
var gradeRowGrains = map[string][]string{
	"corn":                                  {"corn"},
	"soybeans":                              {"soybeans"},
	"wheat":                                 {"wheat-hrw", "wheat-hrs", "wheat-srw", "wheat-white", "wheat-white-club", "wheat-durum"},
	"wheat - all classes except Mixed":      {"wheat-hrw", "wheat-hrs", "wheat-srw", "wheat-white", "wheat-white-club", "wheat-durum"},
	"wheat - Hard Red Spring or White Club": {"wheat-hrs", "wheat-white-club"},
	"wheat - all other classes and subclasses": {"wheat-hrw", "wheat-srw", "wheat-white", "wheat-durum"},
	"sorghum":                  {"sorghum"},
	"barley":                   {"barley"},
	"six-rowed malting barley": {"barley-malting-six"},
	"two-rowed malting barley": {"barley-malting-two"},
	"oats":                     {"oats"},
	"canola":                   {"canola"},
	"sunflower seed":           {"sunflower"},
	"rye":                      {"rye"},
	"flaxseed":                 {"flaxseed"},
	"triticale":                {"triticale"},
	"wheat, rye, triticale":    {"wheat-hrw", "wheat-hrs", "wheat-srw", "wheat-white", "wheat-white-club", "wheat-durum", "rye", "triticale"},
	"barley, canola, corn, oats, sorghum, soybeans, sunflower, mixed grain": {"barley", "barley-malting-six", "barley-malting-two", "canola", "corn", "oats", "sorghum", "soybeans", "sunflower"},
}

// gradeRowFactors says which factor a printed line is about. Where the same
// words mean a weight here and a count there, the unit tells.
var gradeRowFactors = map[string]FactorID{
	"test weight":          TestWeight,
	"heat-damaged kernels": HeatDamage, "heat-damaged kernels (part of total)": HeatDamage, "heat-damaged": HeatDamage,
	"damaged kernels total": Damage, "damaged kernels": Damage, "damaged kernels (includes heat-damaged)": Damage, "damaged total": Damage,
	"broken corn and foreign material": BrokenCorn,
	"foreign material":                 ForeignMaterial, "foreign material total": ForeignMaterial, "foreign material (part of BKFM)": ForeignMaterial,
	"broken kernels and foreign material total": BrokenSorghum,
	"shrunken and broken kernels":               ShrunkenBroken,
	"defects total":                             Defects, "defects total (damaged + foreign material + shrunken and broken)": Defects,
	"contrasting classes": ContrastingClasses, "wheat of other classes total (includes contrasting)": OtherClasses,
	"stones by weight": Stones, "animal filth": AnimalFilth, "castor beans": CastorBeans, "crotalaria seeds": Crotalaria, "glass": Glass,
	"unknown foreign substances": UnknownSubstances, "unknown foreign substance": UnknownSubstances,
	"other material total": OtherMaterial, "insect-damaged kernels": InsectDamaged, "cockleburs": Cockleburs,
	"splits": Splits, "sound barley": Sound, "sound oats": Sound, "broken kernels": Broken,
	"thin barley": Thin, "thin rye": Thin, "suitable malting type": MaltingType, "wild oats": WildOats,
	"other grains": OtherGrains, "skinned and broken kernels": SkinnedBroken,
	"distinctly green": Green, "ergot": Ergot, "sclerotinia": Sclerotinia,
	"conspicuous admixture total": Conspicuous, "inconspicuous admixture": Inconspicuous, "dehulled seed": Dehulled,
	"foreign matter other than wheat": NotWheat, "material other than wheat or rye": NotWheatOrRye,
	"stones (and must exceed 0.1% by weight)": StoneCount, "stones (and must exceed 0.2% by weight)": StoneCount,
}

func gradeRowFactor(row map[string]string) (FactorID, bool) {
	if row["factor"] == "stones" {
		if row["unit"] == "percent" {
			return Stones, true
		}
		return StoneCount, true
	}
	id, ok := gradeRowFactors[row["factor"]]
	return id, ok
}

func historical(row map[string]string) bool { return strings.Contains(row["factor"], "HISTORICAL") }

// TestEveryGradeCell walks every cell of the numbered grades, 7 CFR 810.
func TestEveryGradeCell(t *testing.T) {
	walked := map[string]int{} // commodity -> cells
	for _, row := range published(t, published810, "grades.csv") {
		if strings.HasPrefix(row["grade"], "special:") {
			continue
		}
		for _, id := range gradeRowGrains[row["grain"]] {
			c := mustCommodity(t, id)
			if historical(row) {
				if _, found := findLimit(c, OtherColors); found {
					t.Errorf("%s still grades by soybeans of other colors, which 88 FR 45055 removed", id)
				}
				continue
			}
			checkGradeCell(t, c, row)
			walked[id]++
		}
		if len(gradeRowGrains[row["grain"]]) == 0 {
			t.Errorf("nobody answers for the heading %q", row["grain"])
		}
	}
	for _, c := range All() {
		if got, want := walked[c.ID], cells(c.Grades); got != want {
			t.Errorf("%s: %d cells walked, %d in the table: some cell has no source", c.ID, got, want)
		}
	}
}

func checkGradeCell(t *testing.T, c Commodity, row map[string]string) {
	t.Helper()
	factor, known := gradeRowFactor(row)
	limit, found := findLimit(c, factor)
	if !known || !found {
		t.Errorf("%s: no line for %q", c.ID, row["factor"])
		return
	}
	grade := slices.Index(c.Grades.Names, row["grade"])
	if grade < 0 {
		t.Errorf("%s has no grade %q", c.ID, row["grade"])
		return
	}
	got, set := limit.At(grade)
	f, _ := c.Factor(factor)
	if want := quantity.Of(row["value"], f.Unit); !set || !got.Equal(want) {
		t.Errorf("%s %s %s: %s, printed %s", c.ID, row["grade"], factor, got, want)
	}
	if want := map[string]Bound{"min": Least, "max": Most}[row["limit_kind"]]; limit.Bound != want {
		t.Errorf("%s %s is a %s, printed %s", c.ID, factor, limit.Bound, row["limit_kind"])
	}
	checkStones(t, limit, row)
	section, _, _ := strings.Cut(row["source"], " (")
	if !strings.HasPrefix(c.Grades.Source, section) {
		t.Errorf("%s names %q, the cell is from %q", c.ID, c.Grades.Source, row["source"])
	}
}

// checkStones compares the weight that stones must also exceed, which is
// printed in the name of the line.
func checkStones(t *testing.T, limit Limit, row map[string]string) {
	t.Helper()
	_, rest, conditional := strings.Cut(row["factor"], "must exceed ")
	second, has := limit.And()
	if conditional != has {
		t.Errorf("%s %s: printed %q, but a second limit is %v", row["grain"], limit.Factor, row["factor"], has)
		return
	}
	if has {
		printed, _, _ := strings.Cut(rest, "%")
		if got, _ := second.At(0); !got.Equal(quantity.Of(printed, quantity.Percent)) || second.Factor != Stones {
			t.Errorf("%s: stones must exceed %s of %s, printed %s %%", row["grain"], got, second.Factor, printed)
		}
	}
}

func findLimit(c Commodity, id FactorID) (Limit, bool) {
	for _, l := range c.Grades.Limits {
		if l.Factor == id {
			return l, true
		}
	}
	return Limit{}, false
}

// cells counts the limits a table sets.
func cells(table *GradeTable) int {
	n := 0
	if table == nil {
		return n
	}
	for _, l := range table.Limits {
		for i := range table.Names {
			if _, set := l.At(i); set {
				n++
			}
		}
	}
	return n
}

func mustCommodity(t interface{ Fatal(...any) }, id string) Commodity {
	c, err := ByID(id)
	if err != nil {
		t.Fatal(err)
	}
	return c
}
