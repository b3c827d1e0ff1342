package grain

// Least test weights by class (7 CFR 810.2204(a)).
const (
	springOrClubLbPerBu = "58.0 57.0 55.0 53.0 50.0" // Hard Red Spring or White Club
	otherClassesLbPerBu = "60.0 58.0 56.0 54.0 51.0" // all other classes and subclasses
)

// wheats are the classes of wheat. They differ in their test weight limits
// only; everything else in the table is common to all classes but Mixed, which
// has no place here.
func wheats() []Commodity {
	return []Commodity{
		wheat("wheat-hrw", "Hard Red Winter wheat", otherClassesLbPerBu),
		wheat("wheat-hrs", "Hard Red Spring wheat", springOrClubLbPerBu),
		wheat("wheat-srw", "Soft Red Winter wheat", otherClassesLbPerBu),
		wheat("wheat-white", "White wheat", otherClassesLbPerBu),
		wheat("wheat-white-club", "White Club wheat", springOrClubLbPerBu),
		wheat("wheat-durum", "Durum wheat", otherClassesLbPerBu),
	}
}

func wheat(id, name, testWeights string) Commodity {
	return Commodity{
		ID: id, Name: name, CanadaKind: "Wheat",
		Bushel:       lbPerBu("60"),
		BushelSource: "Indiana Code 24-6-1-1; Arkansas Code 4-18-331; Minnesota Statutes 239.32",
		Factors: sampled(
			moisture(),
			testWeightTenths(),
			dockageTenths(),
			protein(),
			percent(Damage, "Damaged kernels, total"),
			percent(HeatDamage, "Heat-damaged kernels"),
			percent(ForeignMaterial, "Foreign material"),
			percent(ShrunkenBroken, "Shrunken and broken kernels"),
			percent(Defects, "Defects, total"),
			percent(ContrastingClasses, "Contrasting classes"),
			percent(OtherClasses, "Wheat of other classes, total"),
			percent(Stones, "Stones by weight"),
			tally(StoneCount, "Stones in 1 kg"),
			tally(AnimalFilth, "Animal filth in 1 kg"),
			tally(CastorBeans, "Castor beans in 1 kg"),
			tally(Crotalaria, "Crotalaria seeds in 1 kg"),
			tally(Glass, "Pieces of glass in 1 kg"),
			tally(UnknownSubstances, "Pieces of unknown foreign substance in 1 kg"),
			tally(OtherMaterial, "Other material, total, in 1 kg"),
			tally(InsectDamaged, "Insect-damaged kernels in 100 g"),
			hundredths(Ergot, "Ergot"),
			tally(Garlic, "Green garlic bulblets or equivalent in 1000 g"),
			tally(Smut, "Smut balls in 250 g"),
			present(SmutOdor, "Unmistakable odor of smut"),
		),
		Grades: wheatGrades(testWeights),
		Special: []SpecialGrade{
			special("Ergoty", "7 CFR 810.2205(a)", percentIs(Ergot, Over, "0.05")),
			special("Garlicky", "7 CFR 810.2205(b)", countIs(Garlic, Over, "2")),
			special("Light smutty", "7 CFR 810.2205(c)", countIs(Smut, Over, "5"), countIs(Smut, AtMost, "30")).
				or(isPresent(SmutOdor), countIs(Smut, AtMost, "30")),
			special("Smutty", "7 CFR 810.2205(d)", countIs(Smut, Over, "30")),
			infestedBreadGrain(),
		},
	}
}

func wheatGrades(testWeights string) *GradeTable {
	return &GradeTable{
		Names:     numbered(5),
		Below:     sampleGrade,
		Source:    "7 CFR 810.2204(a) (71 FR 8235, 2006)",
		NotJudged: rulesNotRead,
		Limits: []Limit{
			leastLbPerBu(testWeights),
			mostPercent(HeatDamage, "0.2 0.2 0.5 1.0 3.0"),
			mostPercent(Damage, "2.0 4.0 7.0 10.0 15.0"),
			mostPercent(ForeignMaterial, "0.4 0.7 1.3 3.0 5.0"),
			mostPercent(ShrunkenBroken, "3.0 5.0 8.0 12.0 20.0"),
			mostPercent(Defects, "3.0 5.0 8.0 12.0 20.0"),
			mostPercent(ContrastingClasses, "1.0 2.0 3.0 10.0 10.0"),
			mostPercent(OtherClasses, "3.0 5.0 10.0 10.0 10.0"),
			mostPercent(Stones, "0.1"),
			mostOf(AnimalFilth, "1"),
			mostOf(CastorBeans, "1"),
			mostOf(Crotalaria, "2"),
			mostOf(Glass, "0"),
			mostOf(StoneCount, "3"),
			mostOf(UnknownSubstances, "3"),
			mostOf(OtherMaterial, "4"),
			mostOf(InsectDamaged, "31"),
		},
		Wholes: []Whole{
			includes(Damage, HeatDamage),
			sumOf(Defects, Damage, ForeignMaterial, ShrunkenBroken),
			includes(OtherClasses, ContrastingClasses),
			sumOf(OtherMaterial, AnimalFilth, CastorBeans, Crotalaria, Glass, StoneCount, UnknownSubstances),
		},
	}
}
