package grain

const barleyBushel = "Indiana Code 24-6-1-1; Arkansas Code 4-18-331; Minnesota Statutes 239.32; Iowa Code 210.10; North Dakota Century Code 64-01-05"

func barley() Commodity {
	return Commodity{
		ID: "barley", Name: "Barley", CanadaKind: "Barley",
		Bushel: lbPerBu("48"), BushelSource: barleyBushel,
		Factors: sampled(
			moisture(),
			testWeightHalves(),
			dockageHalves(),
			protein(),
			percent(Sound, "Sound barley"),
			percent(Damage, "Damaged kernels"),
			percent(HeatDamage, "Heat-damaged kernels"),
			percent(ForeignMaterial, "Foreign material"),
			percent(Broken, "Broken kernels"),
			percent(Thin, "Thin barley"),
			percent(Plump, "Plump barley"),
			percent(Blight, "Fungus- or mold-damaged kernels"),
			hundredths(Ergot, "Ergot"),
			tally(Garlic, "Green garlic bulblets in 500 g"),
			hundredths(Smut, "Smut balls"),
			present(SmuttyAppearance, "Smutty appearance in mass"),
		),
		Grades:  barleyGrades(),
		Special: barleySpecial(),
	}
}

// barleySpecial holds for malting barley too.
func barleySpecial() []SpecialGrade {
	return []SpecialGrade{
		special("Blighted", "7 CFR 810.207(a)", percentIs(Blight, Over, "4.0")),
		special("Ergoty", "7 CFR 810.207(b)", percentIs(Ergot, Over, "0.10")),
		special("Garlicky", "7 CFR 810.207(c)", countIs(Garlic, AtLeast, "3")),
		special("Smutty", "7 CFR 810.207(d)", percentIs(Smut, Over, "0.20")).or(isPresent(SmuttyAppearance)),
		infestedOtherGrain(),
	}
}

func barleyGrades() *GradeTable {
	return &GradeTable{
		Names:     numbered(5),
		Below:     sampleGrade,
		Source:    "7 CFR 810.206 (61 FR 18492, 1996)",
		NotJudged: countsNotRead,
		Limits: []Limit{
			leastLbPerBu("47.0 45.0 43.0 40.0 36.0"),
			leastPercent(Sound, "97.0 94.0 90.0 85.0 75.0"),
			mostPercent(Damage, "2.0 4.0 6.0 8.0 10.0"),
			mostPercent(HeatDamage, "0.2 0.3 0.5 1.0 3.0"),
			mostPercent(ForeignMaterial, "1.0 2.0 3.0 4.0 5.0"),
			mostPercent(Broken, "4.0 8.0 12.0 18.0 28.0"),
			mostPercent(Thin, "10.0 15.0 25.0 35.0 75.0"),
		},
		Wholes: []Whole{
			includes(Damage, HeatDamage),
		},
	}
}

func maltingBarleySix() Commodity {
	return maltingBarley("barley-malting-six", "Six-rowed Malting barley", maltingGrades(
		"7 CFR 810.204 (82 FR 20543, 2017)",
		leastLbPerBu("47.0 45.0 43.0 43.0"),
		mostPercent(Thin, "7.0 10.0 15.0 15.0"),
	))
}

func maltingBarleyTwo() Commodity {
	return maltingBarley("barley-malting-two", "Two-rowed Malting barley", maltingGrades(
		"7 CFR 810.205 (82 FR 20544, 2017)",
		leastLbPerBu("50.0 48.0 48.0 48.0"),
		mostPercent(Thin, "5.0 7.0 10.0 10.0"),
	))
}

func maltingBarley(id, name string, grades *GradeTable) Commodity {
	return Commodity{
		ID: id, Name: name, CanadaKind: "Barley",
		Bushel: lbPerBu("48"), BushelSource: barleyBushel,
		Factors: sampled(
			moisture(),
			testWeightHalves(),
			dockageHalves(),
			protein(),
			percent(MaltingType, "Suitable malting type"),
			percent(Sound, "Sound barley"),
			percent(Damage, "Damaged kernels"),
			percent(WildOats, "Wild oats"),
			percent(ForeignMaterial, "Foreign material"),
			percent(OtherGrains, "Other grains"),
			percent(SkinnedBroken, "Skinned and broken kernels"),
			percent(Thin, "Thin barley"),
			percent(Plump, "Plump barley"),
			percent(Blight, "Fungus- or mold-damaged kernels"),
			hundredths(Ergot, "Ergot"),
			tally(Garlic, "Green garlic bulblets in 500 g"),
			hundredths(Smut, "Smut balls"),
			present(SmuttyAppearance, "Smutty appearance in mass"),
		),
		Grades:  grades,
		Special: barleySpecial(),
	}
}

// maltingGrades is what both rows of malting barley share. Below its last
// grade there is no sample grade: from memory, such barley is graded as plain
// barley.
func maltingGrades(source string, testWeight, thin Limit) *GradeTable {
	return &GradeTable{
		Names:     numbered(4),
		Below:     "below U.S. No. 4 of malting barley",
		Source:    source,
		NotJudged: countsNotRead,
		Limits: []Limit{
			testWeight,
			leastPercent(MaltingType, "97.0 97.0 95.0 95.0"),
			leastPercent(Sound, "98.0 98.0 96.0 93.0"),
			mostPercent(Damage, "2.0 3.0 4.0 5.0"),
			mostPercent(WildOats, "1.0 1.0 2.0 3.0"),
			mostPercent(ForeignMaterial, "0.5 1.0 2.0 3.0"),
			mostPercent(OtherGrains, "2.0 3.0 5.0 5.0"),
			mostPercent(SkinnedBroken, "4.0 6.0 8.0 10.0"),
			thin,
		},
	}
}
