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
	}
}
