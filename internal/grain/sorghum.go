package grain

func sorghum() Commodity {
	return Commodity{
		ID: "sorghum", Name: "Sorghum",
		Bushel:       lbPerBu("56"),
		BushelSource: "Indiana Code 24-6-1-1 (kaffir corn); seed weighs otherwise by some state laws",
		Factors: sampled(
			moisture(),
			testWeightTenths(),
			dockageWhole(),
			percent(Damage, "Damaged kernels, total"),
			percent(HeatDamage, "Heat-damaged kernels"),
			percent(BrokenSorghum, "Broken kernels and foreign material, total"),
			percent(ForeignMaterial, "Foreign material"),
			percent(Stones, "Stones by weight"),
			tally(StoneCount, "Stones"),
			tally(AnimalFilth, "Animal filth"),
			tally(CastorBeans, "Castor beans"),
			tally(Crotalaria, "Crotalaria seeds"),
			tally(Glass, "Pieces of glass"),
			tally(UnknownSubstances, "Pieces of unknown foreign substance"),
			tally(Cockleburs, "Cockleburs"),
			tally(OtherMaterial, "Other material, total"),
			tally(Smut, "Smut balls in 100 g"),
			present(SmuttyAppearance, "Smutty appearance in mass"),
		),
		Grades: sorghumGrades(),
		Special: []SpecialGrade{
			special("Smutty", "7 CFR 810.1405", countIs(Smut, AtLeast, "20")).or(isPresent(SmuttyAppearance)),
			infestedOtherGrain(),
		},
	}
}

func sorghumGrades() *GradeTable {
	return &GradeTable{
		Names:     numbered(4),
		Below:     sampleGrade,
		Source:    "7 CFR 810.1404 (72 FR 39733, 2007)",
		NotJudged: rulesNotRead,
		Limits: []Limit{
			leastLbPerBu("57.0 55.0 53.0 51.0"),
			mostPercent(HeatDamage, "0.2 0.5 1.0 3.0"),
			mostPercent(Damage, "2.0 5.0 10.0 15.0"),
			mostPercent(ForeignMaterial, "1.0 2.0 3.0 4.0"),
			mostPercent(BrokenSorghum, "3.0 6.0 8.0 10.0"),
			mostOf(AnimalFilth, "9"),
			mostOf(CastorBeans, "1"),
			mostOf(Crotalaria, "2"),
			mostOf(Glass, "1"),
			mostOf(StoneCount, "7").butOnlyWith(mostPercent(Stones, "0.2")),
			mostOf(UnknownSubstances, "3"),
			mostOf(Cockleburs, "7"),
			mostOf(OtherMaterial, "10"),
		},
		Wholes: []Whole{
			includes(Damage, HeatDamage),
			includes(BrokenSorghum, ForeignMaterial),
			sumOf(OtherMaterial, AnimalFilth, CastorBeans, Crotalaria, Glass, StoneCount, UnknownSubstances, Cockleburs),
		},
	}
}
