package grain

func oats() Commodity {
	return Commodity{
		ID: "oats", Name: "Oats", CanadaKind: "Oats",
		Bushel:       lbPerBu("32"),
		BushelSource: "Indiana Code 24-6-1-1; Arkansas Code 4-18-331; Minnesota Statutes 239.32",
		Factors: sampled(
			moisture(),
			testWeightHalves(),
			percent(Sound, "Sound oats"),
			percent(HeatDamage, "Heat-damaged kernels"),
			percent(ForeignMaterial, "Foreign material"),
			percent(WildOats, "Wild oats"),
			percent(Thin, "Thin oats"),
			hundredths(Ergot, "Ergot"),
			tally(Garlic, "Green garlic bulblets in 500 g"),
			hundredths(Smut, "Smut balls"),
			present(SmuttyAppearance, "Smutty appearance in mass"),
			protein(),
		),
		Grades: oatGrades(),
		Special: []SpecialGrade{
			special("Heavy", "7 CFR 810.1005(f)", weighs(AtLeast, "38"), weighs(Under, "40")),
			special("Extra-heavy", "7 CFR 810.1005(d)", weighs(AtLeast, "40")),
			special("Ergoty", "7 CFR 810.1005(c)", percentIs(Ergot, Over, "0.10")),
			special("Garlicky", "7 CFR 810.1005(e)", countIs(Garlic, AtLeast, "4")),
			special("Smutty", "7 CFR 810.1005(g)", percentIs(Smut, Over, "0.2")).or(isPresent(SmuttyAppearance)),
			special("Thin", "7 CFR 810.1005(h)", percentIs(Thin, Over, "20.0")),
			infestedOtherGrain(),
		},
	}
}

func oatGrades() *GradeTable {
	return &GradeTable{
		Names:     numbered(4),
		Below:     sampleGrade,
		Source:    "7 CFR 810.1004",
		NotJudged: countsNotRead,
		Limits: []Limit{
			leastLbPerBu("36.0 33.0 30.0 27.0"),
			leastPercent(Sound, "97.0 94.0 90.0 80.0"),
			mostPercent(HeatDamage, "0.1 0.3 1.0 3.0"),
			mostPercent(ForeignMaterial, "2.0 3.0 4.0 5.0"),
			mostPercent(WildOats, "2.0 3.0 5.0 10.0"),
		},
	}
}
