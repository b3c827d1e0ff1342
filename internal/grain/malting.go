package grain

func maltingBarleySix() Commodity {
	return maltingBarley("barley-malting-six", "Six-rowed Malting barley")
}

func maltingBarleyTwo() Commodity {
	return maltingBarley("barley-malting-two", "Two-rowed Malting barley")
}

func maltingBarley(id, name string) Commodity {
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
	}
}
