package grain

func rye() Commodity {
	return Commodity{
		ID: "rye", Name: "Rye", CanadaKind: "Rye",
		Bushel:       lbPerBu("56"),
		BushelSource: "Indiana Code 24-6-1-1; Arkansas Code 4-18-331; Minnesota Statutes 239.32",
		Factors: sampled(
			moisture(),
			testWeightTenths(),
			dockageTenths(),
			percent(Damage, "Damaged kernels, total"),
			percent(HeatDamage, "Heat-damaged kernels"),
			percent(ForeignMaterial, "Foreign material, total"),
			percent(NotWheat, "Foreign matter other than wheat"),
			percent(Thin, "Thin rye"),
			hundredths(Ergot, "Ergot"),
			tally(Garlic, "Green garlic bulblets in 1000 g"),
			tally(Smut, "Smut balls in 250 g"),
			present(SmutOdor, "Unmistakable odor of smut"),
		),
		Grades: ryeGrades(),
		Special: []SpecialGrade{
			special("Ergoty", "7 CFR 810.1205(a)", percentIs(Ergot, Over, "0.30")),
			special("Garlicky", "7 CFR 810.1205(b)", countIs(Garlic, Over, "6")),
			special("Light garlicky", "7 CFR 810.1205(c)", countIs(Garlic, AtLeast, "2"), countIs(Garlic, AtMost, "6")),
			special("Light smutty", "7 CFR 810.1205(d)", countIs(Smut, Over, "14"), countIs(Smut, AtMost, "30")).
				or(isPresent(SmutOdor), countIs(Smut, AtMost, "30")),
			special("Plump", "7 CFR 810.1205(e)", percentIs(Thin, AtMost, "5.0")),
			special("Smutty", "7 CFR 810.1205(f)", countIs(Smut, Over, "30")),
			infestedBreadGrain(),
		},
	}
}

func ryeGrades() *GradeTable {
	return &GradeTable{
		Names:     numbered(4),
		Below:     sampleGrade,
		Source:    "7 CFR 810.1204",
		NotJudged: countsNotRead,
		Limits: []Limit{
			leastLbPerBu("56.0 54.0 52.0 49.0"),
			mostPercent(NotWheat, "1.0 2.0 4.0 6.0"),
			mostPercent(ForeignMaterial, "3.0 6.0 10.0 10.0"),
			mostPercent(HeatDamage, "0.2 0.2 0.5 3.0"),
			mostPercent(Damage, "2.0 4.0 7.0 15.0"),
			mostPercent(Thin, "10.0 15.0 25.0 -"),
		},
		Wholes: []Whole{
			includes(Damage, HeatDamage),
			includes(ForeignMaterial, NotWheat),
		},
	}
}
