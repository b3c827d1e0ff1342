package grain

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
