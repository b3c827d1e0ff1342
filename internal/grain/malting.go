package grain

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
