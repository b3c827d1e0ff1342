package grain

func canola() Commodity {
	return Commodity{
		ID: "canola", Name: "Canola", CanadaKind: "Canola",
		Bushel:       lbPerBu("50"),
		BushelSource: "Indiana Code 24-6-1-1 and Minnesota Statutes 239.32, both for rapeseed",
		Factors: sampled(
			moisture(),
			testWeightHalves(),
			dockageByPractice(),
			percent(Damage, "Damaged kernels, total"),
			percent(HeatDamage, "Heat-damaged"),
			percent(Green, "Distinctly green"),
			percent(Conspicuous, "Conspicuous admixture, total"),
			percent(Inconspicuous, "Inconspicuous admixture"),
			hundredths(Ergot, "Ergot"),
			hundredths(Sclerotinia, "Sclerotinia"),
			hundredths(Stones, "Stones"),
			tally(AnimalFilth, "Animal filth"),
			tally(Glass, "Pieces of glass"),
			tally(UnknownSubstances, "Pieces of unknown foreign substance"),
			tally(Garlic, "Green garlic bulblets in 500 g"),
		),
		Grades: canolaGrades(),
		Special: []SpecialGrade{
			special("Garlicky", "7 CFR 810.305", countIs(Garlic, Over, "2")),
			infestedOtherGrain(),
		},
	}
}

func canolaGrades() *GradeTable {
	return &GradeTable{
		Names:     numbered(3),
		Below:     sampleGrade,
		Source:    "7 CFR 810.304",
		NotJudged: rulesNotRead,
		Limits: []Limit{
			mostPercent(HeatDamage, "0.1 0.5 2.0"),
			mostPercent(Green, "2.0 6.0 20.0"),
			mostPercent(Damage, "3.0 10.0 20.0"),
			mostPercent(Ergot, "0.05"),
			mostPercent(Sclerotinia, "0.05 0.10 0.15"),
			mostPercent(Stones, "0.05"),
			mostPercent(Conspicuous, "1.0 1.5 2.0"),
			mostPercent(Inconspicuous, "5.0"),
			mostOf(AnimalFilth, "3"),
			mostOf(Glass, "0"),
			mostOf(UnknownSubstances, "1"),
		},
		Wholes: []Whole{
			includes(Damage, HeatDamage),
		},
	}
}

func flaxseed() Commodity {
	return Commodity{
		ID: "flaxseed", Name: "Flaxseed", CanadaKind: "Flaxseed",
		Bushel:       lbPerBu("56"),
		BushelSource: "Indiana Code 24-6-1-1; Arkansas Code 4-18-331; Minnesota Statutes 239.32",
		Factors: sampled(
			moisture(),
			testWeightHalves(),
			dockageWhole(),
			percent(Damage, "Damaged kernels, total"),
			percent(HeatDamage, "Heat-damaged kernels"),
		),
		Grades: flaxseedGrades(),
	}
}

func flaxseedGrades() *GradeTable {
	return &GradeTable{
		Names:     numbered(2),
		Below:     sampleGrade,
		Source:    "7 CFR 810.604",
		NotJudged: countsNotRead,
		Limits: []Limit{
			leastLbPerBu("49.0 47.0"),
			mostPercent(HeatDamage, "0.2 0.5"),
			mostPercent(Damage, "10.0 15.0"),
		},
		Wholes: []Whole{
			includes(Damage, HeatDamage),
		},
	}
}

func sunflower() Commodity {
	return Commodity{
		ID: "sunflower", Name: "Sunflower seed", CanadaKind: "Sunflower seed",
		Bushel:       noBushel(),
		BushelSource: "no law read names one; 30 lb/bu in Canadian statistics",
		Factors: sampled(
			moisture(),
			testWeightHalves(),
			percent(Damage, "Damaged seed, total"),
			percent(HeatDamage, "Heat-damaged seed"),
			percent(Dehulled, "Dehulled seed"),
			percent(ForeignMaterial, "Foreign material"),
		),
		Grades: sunflowerGrades(),
		Special: []SpecialGrade{
			infestedOtherGrain(),
		},
	}
}

func sunflowerGrades() *GradeTable {
	return &GradeTable{
		Names:     numbered(2),
		Below:     sampleGrade,
		Source:    "7 CFR 810.1804",
		NotJudged: countsNotRead,
		Limits: []Limit{
			leastLbPerBu("25.0"),
			mostPercent(HeatDamage, "0.5 1.0"),
			mostPercent(Damage, "5.0 10.0"),
			mostPercent(Dehulled, "5.0"),
		},
		Wholes: []Whole{
			includes(Damage, HeatDamage),
		},
	}
}
