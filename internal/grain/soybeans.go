package grain

func soybeans() Commodity {
	return Commodity{
		ID: "soybeans", Name: "Soybeans", CanadaKind: "Soybeans",
		Bushel:       lbPerBu("60"),
		BushelSource: "Indiana Code 24-6-1-1",
		Factors: sampled(
			moisture(),
			testWeightTenths(),
			percent(Damage, "Damaged kernels, total"),
			percent(HeatDamage, "Heat-damaged kernels"),
			percent(ForeignMaterial, "Foreign material"),
			percent(Splits, "Splits"),
			percent(OtherColors, "Soybeans of other colors"),
			protein(),
			percent(Stones, "Stones by weight"),
			tally(StoneCount, "Stones"),
			tally(AnimalFilth, "Animal filth"),
			tally(CastorBeans, "Castor beans"),
			tally(Crotalaria, "Crotalaria seeds"),
			tally(Glass, "Pieces of glass"),
			tally(UnknownSubstances, "Pieces of unknown foreign substance"),
			tally(OtherMaterial, "Other material, total"),
			tally(Garlic, "Green garlic bulblets in 1000 g"),
		),
		Grades: soybeanGrades(),
		Special: []SpecialGrade{
			special("Garlicky", "7 CFR 810.1605(a)", countIs(Garlic, AtLeast, "5")),
			infestedOtherGrain(),
		},
	}
}

// soybeanGrades leaves soybeans of other colors out: they were a grading factor
// until 31 August 2023 (88 FR 45055) and are only recorded since.
func soybeanGrades() *GradeTable {
	return &GradeTable{
		Names:     numbered(4),
		Below:     sampleGrade,
		Source:    "7 CFR 810.1604 (71 FR 52406, 2006; 88 FR 45055, 2023)",
		NotJudged: rulesNotRead,
		Limits: []Limit{
			mostPercent(HeatDamage, "0.2 0.5 1.0 3.0"),
			mostPercent(Damage, "2.0 3.0 5.0 8.0"),
			mostPercent(ForeignMaterial, "1.0 2.0 3.0 5.0"),
			mostPercent(Splits, "10.0 20.0 30.0 40.0"),
			mostOf(AnimalFilth, "9"),
			mostOf(CastorBeans, "1"),
			mostOf(Crotalaria, "2"),
			mostOf(Glass, "0"),
			mostOf(StoneCount, "3").butOnlyWith(mostPercent(Stones, "0.1")),
			mostOf(UnknownSubstances, "3"),
			mostOf(OtherMaterial, "10"),
		},
		Wholes: []Whole{
			includes(Damage, HeatDamage),
			sumOf(OtherMaterial, AnimalFilth, CastorBeans, Crotalaria, Glass, StoneCount, UnknownSubstances),
		},
	}
}
