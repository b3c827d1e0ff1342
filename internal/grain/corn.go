package grain

func corn() Commodity {
	return Commodity{
		ID: "corn", Name: "Corn", CanadaKind: "Corn",
		Bushel:       lbPerBu("56"),
		BushelSource: "Indiana Code 24-6-1-1; Arkansas Code 4-18-331; Minnesota Statutes 239.32; Iowa Code 210.10; North Dakota Century Code 64-01-05",
		Factors: sampled(
			moisture(),
			testWeightTenths(),
			percent(Damage, "Damaged kernels, total"),
			percent(HeatDamage, "Heat-damaged kernels"),
			percent(BrokenCorn, "Broken corn and foreign material"),
			percent(Flint, "Flint corn"),
			percent(Waxy, "Waxy corn"),
			protein(),
		),
		Grades: cornGrades(),
		Special: []SpecialGrade{
			special("Flint", "7 CFR 810.405(a)", percentIs(Flint, AtLeast, "95")),
			special("Flint and dent", "7 CFR 810.405(b)", percentIs(Flint, Over, "5.0"), percentIs(Flint, Under, "95")),
			special("Waxy", "7 CFR 810.405(c)", percentIs(Waxy, AtLeast, "95")),
			infestedOtherGrain(),
		},
	}
}

func cornGrades() *GradeTable {
	return &GradeTable{
		Names:     numbered(5),
		Below:     sampleGrade,
		Source:    "7 CFR 810.404 (60 FR 61196, 1995)",
		NotJudged: countsNotRead,
		Limits: []Limit{
			leastLbPerBu("56.0 54.0 52.0 49.0 46.0"),
			mostPercent(HeatDamage, "0.1 0.2 0.5 1.0 3.0"),
			mostPercent(Damage, "3.0 5.0 7.0 10.0 15.0"),
			mostPercent(BrokenCorn, "2.0 3.0 4.0 5.0 7.0"),
		},
		Wholes: []Whole{
			includes(Damage, HeatDamage),
		},
	}
}
